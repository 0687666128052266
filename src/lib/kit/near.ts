/**
 * Work only for what can be seen. One observer for the page tells elements when they come near the
 * viewport; before printing everything counts as near.
 */
import { flushSync } from 'svelte';
import { doWaiting } from './afterPaint';

type Tell = (near: boolean, onPaper: boolean) => void;

const waiting = new Map<Element, Tell>();
let observer: IntersectionObserver | undefined;

/**
 * Draw everything for paper, now: nothing scrolls into view there and no next frame comes. What waited
 * for something else to be drawn first is told too.
 */
export function drawAll(): void {
  const told = new Set<Element>();
  const fresh = () => [...waiting].filter(([element]) => !told.has(element));
  for (let next = fresh(); next.length > 0; next = fresh()) {
    flushSync(() => {
      for (const [element, tell] of next) {
        told.add(element);
        tell(true, true);
      }
    });
    flushSync(doWaiting);
  }
}

/** Back to the screen: observing anew makes the observer tell where everything stands. */
function afterPrint() {
  for (const element of waiting.keys()) {
    observer?.unobserve(element);
    observer?.observe(element);
  }
}

function start(): IntersectionObserver {
  window.addEventListener('beforeprint', drawAll);
  window.addEventListener('afterprint', afterPrint);
  return new IntersectionObserver(
    (entries) => {
      for (const entry of entries) waiting.get(entry.target)?.(entry.isIntersecting, false);
    },
    { rootMargin: '25% 0px' },
  );
}

/** Attachment: calls `tell` whenever the element comes near the viewport or leaves it. */
export function whenNear(tell: Tell) {
  return (element: Element) => {
    observer ??= start();
    waiting.set(element, tell);
    observer.observe(element);
    return () => {
      waiting.delete(element);
      observer?.unobserve(element);
    };
  };
}

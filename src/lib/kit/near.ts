/**
 * Work only for what can be seen. One observer for the page tells elements when they come near the
 * viewport; before printing everything counts as near.
 */
import { flushSync } from 'svelte';
import { doWaiting } from './afterPaint';

type Tell = (near: boolean, onPaper: boolean) => void;

const waiting = new Map<Element, Tell>();
let observer: IntersectionObserver | undefined;
/** While a print is made ready, what comes is looked at as it comes. */
let all = false;
/** Until paper is done with, where things stand on the screen does not count. */
let onPaper = false;

/**
 * Draw everything for paper, now: nothing scrolls into view there and no next frame comes. What waited
 * for something else to be drawn first is told too.
 */
export function drawAll(): void {
  onPaper = true;
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

/**
 * Everything counts as looked at, on the screen still, so that what other threads must work out is asked
 * for. What this returns takes it back.
 */
export function lookAtAll(): () => void {
  all = true;
  for (const tell of waiting.values()) tell(true, false);
  return () => {
    all = false;
    afterPrint();
  };
}

/** Back to the screen: observing anew makes the observer tell where everything stands. */
function afterPrint() {
  onPaper = false;
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
      if (onPaper) return;
      for (const entry of entries) waiting.get(entry.target)?.(all || entry.isIntersecting, false);
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
    // What comes late onto paper, when its frame stands, is drawn as well.
    if (onPaper) queueMicrotask(() => onPaper && waiting.get(element)?.(true, true));
    return () => {
      waiting.delete(element);
      observer?.unobserve(element);
    };
  };
}

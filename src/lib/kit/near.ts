/**
 * Work only for what can be seen. One observer for the page tells elements when they come near the
 * viewport; before printing everything counts as near.
 */
import { flushSync } from 'svelte';

type Tell = (near: boolean) => void;

const waiting = new Map<Element, Tell>();
let observer: IntersectionObserver | undefined;

let all = false;

/** True while {@link drawAll} runs: work that would wait for the next frame must not. */
export const drawingAll = (): boolean => all;

/** Draw everything now; for print, where nothing scrolls into view. */
export function drawAll(): void {
  all = true;
  flushSync(() => {
    for (const tell of waiting.values()) tell(true);
  });
  all = false;
}

function start(): IntersectionObserver {
  window.addEventListener('beforeprint', drawAll);
  return new IntersectionObserver(
    (entries) => {
      for (const entry of entries) waiting.get(entry.target)?.(entry.isIntersecting);
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

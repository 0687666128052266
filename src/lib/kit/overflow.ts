/**
 * A box that scrolls sideways must be reachable by keyboard, and one that does not must not be a
 * stop on the way. One observer measures after layout, so nothing forces an early one.
 */
let observer: ResizeObserver | undefined;

function measure(box: Element) {
  if (box.scrollWidth > box.clientWidth + 1) {
    box.setAttribute('tabindex', '0');
    box.setAttribute('role', 'group');
    box.setAttribute('aria-label', (box as HTMLElement).dataset.label ?? 'Scrolls sideways');
  } else {
    box.removeAttribute('tabindex');
    box.removeAttribute('role');
    box.removeAttribute('aria-label');
  }
}

/** Attachment for a scrolling box with one child: focusable exactly while it overflows. */
export function scrollsByKey(box: Element) {
  observer ??= new ResizeObserver((entries) => {
    for (const { target } of entries) {
      const scroller = target.closest('[data-scrolls]');
      if (scroller) measure(scroller);
    }
  });
  const parts = [box, ...box.children];
  for (const part of parts) observer.observe(part);
  return () => {
    for (const part of parts) observer?.unobserve(part);
  };
}

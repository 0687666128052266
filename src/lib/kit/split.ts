/**
 * Two columns that hold still. Balanced columns would throw a group across the page whenever a help
 * text opens; here the split is chosen anew only when the width or the number of parts changes.
 */

/** How many of the first parts belong in the left column so that both end as near as they can. */
export function splitAt(heights: readonly number[]): number {
  const total = heights.reduce((a, b) => a + b, 0);
  let left = 0;
  let best = 0;
  let least = Infinity;
  heights.forEach((height, i) => {
    left += height;
    const taller = Math.max(left, total - left);
    if (taller < least) [best, least] = [i + 1, taller];
  });
  return best;
}

/** Attachment for a box with CSS columns: its children keep their column. */
export function steadyColumns(box: HTMLElement) {
  let known = '';
  const split = () => {
    const parts = [...box.children] as HTMLElement[];
    const state = `${box.clientWidth} ${parts.length}`;
    if (state === known) return;
    known = state;
    for (const part of parts) part.style.breakBefore = '';
    const two = getComputedStyle(box).columnCount === '2';
    const first = two && parts[splitAt(parts.map((part) => part.offsetHeight))];
    if (first) first.style.breakBefore = 'column';
  };
  const resized = new ResizeObserver(split);
  const changed = new MutationObserver(split);
  resized.observe(box);
  changed.observe(box, { childList: true });
  return () => {
    resized.disconnect();
    changed.disconnect();
  };
}

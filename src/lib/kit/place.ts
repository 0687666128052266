/**
 * The reader's place on a page whose upper parts grow when they come. Browsers hold it by what stands at
 * the top of the window, which is just what is replaced then; some do not hold it at all.
 */

/** A part begins above this share of the window: it is what is read. */
const READ_FROM = 0.6;

/** Notes where the part that is read stands; what this returns puts it back there. */
export function holdPlace(): () => void {
  if (scrollY === 0) return () => {};
  const parts = [...document.querySelectorAll<HTMLElement>('.sheet > .part > h2')];
  const topOf = (part: HTMLElement) => part.getBoundingClientRect().top;
  const read = parts.findLast((part) => topOf(part) < READ_FROM * innerHeight);
  if (!read) return () => {};
  const before = topOf(read);
  return () => {
    const moved = read.isConnected ? topOf(read) - before : 0;
    if (Math.abs(moved) >= 1) scrollBy({ top: moved, behavior: 'instant' });
  };
}

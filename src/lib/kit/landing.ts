/**
 * Who comes to a part of a page by a link or a reload stays there while what stands above it is still
 * growing. The browser's own anchoring holds on to whatever is in sight, which may be the end of the
 * part before: step by step that carries the place gone to off the screen.
 */
const MOVES = ['wheel', 'touchstart', 'pointerdown', 'keydown'] as const;
/** px; rounding, no move. */
const SLACK = 2;

/**
 * Attachment for what holds the parts: brings the one the address names into sight, also one that is
 * drawn later, and keeps it there until the reader moves.
 */
export function holdsLanding(within: HTMLElement) {
  let release = hold(within);
  const again = () => {
    release();
    release = hold(within);
  };
  window.addEventListener('hashchange', again);
  return () => {
    window.removeEventListener('hashchange', again);
    release();
  };
}

/** What the address names, also where its escapes are broken. */
function named(): string {
  const name = location.hash.slice(1);
  try {
    return decodeURIComponent(name);
  } catch {
    return name;
  }
}

function hold(within: HTMLElement): () => void {
  const id = named();
  if (!id) return () => undefined;
  const page = document.documentElement;
  /** Where the place stood, and how long the page was, when it was last brought into sight. */
  let last: { readonly top: number; readonly length: number } | undefined;

  const place = () => {
    const target = document.getElementById(id);
    return target && within.contains(target) ? target : undefined;
  };
  const topOf = (target: Element) => target.getBoundingClientRect().top;

  function bring() {
    const target = place();
    if (!target) return;
    if (!last || Math.abs(topOf(target) - last.top) > SLACK) target.scrollIntoView();
    last = { top: topOf(target), length: page.scrollHeight };
  }
  /** A page as long as before that stands elsewhere was scrolled by somebody. */
  function scrolled() {
    const target = place();
    if (!target || !last || page.scrollHeight !== last.length) return;
    if (Math.abs(topOf(target) - last.top) > SLACK) release();
  }
  const growth = new ResizeObserver(bring);
  function release() {
    growth.disconnect();
    window.removeEventListener('scroll', scrolled);
    for (const move of MOVES) window.removeEventListener(move, release, true);
  }

  growth.observe(within);
  window.addEventListener('scroll', scrolled, { passive: true });
  for (const move of MOVES)
    window.addEventListener(move, release, { passive: true, capture: true });
  return release;
}

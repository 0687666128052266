/** A curve given by points, read between them. */

export type Points = readonly (readonly [x: number, y: number])[];

/** Places nearer than this share of the whole curve to its end count as the end: rounding put them there. */
const ROUNDING = 1e-9;

/**
 * Straight between the points; NaN beyond their ends, and where a point beside has no value. At a jump
 * (two points at one x) as the first of them has it.
 * @param points - x not falling
 */
export function along(points: Points, x: number): number {
  const last = points.length - 1;
  if (last < 0) return NaN;
  const [from, to] = [points[0]![0], points[last]![0]];
  const reach = ROUNDING * Math.max(to - from, Math.abs(from), Math.abs(to));
  if (!(x >= from - reach && x <= to + reach)) return NaN;
  let low = 0;
  let high = last;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (points[middle]![0] >= x) high = middle;
    else low = middle + 1;
  }
  const [x1, y1] = points[low]!;
  if (low === 0 || x1 <= x) return y1;
  const [x0, y0] = points[low - 1]!;
  return y0 + ((y1 - y0) * (x - x0)) / (x1 - x0);
}

/** At most `most` of these, both ends among them, the rest evenly by their place. */
export function thinned<T>(all: readonly T[], most: number): T[] {
  if (all.length <= most) return [...all];
  return Array.from(
    { length: most },
    (_, i) => all[Math.round((i * (all.length - 1)) / (most - 1))]!,
  );
}

/** At most `most` of the x of a curve, both ends among them, each once. */
export const stopsOf = (points: Points, most: number): number[] =>
  thinned([...new Set(points.filter(([, y]) => Number.isFinite(y)).map(([x]) => x))], most);

/**
 * `count` numbers from `from` to `to`, both included, the steps equal.
 * @example spaced(0, 1, 3) // [0, 0.5, 1]
 */
export function spaced(from: number, to: number, count: number): number[] {
  const step = (to - from) / (count - 1);
  // The last one is `to` itself, not what the steps add up to.
  return Array.from({ length: count }, (_, i) => (i === count - 1 ? to : from + i * step));
}

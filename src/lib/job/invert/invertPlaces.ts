/** Where the range of an input is looked at. */
import { spaced } from '$lib/solver/numerics/spaced';
import type { TriedInput } from './invertInputs';

/** A range this many times as wide as its low end is walked by factors. */
const DECADES = 30;
/** Around the present value, either way. */
const NEAR = 3;

/** Whether the input is walked by factors rather than by steps. */
export const byFactors = ([low, high]: TriedInput['range']): boolean =>
  low > 0 && high / low >= DECADES;

/** Whole range, then close to the present value. */
export function placesOf(input: TriedInput, [wide, close]: readonly [number, number]): number[] {
  const { range, present, only } = input;
  if (only) return only.map(({ x }) => x);
  const [low, high] = range;
  const inside = (x: number) => x > low && x < high;
  const all = byFactors(range)
    ? spaced(Math.log(low), Math.log(high), wide).map(Math.exp)
    : spaced(low, high, wide);
  const near =
    present > 0 && low >= 0
      ? spaced(Math.log(present / NEAR), Math.log(present * NEAR), close).map(Math.exp)
      : spaced(present - (high - low) / 12, present + (high - low) / 12, close);
  const places = new Set([low, high, ...all.filter(inside), ...near.filter(inside)]);
  if (present >= low && present <= high) places.add(present);
  return [...places].toSorted((a, b) => a - b);
}

/** Networks of one to three resistors in series and in parallel. */
import { InvalidInputError } from '../../../errors';

/** Letters name the resistors in order; `+` is in series, `|` in parallel. */
export type Form = 'a' | 'a+b' | 'a|b' | 'a+b+c' | 'a|b|c' | '(a+b)|c' | '(a|b)+c';

export interface Network {
  readonly form: Form;
  /** ohm, in the order of the letters. */
  readonly parts: readonly number[];
}

export const FORMS: Readonly<Record<1 | 2 | 3, readonly Form[]>> = {
  1: ['a'],
  2: ['a+b', 'a|b'],
  3: ['a+b+c', 'a|b|c', '(a+b)|c', '(a|b)+c'],
};

/**
 * Resistance of a network, ohm.
 * @example networkResistance({ form: 'a|b', parts: [2700, 33000] }) // 2495.798
 */
export function networkResistance({ form, parts }: Network): number {
  const [a = NaN, b = NaN, c = NaN] = parts;
  return resistanceOf(form, a, b, c);
}

/** As {@link networkResistance}, without a list: the search asks some hundred thousand times. */
export function resistanceOf(form: Form, a: number, b: number, c: number): number {
  switch (form) {
    case 'a':
      return a;
    case 'a+b':
      return a + b;
    case 'a|b':
      return (a * b) / (a + b);
    case 'a+b+c':
      return a + b + c;
    case 'a|b|c':
      return 1 / (1 / a + 1 / b + 1 / c);
    case '(a+b)|c':
      return ((a + b) * c) / (a + b + c);
    case '(a|b)+c':
      return (a * b) / (a + b) + c;
  }
}

/**
 * Least and most a network can have by the tolerances of its parts, ohm: it rises with each of them, so
 * all low and all high are the ends.
 *
 * @param tolerances - share of each part
 * @example networkBand({ form: 'a|b', parts: [2700, 33000] }, [0.05, 0.01]) // [2378.28, 2612.76]
 */
export function networkBand(network: Network, tolerances: readonly number[]): [number, number] {
  const at = (sign: 1 | -1) =>
    networkResistance({
      ...network,
      parts: network.parts.map((R, i) => R * (1 + sign * (tolerances[i] ?? 0))),
    });
  return [at(-1), at(1)];
}

/**
 * Resistor that brings `R_present` down to `R_target` beside it, ohm.
 * @formula R_trim = R_present * R_target / (R_present - R_target)
 * @throws {@link InvalidInputError} when the target is not below what is there
 * @example trimParallel(2700, 2490) // 32014.29
 */
export function trimParallel(R_present: number, R_target: number): number {
  if (!(R_target > 0 && R_target < R_present)) {
    throw new InvalidInputError(
      'trim',
      'a parallel resistor only brings resistance down',
      R_target,
    );
  }
  return (R_present * R_target) / (R_present - R_target);
}

/**
 * Resistor that brings `R_present` up to `R_target` in series with it, ohm.
 * @formula R_trim = R_target - R_present
 * @throws {@link InvalidInputError} when the target is not above what is there
 * @example trimSeries(2200, 2490) // 290
 */
export function trimSeries(R_present: number, R_target: number): number {
  if (!(R_present >= 0 && R_target > R_present)) {
    throw new InvalidInputError('trim', 'a series resistor only brings resistance up', R_target);
  }
  return R_target - R_present;
}

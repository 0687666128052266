/** Preferred numbers: the values in which resistors are made. */
import { InvalidInputError, requireWithin, type Interval } from '../errors';

export type SeriesName = 'E12' | 'E24' | 'E96';

/** IEC 60063 lists E24 by hand: some of its values are not rounded powers of ten. */
const E24 = [
  1.0, 1.1, 1.2, 1.3, 1.5, 1.6, 1.8, 2.0, 2.2, 2.4, 2.7, 3.0, 3.3, 3.6, 3.9, 4.3, 4.7, 5.1, 5.6,
  6.2, 6.8, 7.5, 8.2, 9.1,
] as const;

/** One decade of each series. E12 is every second value of E24; E96 follows its own rule. */
export const PREFERRED: Readonly<Record<SeriesName, readonly number[]>> = {
  E12: E24.filter((_, i) => i % 2 === 0),
  E24,
  E96: Array.from({ length: 96 }, (_, i) => Math.round(100 * 10 ** (i / 96)) / 100),
};

/** Resistors dealt with here, ohm: a bare wire to a dirty insulator. */
export const RESISTOR_RANGE = { R: [1e-3, 1e9] } as const satisfies Record<string, Interval>;

/**
 * Every value of a series between two ends, both included, ascending.
 *
 * @symbol lowest, highest - ends, ohm
 * @throws {@link OutOfRangeError} for an end outside {@link RESISTOR_RANGE}
 * @throws {@link InvalidInputError} when no value of the series lies between the ends
 * @source IEC 60063:2015
 * @example preferredValues('E12', 10, 100).length // 13
 */
export function preferredValues(series: SeriesName, lowest: number, highest: number): number[] {
  requireWithin('preferred numbers', RESISTOR_RANGE, { R: lowest });
  requireWithin('preferred numbers', RESISTOR_RANGE, { R: highest });
  const first = Math.floor(Math.log10(lowest)) - 1;
  const last = Math.ceil(Math.log10(highest));
  const values: number[] = [];
  for (let decade = first; decade <= last; decade++) {
    for (const value of PREFERRED[series]) {
      // Through text, so that 4.7 and three decades are 4700, not 4700.000000000001.
      const R = Number(`${value}e${decade}`);
      if (R >= lowest && R <= highest) values.push(R);
    }
  }
  if (values.length === 0) {
    throw new InvalidInputError(
      'resistors',
      `no ${series} value lies between ${lowest} and ${highest} ohm`,
      lowest,
    );
  }
  return values;
}

/**
 * Value of the series nearest to `R` by difference; the lower one of two equally near.
 *
 * @symbol R - wanted, ohm
 * @returns ohm
 * @throws {@link OutOfRangeError} outside {@link RESISTOR_RANGE}
 * @source IEC 60063:2015
 * @example nearestPreferred('E24', 2490) // 2400
 */
export function nearestPreferred(series: SeriesName, R: number): number {
  requireWithin('preferred numbers', RESISTOR_RANGE, { R });
  const near = preferredValues(series, R / 10.5, R * 10.5 > 1e9 ? 1e9 : R * 10.5);
  return near.reduce((best, value) => (Math.abs(value - R) < Math.abs(best - R) ? value : best));
}

/** Thermistor by a table of points: 1/T runs monotone against ln R, as every thermistor's does. */
import { InvalidInputError, OutOfRangeError, type Interval } from '../../errors';
import { pchip } from '../../numerics/interpolate';
import { brent } from '../../numerics/root';
import { inOrder, type CurvePoint } from './steinhartHart';

/** So far beyond its ends, K, the table is continued by the Beta of its end, with a note. */
export const TABLE_CONTINUED = 30;

export interface TableLaw {
  temperature(R: number): number;
  resistance(T: number): number;
  /** First and last temperature of the table, K. */
  readonly span: Interval;
  /** Temperatures it may be asked for, K. */
  readonly range: Interval;
}

/**
 * Curve through the points: shape-preserving cubic of 1/T against ln R, straight beyond the ends.
 *
 * @param points - two or more
 * @throws {@link InvalidInputError} for fewer than two, or where resistance does not fall
 * @throws {@link OutOfRangeError} more than {@link TABLE_CONTINUED} beyond an end
 * @source interpolation: Fritsch & Carlson 1980; axes: the Beta law is straight on them
 */
export function tableLaw(points: readonly CurvePoint[]): TableLaw {
  if (points.length < 2) {
    throw new InvalidInputError('probe.points', 'a table needs two points or more', points.length);
  }
  // By falling temperature, so that ln R rises.
  const rows = inOrder(points).reverse();
  const x = rows.map(({ R }) => Math.log(R));
  const curve = pchip(
    x,
    rows.map(({ T }) => 1 / T),
  );
  const xHot = x[0]!;
  const xCold = x[x.length - 1]!;
  const span: Interval = [rows[rows.length - 1]!.T, rows[0]!.T];
  const range: Interval = [span[0] - TABLE_CONTINUED, span[1] + TABLE_CONTINUED];
  const inverseAt = (lnR: number) => {
    const end = lnR < xHot ? xHot : lnR > xCold ? xCold : lnR;
    return curve.value(end) + curve.slope(end) * (lnR - end);
  };
  const requireRange = (T: number) => {
    if (!(T >= range[0] && T <= range[1])) throw new OutOfRangeError('probe table', 'T', T, range);
  };

  return {
    span,
    range,
    temperature(R) {
      const T = 1 / inverseAt(Math.log(R));
      requireRange(T);
      return T;
    },
    resistance(T) {
      requireRange(T);
      const want = 1 / T;
      if (want < inverseAt(xHot)) return beyond(xHot, want);
      if (want > inverseAt(xCold)) return beyond(xCold, want);
      return Math.exp(brent((v) => inverseAt(v) - want, xHot, xCold, { xtol: 1e-14 }).x);
    },
  };

  function beyond(end: number, want: number): number {
    return Math.exp(end + (want - curve.value(end)) / curve.slope(end));
  }
}

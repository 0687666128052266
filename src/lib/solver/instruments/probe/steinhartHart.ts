/** Thermistor by the three coefficients of Steinhart and Hart. */
import { InvalidInputError, NoRootError, requireWithin, type Interval } from '../../errors';

/** Coefficients with R in ohm and T in K. */
export interface SteinhartHart {
  /** 1/K */
  readonly A: number;
  /** 1/K */
  readonly B: number;
  /** 1/K */
  readonly C: number;
}

/** A known point of a thermistor. */
export interface CurvePoint {
  /** K */
  readonly T: number;
  /** ohm */
  readonly R: number;
}

/** Temperatures and resistances a probe of the trade can have; beyond, a typing error is likelier. */
export const THERMISTOR_RANGE = {
  T: [218.15, 473.15], // -55 to 200 °C
  R: [0.1, 1e8],
} as const satisfies Record<string, Interval>;

/**
 * Temperature at which the thermistor has resistance `R`.
 *
 * @formula T = 1 / (A + B * log(R) + C * log(R)^3)
 * @symbol A, B, C - coefficients, 1/K
 * @symbol R - resistance, ohm
 * @returns K
 * @throws {@link OutOfRangeError} when R or the answer lies outside {@link THERMISTOR_RANGE}
 * @source Steinhart & Hart, Deep-Sea Research 15 (1968) 497
 * @example steinhartHartTemperature({ A: 1.4e-3, B: 2.37e-4, C: 9.9e-8 }, 2500) // 299.09
 */
export function steinhartHartTemperature(law: SteinhartHart, R: number): number {
  requireWithin('Steinhart-Hart', { R: THERMISTOR_RANGE.R }, { R });
  const x = Math.log(R);
  const T = 1 / (law.A + x * (law.B + law.C * x * x));
  requireWithin('Steinhart-Hart', { T: THERMISTOR_RANGE.T }, { T });
  return T;
}

/**
 * Resistance at temperature `T`: the root of the cubic in ln R, by Newton's method from the straight
 * law (C = 0).
 *
 * @symbol T - temperature, K
 * @returns ohm
 * @throws {@link OutOfRangeError} outside {@link THERMISTOR_RANGE}
 * @throws {@link NoRootError} when the coefficients turn back before that temperature
 * @source Steinhart & Hart 1968, solved for R
 */
export function steinhartHartResistance({ A, B, C }: SteinhartHart, T: number): number {
  requireWithin('Steinhart-Hart', { T: THERMISTOR_RANGE.T }, { T });
  let x = (1 / T - A) / B;
  for (let i = 0; i < 60; i++) {
    const slope = B + 3 * C * x * x;
    if (!(slope > 0)) break;
    const step = (A + x * (B + C * x * x) - 1 / T) / slope;
    x -= step;
    if (Math.abs(step) < 1e-13 * Math.max(1, Math.abs(x))) {
      const R = Math.exp(x);
      requireWithin('Steinhart-Hart', { R: THERMISTOR_RANGE.R }, { R });
      return R;
    }
  }
  throw new NoRootError('these coefficients give no resistance at that temperature', {
    law: 'Steinhart-Hart',
    quantity: 'T',
    value: T,
  });
}

/**
 * Coefficients through three known points, exactly.
 *
 * @throws {@link InvalidInputError} unless the points differ and resistance falls as temperature rises,
 *   at the points and between them
 * @throws {@link OutOfRangeError} for a point outside {@link THERMISTOR_RANGE}
 * @source Steinhart & Hart 1968: three linear equations in A, B, C
 */
export function steinhartHartFit(points: readonly CurvePoint[]): SteinhartHart {
  if (points.length !== 3) {
    throw new InvalidInputError('probe.points', 'needs three points', points.length);
  }
  const [p1, p2, p3] = inOrder(points) as [CurvePoint, CurvePoint, CurvePoint];
  const [x1, x2, x3] = [Math.log(p1.R), Math.log(p2.R), Math.log(p3.R)];
  const s2 = (1 / p2.T - 1 / p1.T) / (x2 - x1);
  const s3 = (1 / p3.T - 1 / p1.T) / (x3 - x1);
  const C = (s3 - s2) / (x3 - x2) / (x1 + x2 + x3);
  const B = s2 - C * (x1 * x1 + x1 * x2 + x2 * x2);
  const A = 1 / p1.T - x1 * (B + C * x1 * x1);
  for (const x of [x1, x2, x3]) {
    if (!(B + 3 * C * x * x > 0)) {
      throw new InvalidInputError(
        'probe.points',
        'through these three points the resistance would not fall steadily: one of them is wrong',
      );
    }
  }
  return { A, B, C };
}

/**
 * The points by rising temperature.
 * @throws {@link InvalidInputError} unless resistance falls from each to the next
 * @throws {@link OutOfRangeError} for a point outside {@link THERMISTOR_RANGE}
 */
export function inOrder(points: readonly CurvePoint[]): CurvePoint[] {
  const sorted = [...points].sort((a, b) => a.T - b.T);
  sorted.forEach(({ T, R }, i) => {
    requireWithin('probe points', THERMISTOR_RANGE, { T, R });
    const before = sorted[i - 1];
    if (before && !(T > before.T && R < before.R)) {
      throw new InvalidInputError(
        'probe.points',
        'resistance must fall as temperature rises, from each point to the next',
        R,
      );
    }
  });
  return sorted;
}

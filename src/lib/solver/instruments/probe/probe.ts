/** A probe by whichever law it is known, behind one face. */
import type { Interval, Note } from '../../errors';
import { betaResistance, betaTemperature, type Beta } from './beta';
import {
  steinhartHartFit,
  steinhartHartResistance,
  steinhartHartTemperature,
  THERMISTOR_RANGE,
  type CurvePoint,
  type SteinhartHart,
} from './steinhartHart';
import { tableLaw } from './tableLaw';

export type ProbeLaw =
  | ({ readonly kind: 'steinhart-hart' } & SteinhartHart)
  /** Three points, through which Steinhart-Hart is laid. */
  | { readonly kind: 'three-points'; readonly points: readonly CurvePoint[] }
  | ({ readonly kind: 'beta' } & Beta)
  | { readonly kind: 'table'; readonly points: readonly CurvePoint[] };

export interface Probe {
  readonly law: ProbeLaw;
  /** Resistance at T, ohm. @throws OutOfRangeError outside the law's range */
  resistance(T: number): number;
  /** Temperature at R, K. @throws OutOfRangeError outside the law's range */
  temperature(R: number): number;
  /** Temperatures its law may be asked for, K. */
  readonly range: Interval;
  /** Temperatures between which the probe is known by points, K; none for a law by coefficients. */
  readonly span?: Interval;
  /** Set where the law is Steinhart-Hart, stated or fitted. */
  readonly steinhartHart?: SteinhartHart;
}

/** Half the step, K, over which the slope of a probe is taken. */
const HALF_STEP = 0.05;

/**
 * Make a probe of its law.
 * @throws {@link InvalidInputError} or {@link OutOfRangeError} for a law that no thermistor has
 */
export function probeOf(law: ProbeLaw): Probe {
  switch (law.kind) {
    case 'beta':
      betaResistance(law, 298.15);
      return {
        law,
        resistance: (T) => betaResistance(law, T),
        temperature: (R) => betaTemperature(law, R),
        range: THERMISTOR_RANGE.T,
      };
    case 'table': {
      const table = tableLaw(law.points);
      return {
        law,
        resistance: (T) => table.resistance(T),
        temperature: (R) => table.temperature(R),
        range: table.range,
        span: table.span,
      };
    }
    case 'steinhart-hart':
      return bySteinhartHart(law, law);
    case 'three-points': {
      const fitted = steinhartHartFit(law.points);
      const T = law.points.map((p) => p.T);
      return {
        ...bySteinhartHart(law, fitted),
        span: [Math.min(...T), Math.max(...T)],
      };
    }
  }
}

function bySteinhartHart(law: ProbeLaw, { A, B, C }: SteinhartHart): Probe {
  const coefficients = { A, B, C };
  // Refuses coefficients that are no thermistor's before anything is asked of them.
  steinhartHartResistance(coefficients, 298.15);
  return {
    law,
    resistance: (T) => steinhartHartResistance(coefficients, T),
    temperature: (R) => steinhartHartTemperature(coefficients, R),
    range: THERMISTOR_RANGE.T,
    steinhartHart: coefficients,
  };
}

/**
 * Share of its resistance that the probe loses per kelvin at `T`, 1/K; positive.
 *
 * By central difference over a tenth of a kelvin; its error is some 1e-6 of the value. At an end of the
 * law's range that tenth lies inside it.
 */
export function sensitivity(probe: Probe, T: number): number {
  const [low, high] = probe.range;
  const middle = Math.min(Math.max(T, low + HALF_STEP), high - HALF_STEP);
  const warm = probe.resistance(middle + HALF_STEP);
  const cold = probe.resistance(middle - HALF_STEP);
  return Math.log(cold / warm) / (2 * HALF_STEP);
}

/** What the reader must be told about this probe at `T`; empty when nothing. */
export function probeNotes({ span }: Probe, T: number): Note[] {
  if (!span || (T >= span[0] && T <= span[1])) return [];
  return [
    {
      code: 'beyond-points',
      message: 'The probe’s curve is continued beyond the points it is known by.',
      quantity: 'T',
      value: T,
      range: span,
    },
  ];
}

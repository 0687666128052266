/**
 * A thermal breaker as one heated body: its state runs towards (I / rating)² with one time constant, and it
 * opens at 1. Real ones follow this within their own wide bands; the form is that of the thermal overload
 * relay of IEC 60255-149 (from memory).
 */
import { requireWithin, type Interval } from '../errors';

export interface ThermalBreaker {
  /** Current it just holds for ever at `referenceTemperature`, A. */
  readonly rating: number;
  /** K; makers state ratings at 20 to 25 °C. */
  readonly referenceTemperature: number;
  /** Share of the rating lost per kelvin of warmer surroundings, 1/K. */
  readonly lossPerKelvin: number;
  /** s */
  readonly timeConstant: number;
  /**
   * What it does once open. `automatic` (type 1 of SAE J553): closes when cool. `modified` (type 2): held
   * open until the current is switched off. `manual` (type 3): until pushed.
   */
  readonly reset: 'automatic' | 'modified' | 'manual';
  /** State at which an automatic one closes again, share of the state at which it opens. */
  readonly resetState: number;
}

export const BREAKER_RANGE = {
  rating: [0.5, 300],
  referenceTemperature: [273.15, 313.15],
  // So that no breaker of this range is derated to nothing: 1 - 0.0075 * 125 > 0.
  lossPerKelvin: [0, 0.0075],
  ambient: [233.15, 398.15],
  timeConstant: [0.1, 3600],
  resetState: [0.05, 0.99],
  current: [0, 3000],
  start: [0, 1],
} as const satisfies Record<string, Interval>;

/** {@link BREAKER_RANGE} for the keys of `values`. */
function check(values: Partial<Record<keyof typeof BREAKER_RANGE, number>>): void {
  for (const key of Object.keys(values) as (keyof typeof BREAKER_RANGE)[]) {
    requireWithin('breaker', { [key]: BREAKER_RANGE[key] }, { [key]: values[key]! });
  }
}

/**
 * Current a breaker holds where it is hot (or cold: then more than its rating).
 *
 * @formula I_hold = I_rated * (1 - b * (T - T_ref))
 * @symbol I_rated - rating at the reference temperature, A
 * @symbol b - share lost per kelvin, 1/K
 * @symbol T - temperature round the breaker, K
 * @symbol T_ref - temperature at which the rating is stated, K
 * @returns I_hold, A
 * @throws {@link OutOfRangeError} outside {@link BREAKER_RANGE}
 * @source Common practice: makers publish near-straight derating lines; the slope must come from the maker
 */
export function deratedRating(
  breaker: Pick<ThermalBreaker, 'rating' | 'referenceTemperature' | 'lossPerKelvin'>,
  ambient: number,
): number {
  const { rating, referenceTemperature, lossPerKelvin } = breaker;
  check({ rating, referenceTemperature, lossPerKelvin, ambient });
  return rating * (1 - lossPerKelvin * (ambient - referenceTemperature));
}

/** Where the breaker's state runs to at a steady current: above 1 it will open. */
export function heatingRatio(breaker: ThermalBreaker, current: number, ambient: number): number {
  check({ current });
  return (current / deratedRating(breaker, ambient)) ** 2;
}

/**
 * State of a breaker after a time at one heating ratio (0 when open).
 *
 * @formula y = x + (y0 - x) * exp(-t / tau)
 * @symbol x - heating ratio (I / I_hold)², 1
 * @symbol y0 - state at the start, 1
 * @symbol t - time, s
 * @symbol tau - time constant, s
 * @returns y, 1
 * @source Lumped capacitance
 * @example breakerState({ x: 0, y0: 1, t: 60, tau: 60 }) // 0.36788
 */
export function breakerState({
  x,
  y0,
  t,
  tau,
}: Readonly<Record<'x' | 'y0' | 't' | 'tau', number>>): number {
  return x + (y0 - x) * Math.exp(-t / tau);
}

/** Whether and when a breaker opens at a steady current. */
export type Trip =
  | { readonly trips: true; readonly time: number }
  /** It holds for ever; `settlesAt` is the state it comes to, 1 being the edge. */
  | { readonly trips: false; readonly settlesAt: number };

/**
 * Time until a breaker opens at a steady current.
 *
 * @formula t = tau * log((x - y0) / (x - 1))
 * @symbol tau - time constant, s
 * @symbol x - heating ratio (I / I_hold)², 1; above 1
 * @symbol y0 - state at the start: 0 cold, (I_before / I_hold)² after a long time at I_before
 * @returns t, s; `trips: false` for x of 1 or less
 * @throws {@link OutOfRangeError} outside {@link BREAKER_RANGE}
 * @source IEC 60255-149, cold and hot curve (from memory)
 */
export function tripTime(
  breaker: ThermalBreaker,
  current: number,
  ambient: number,
  start = 0,
): Trip {
  const { timeConstant } = breaker;
  check({ timeConstant, start });
  const x = heatingRatio(breaker, current, ambient);
  if (x <= 1) return { trips: false, settlesAt: x };
  // log1p keeps the digits of a trip within moments (start close to 1) or at a great current.
  return { trips: true, time: timeConstant * Math.log1p((1 - start) / (x - 1)) };
}

/**
 * Time constant that makes the model pass through one point of a maker's cold curve.
 *
 * @formula tau = t / log(m^2 / (m^2 - 1))
 * @symbol t - time to open from cold, s
 * @symbol m - current over rating at that point, 1
 * @returns tau, s
 * @throws {@link OutOfRangeError} for m of 1.01 or less, or a time out of all bounds
 * @source The cold curve above, solved for tau
 * @example timeConstantFromTrip({ t: 15, m: 2 }) // 52.141
 */
export function timeConstantFromTrip({ t, m }: { t: number; m: number }): number {
  requireWithin('breaker', { t: [1e-3, 7200], m: [1.01, 10] }, { t, m });
  return t / -Math.log1p(-1 / (m * m));
}

/** What a breaker does with a steady demand over a long time. */
export type BreakerBehaviour =
  | { readonly kind: 'holds'; readonly settlesAt: number }
  | { readonly kind: 'stays-open'; readonly opensAfter: number }
  | {
      readonly kind: 'cycles';
      /** First trip, from cold, s. */
      readonly opensAfter: number;
      readonly on: number;
      readonly off: number;
      readonly period: number;
      /** Share of the time that the pump runs. */
      readonly share: number;
    };

/**
 * Long-run behaviour at a steady current. For an automatic reset, from the state at which it closes:
 * on = tau ln((x - r)/(x - 1)), off = tau ln(1/r); it cools as fast as it heats (stated, not measured).
 * @throws {@link OutOfRangeError} outside {@link BREAKER_RANGE}
 * @source {@link breakerState} at its two turning points
 */
export function breakerBehaviour(
  breaker: ThermalBreaker,
  current: number,
  ambient: number,
): BreakerBehaviour {
  const first = tripTime(breaker, current, ambient);
  if (!first.trips) return { kind: 'holds', settlesAt: first.settlesAt };
  if (breaker.reset !== 'automatic') return { kind: 'stays-open', opensAfter: first.time };
  const { resetState, timeConstant } = breaker;
  check({ resetState });
  const again = tripTime(breaker, current, ambient, resetState);
  const on = again.trips ? again.time : 0;
  const off = -timeConstant * Math.log(resetState);
  const period = on + off;
  return { kind: 'cycles', opensAfter: first.time, on, off, period, share: on / period };
}

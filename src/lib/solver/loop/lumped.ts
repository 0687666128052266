/** One well-mixed mass with a constant conductance to its surroundings: exact in closed form. */
import { OutOfRangeError, requireWithin, type Interval } from '../errors';

/** Enforced by every law here; wide, to catch a wrong unit or a NaN. */
export const LUMPED_RANGE = {
  C: [1e-3, 1e9],
  G: [0, 1e6],
  Q: [-1e7, 1e7],
  T_surroundings: [150, 1500],
  T0: [150, 1500],
  t: [0, 1e9],
} as const satisfies Record<string, Interval>;

/** A mass: C dT/dt = Q - G (T - T_surroundings), from T0. */
export interface LumpedMass {
  /** Heat capacity, J/K. */
  readonly C: number;
  /** Conductance to the surroundings, W/K. */
  readonly G: number;
  /** Heat put in, W. */
  readonly Q: number;
  /** K */
  readonly T_surroundings: number;
  /** Temperature at the start, K. */
  readonly T0: number;
}

function check({ C, G, Q, T_surroundings, T0 }: LumpedMass, t = 0): void {
  requireWithin('lumped mass', LUMPED_RANGE, { C, G, Q, T_surroundings, T0, t });
}

/** (1 - exp(-x)) / x, 1 at 0: removes the special case of no conductance. */
const relax = (x: number): number => (x === 0 ? 1 : -Math.expm1(-x) / x);

/**
 * Time constant: after it, 63 % of the way to the steady temperature is done.
 *
 * @formula tau = C / G
 * @symbol C - heat capacity, J/K
 * @symbol G - conductance to the surroundings, W/K
 * @returns s
 * @throws {@link OutOfRangeError} when G is not above zero: without loss there is no time constant
 * @source Bergman et al., Fundamentals of Heat and Mass Transfer, ch. 5
 * @example timeConstant({ C: 50000, G: 200 }) // 250
 */
export function timeConstant({ C, G }: Pick<LumpedMass, 'C' | 'G'>): number {
  requireWithin('time constant', { C: LUMPED_RANGE.C }, { C });
  if (!(G > 0)) throw new OutOfRangeError('time constant', 'G', G, [Number.MIN_VALUE, 1e6]);
  return C / G;
}

/**
 * Temperature the mass ends at. Its capacity does not come into it.
 *
 * @formula T = T_surroundings + Q / G
 * @symbol Q - heat put in, W
 * @symbol G - conductance to the surroundings, W/K
 * @symbol T_surroundings - K
 * @returns K
 * @throws {@link OutOfRangeError} when G is not above zero: it never settles
 * @source first law, steady
 * @example settleTemperature({ G: 200, Q: 6000, T_surroundings: 303.15 }) // 333.15
 */
export function settleTemperature({
  G,
  Q,
  T_surroundings,
}: Pick<LumpedMass, 'G' | 'Q' | 'T_surroundings'>): number {
  if (!(G > 0)) throw new OutOfRangeError('settle temperature', 'G', G, [Number.MIN_VALUE, 1e6]);
  return T_surroundings + Q / G;
}

/**
 * Temperature after a time, heat and surroundings steady.
 *
 * @formula T = T_surroundings + Q/G + (T0 - T_surroundings - Q/G) * exp(-G*t/C)
 * @symbol C - heat capacity, J/K
 * @symbol G - conductance to the surroundings, W/K
 * @symbol Q - heat put in, W
 * @symbol T_surroundings - K
 * @symbol T0 - temperature at the start, K
 * @symbol t - time, s
 * @returns K
 * @throws {@link OutOfRangeError} outside {@link LUMPED_RANGE}
 * @source Bergman et al., Fundamentals of Heat and Mass Transfer, ch. 5; computed in a form in which G = 0 is no special case
 * @example lumpedTemperature({ C: 50000, G: 200, Q: 6000, T_surroundings: 303.15, T0: 303.15 }, 100) // 313.0404
 */
export function lumpedTemperature(mass: LumpedMass, t: number): number {
  check(mass, t);
  const { C, G, Q, T_surroundings, T0 } = mass;
  return T0 + ((Q - G * (T0 - T_surroundings)) * t * relax((G * t) / C)) / C;
}

/**
 * Time until a temperature is reached; null when it never is (at or past the steady temperature, or
 * the other way).
 *
 * @formula t = -C/G * log((T_target - T_steady) / (T0 - T_steady))
 * @symbol T_target - K
 * @returns s
 * @throws {@link OutOfRangeError} outside {@link LUMPED_RANGE}
 * @source inverse of {@link lumpedTemperature}
 * @example timeToReach({ C: 50000, G: 200, Q: 6000, T_surroundings: 303.15, T0: 303.15 }, 323.15) // 274.653
 */
export function timeToReach(mass: LumpedMass, T_target: number): number | null {
  check(mass);
  requireWithin('time to reach', { T_target: LUMPED_RANGE.T0 }, { T_target });
  const { C, G, Q, T_surroundings, T0 } = mass;
  const way = T_target - T0;
  if (way === 0) return 0;
  const start = (Q - G * (T0 - T_surroundings)) / C; // K/s
  if (start === 0 || way > 0 !== start > 0) return null;
  // t = -tau log(1 - way / (start tau)), with log1p so that a long time constant stays exact.
  const x = (way * G) / (start * C);
  if (x >= 1) return null;
  return x === 0 ? way / start : (-Math.log1p(-x) * C) / G;
}

/**
 * Heat `Q` on from 0 to `t_off`, then none: temperature at `t` and the peak. The peak lies at the end
 * of the pulse when the mass warms during it, else at the start.
 *
 * @returns both in K
 * @throws {@link OutOfRangeError} outside {@link LUMPED_RANGE}
 * @source {@link lumpedTemperature} twice
 * @example lumpedPulse({ C: 60000, G: 300, Q: 20000, T_surroundings: 305, T0: 310 }, { t_off: 12, t: 180 }).T // 308.7089
 */
export function lumpedPulse(
  mass: LumpedMass,
  { t_off, t }: { t_off: number; t: number },
): { readonly T: number; readonly T_peak: number } {
  requireWithin('lumped pulse', { t_off: LUMPED_RANGE.t }, { t_off });
  const T_off = lumpedTemperature(mass, t_off);
  const after = (T0: number, time: number) => lumpedTemperature({ ...mass, Q: 0, T0 }, time);
  const T = t <= t_off ? lumpedTemperature(mass, t) : after(T_off, t - t_off);
  // Surroundings hotter than the mass keep warming it after the pulse: then the end may be the highest.
  return { T, T_peak: Math.max(mass.T0, T_off, t > t_off ? T : T_off) };
}

/**
 * Temperature while the surroundings warm at a steady rate (a soaking bay, a climbing sun).
 *
 * @formula T = T_s0 + r*t + Q/G - r*tau + (T0 - T_s0 - Q/G + r*tau) * exp(-t/tau)
 * @symbol T_s0 - surroundings at the start, K
 * @symbol r - rate of the surroundings, K/s
 * @symbol tau - C / G, s
 * @returns K
 * @throws {@link OutOfRangeError} outside {@link LUMPED_RANGE} or without conductance
 * @source Bergman et al., ch. 5, by superposition
 * @example lumpedRamp({ C: 50000, G: 200, Q: 0, T_surroundings: 300, T0: 300 }, { rate: 0.02, t: 400 }) // 304.0095
 */
export function lumpedRamp(mass: LumpedMass, { rate, t }: { rate: number; t: number }): number {
  check(mass, t);
  requireWithin('lumped ramp', { rate: [-10, 10] }, { rate });
  const { G, Q, T_surroundings, T0 } = mass;
  const tau = timeConstant(mass);
  const lag = Q / G - rate * tau;
  return T_surroundings + rate * t + lag + (T0 - T_surroundings - lag) * Math.exp(-t / tau);
}

/**
 * Heat a mass takes up between two temperatures.
 *
 * @formula E = C * (T1 - T0)
 * @symbol C - heat capacity, J/K
 * @symbol T1, T0 - end and start, K
 * @returns J
 * @throws {@link OutOfRangeError} outside {@link LUMPED_RANGE}
 * @source definition
 * @example heatStored({ C: 62000, T0: 303, T1: 331 }) // 1736000
 */
export function heatStored({ C, T0, T1 }: { C: number; T0: number; T1: number }): number {
  const { C: capacity, T0: temperature } = LUMPED_RANGE;
  requireWithin('heat stored', { C: capacity, T0: temperature, T1: temperature }, { C, T0, T1 });
  return C * (T1 - T0);
}

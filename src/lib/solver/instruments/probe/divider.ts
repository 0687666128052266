/** Probe to ground, bias resistor to the supply, an analogue input between them. */
import { requireWithin, type Interval } from '../../errors';
import { OpenProbeError, ShortedProbeError } from './errors';

export interface Divider {
  /** V */
  readonly supply: number;
  /** Bias resistor, ohm. */
  readonly bias: number;
  /** Resistance of the reader's input to ground, ohm; Infinity for none. */
  readonly input: number;
  /** Bits of the converter. */
  readonly bits: number;
}

export const DIVIDER_RANGE = {
  supply: [0.5, 60],
  bias: [1, 1e8],
  input: [100, Infinity],
  bits: [6, 24],
} as const satisfies Record<string, Interval>;

/** Highest count of a converter: 1023 for ten bits. */
export const fullScale = (bits: number): number => 2 ** bits - 1;

/** Two resistances side by side, ohm; an infinite one leaves the other. */
export const parallel = (a: number, b: number): number =>
  a === Infinity ? b : b === Infinity ? a : (a * b) / (a + b);

/** @throws {@link OutOfRangeError} outside {@link DIVIDER_RANGE} */
export function requireDivider({ supply, bias, input, bits }: Divider): void {
  requireWithin('divider', DIVIDER_RANGE, { supply, bias, input, bits });
}

/**
 * Share of the supply at the input.
 *
 * @formula x = R / (R + R_b)
 * @symbol R - resistance from the input to ground, ohm: the probe, with the input beside it
 * @symbol R_b - bias resistor, ohm
 * @source voltage divider, Ohm's law
 * @example dividerRatio(3496.6004, 2490) // 0.5840711
 */
export const dividerRatio = (R: number, R_b: number): number => R / (R + R_b);

/** Volts at the input with the probe at resistance `R`. */
export const inputVolts = (divider: Divider, R: number): number =>
  divider.supply * dividerRatio(parallel(R, divider.input), divider.bias);

/** Count of the converter, not rounded, where it measures against the divider's own supply. */
export const inputCounts = (divider: Divider, R: number): number =>
  fullScale(divider.bits) * dividerRatio(parallel(R, divider.input), divider.bias);

/**
 * Resistance from the input to ground, from the share of the supply read there.
 *
 * @formula R = R_b * x / (1 - x)
 * @symbol x - share of the supply, 1
 * @symbol R_b - bias resistor, ohm
 * @param step - share that one count is worth; within half of it of an end the circuit is open or shorted
 * @throws {@link OpenProbeError} at the supply, NaN included
 * @throws {@link ShortedProbeError} at ground
 * @example resistanceFromRatio(0.5, 2490) // 2490
 */
export function resistanceFromRatio(x: number, R_b: number, step = 0): number {
  if (!(x < 1 - step / 2)) throw new OpenProbeError('ratio', x);
  if (!(x > step / 2)) throw new ShortedProbeError('ratio', x);
  return (R_b * x) / (1 - x);
}

/**
 * Temperature that one count of the converter stands for.
 *
 * @formula dT = (R + R_b)^2 / (R * R_b * alpha * n)
 * @symbol R - probe, ohm
 * @symbol R_b - bias resistor, ohm
 * @symbol alpha - share of its resistance that the probe loses per kelvin, 1/K
 * @symbol n - highest count of the converter, 1
 * @returns K; smallest where R equals R_b
 * @source derivative of the divider
 */
export const degreesPerCount = ({
  R,
  R_b,
  alpha,
  n,
}: {
  R: number;
  R_b: number;
  alpha: number;
  n: number;
}): number => ((R + R_b) * (R + R_b)) / (R * R_b * alpha * n);

/**
 * Power turned to heat in the probe.
 *
 * @formula P = V_s^2 * R / (R + R_b)^2
 * @returns W; largest where R equals R_b
 * @source Ohm's law
 */
export const probePower = ({ V_s, R, R_b }: { V_s: number; R: number; R_b: number }): number =>
  (V_s * V_s * R) / ((R + R_b) * (R + R_b));

/** Dissipation constants of probes, W/K, from a bead in still air to a brass body in stirred water. */
export const DISSIPATION_RANGE = { delta: [1e-4, 10] } as const satisfies Record<string, Interval>;

/**
 * Rise of the probe over what it measures by its own current.
 *
 * @formula dT = P / delta
 * @symbol P - power in the probe, W
 * @symbol delta - dissipation constant in that surrounding, W/K
 * @returns K
 * @throws {@link OutOfRangeError} outside {@link DISSIPATION_RANGE}
 */
export function selfHeating({ P, delta }: { P: number; delta: number }): number {
  requireWithin('self-heating', DISSIPATION_RANGE, { delta });
  return P / delta;
}

/**
 * Bias resistor for which the input swings alike towards both ends of the range.
 *
 * @formula R_b = sqrt(R_1 * R_2)
 * @source common practice: the geometric mean of the probe's resistances at both ends
 * @example balancedBias(5975, 175.7) // 1024.6
 */
export const balancedBias = (R_1: number, R_2: number): number => Math.sqrt(R_1 * R_2);

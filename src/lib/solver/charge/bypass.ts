import { OutOfRangeError, requireWithin } from '../errors';
import { compressorOutlet, type Compression } from './compressor';

/** Beyond this the air goes round so often that the sum of the rounds is no longer a steady state to trust. */
const ROUND_LIMIT = 0.9;

export interface BypassedCompression {
  /** Into the compressor, after mixing, K. */
  readonly T_in: number;
  /** Out of the compressor and on to the charge cooler, K. */
  readonly T_out: number;
}

/**
 * Compressor whose open bypass leads a share of its outlet air back to its inlet. The mixed inlet is
 * (1 - r) T_intake + r T_out, the outlet T_in (1 + k) with k = (PR^((gamma-1)/gamma) - 1) / eta; both
 * together give the closed form.
 *
 * @formula T_in = (1 - r) * T_intake / (1 - r*(1 + k))
 * @symbol r - share of the outlet air that goes round, 1
 * @symbol T_intake - fresh air, K
 * @symbol k - rise of one pass over its inlet temperature, 1
 * @returns both temperatures, K
 * @throws {@link OutOfRangeError} when r (1 + k) is not below 0.9, or a part is outside its range
 * @source energy balance of the mixing point, one specific heat
 * @example bypassedCompression({ T_in: 300, pressureRatio: 1.1, efficiency: 0.55, recirculation: 0 }).T_in // 300
 */
export function bypassedCompression({
  T_in: T_intake,
  recirculation: r,
  ...one
}: Compression & { recirculation: number }): BypassedCompression {
  requireWithin('bypass', { recirculation: [0, 0.9] }, { recirculation: r });
  const growth = compressorOutlet({ T_in: T_intake, ...one }) / T_intake; // 1 + k
  const round = r * growth;
  if (!(round < ROUND_LIMIT)) {
    throw new OutOfRangeError('bypass', 'recirculation', r, [0, ROUND_LIMIT / growth]);
  }
  const T_in = ((1 - r) * T_intake) / (1 - round);
  return { T_in, T_out: T_in * growth };
}

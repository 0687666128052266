import { InvalidInputError, OutOfRangeError } from '../errors';
import type { ExchangerArrangement } from './arrangement';
import { effectiveness, ntuFromEffectiveness } from './effectiveness';
import { meanLog } from './quotients';

/** The four temperatures of an exchanger, K. */
export interface FourTemperatures {
  readonly T_hot_in: number;
  readonly T_hot_out: number;
  readonly T_cold_in: number;
  readonly T_cold_out: number;
}

/**
 * Log-mean temperature difference.
 *
 * @formula lmtd = (dT1 - dT2) / log(dT1/dT2)
 * @symbol dT1 - difference at one end (counterflow: hot inlet less cold outlet), K
 * @symbol dT2 - difference at the other end, K
 * @returns log-mean difference, K
 * @throws {@link OutOfRangeError} when the streams meet or cross at an end
 * @source Bergman et al., Fundamentals of Heat and Mass Transfer, ch. 11
 * @example lmtd('counterflow', { T_hot_in: 350, T_hot_out: 330, T_cold_in: 300, T_cold_out: 320 }) // 30
 */
export function lmtd(arrangement: 'counterflow' | 'parallel', t: FourTemperatures): number {
  const counter = arrangement === 'counterflow';
  const dT1 = t.T_hot_in - (counter ? t.T_cold_out : t.T_cold_in);
  const dT2 = t.T_hot_out - (counter ? t.T_cold_in : t.T_cold_out);
  for (const end of [dT1, dT2]) {
    if (!(end > 0)) throw new OutOfRangeError('LMTD', 'end difference', end, [0, Infinity]);
  }
  return dT2 / meanLog((dT1 - dT2) / dT2);
}

/**
 * Correction of the counterflow log-mean difference for one shell pass and two tube passes:
 * the NTU counterflow would need, over the NTU this arrangement needs, at equal temperatures.
 *
 * @returns F, 1; at most 1
 * @throws {@link OutOfRangeError} when one shell cannot make these temperatures (they cross too far)
 * @source Fakheri, J. Heat Transfer 125 (2003) 527, doi:10.1115/1.1571078; here as a ratio of NTU, which
 *   is the same correction without its 0/0 at equal streams
 * @example lmtdCorrection12({ T_hot_in: 360, T_hot_out: 330, T_cold_in: 300, T_cold_out: 325 }) // 0.86693
 */
export function lmtdCorrection12(t: FourTemperatures): number {
  const hotDrop = t.T_hot_in - t.T_hot_out;
  const coldRise = t.T_cold_out - t.T_cold_in;
  const larger = Math.max(hotDrop, coldRise);
  const at = {
    effectiveness: larger / (t.T_hot_in - t.T_cold_in),
    Cr: Math.min(hotDrop, coldRise) / larger,
  };
  const NTU = ntuFromEffectiveness({ arrangement: 'shell-and-tube-1-2', ...at });
  return ntuFromEffectiveness({ arrangement: 'counterflow', ...at }) / NTU;
}

/** What {@link dutyFromUA} returns. */
export interface ExchangerDuty {
  readonly NTU: number;
  readonly effectiveness: number;
  /** From hot to cold, W. */
  readonly heat: number;
  readonly T_hot_out: number;
  readonly T_cold_out: number;
}

/**
 * Heat and outlets of an exchanger of known UA.
 *
 * @symbol UA - overall conductance, W/K
 * @symbol C_hot - capacity rate of the hot stream, W/K, above zero
 * @symbol C_cold - capacity rate of the cold stream, W/K, above zero
 * @symbol T_hot_in - hot inlet, K
 * @symbol T_cold_in - cold inlet, K
 * @throws {@link OutOfRangeError} when NTU is out of range, NaN included
 * @source Bergman et al., Fundamentals of Heat and Mass Transfer, ch. 11
 * @example dutyFromUA({ arrangement: 'counterflow', UA: 500, C_hot: 600, C_cold: 600, T_hot_in: 360, T_cold_in: 300 }).heat // 16363.6
 */
export function dutyFromUA({
  arrangement,
  UA,
  C_hot,
  C_cold,
  T_hot_in,
  T_cold_in,
}: {
  arrangement: ExchangerArrangement;
  UA: number;
  C_hot: number;
  C_cold: number;
  T_hot_in: number;
  T_cold_in: number;
}): ExchangerDuty {
  const C_min = Math.min(C_hot, C_cold);
  const NTU = UA / C_min;
  const eps = effectiveness({ arrangement, NTU, Cr: C_min / Math.max(C_hot, C_cold) });
  const heat = eps * C_min * (T_hot_in - T_cold_in);
  return {
    NTU,
    effectiveness: eps,
    heat,
    T_hot_out: T_hot_in - heat / C_hot,
    T_cold_out: T_cold_in + heat / C_cold,
  };
}

/** What {@link uaFromRating} returns. */
export interface RatedExchanger {
  readonly heat: number;
  readonly T_cold_out: number;
  readonly effectiveness: number;
  readonly NTU: number;
  readonly UA: number;
}

/**
 * UA from one measured point: both capacity rates and three temperatures.
 *
 * @symbol C_hot - capacity rate of the hot stream, W/K, above zero
 * @symbol C_cold - capacity rate of the cold stream, W/K, above zero
 * @symbol T_hot_in - hot inlet, K
 * @symbol T_hot_out - hot outlet, K
 * @symbol T_cold_in - cold inlet, K
 * @throws {@link InvalidInputError} when the hot stream does not cool between these temperatures
 * @throws {@link OutOfRangeError} when the arrangement cannot carry that much heat at any size
 * @source Bergman et al., Fundamentals of Heat and Mass Transfer, ch. 11
 * @example uaFromRating({ arrangement: 'counterflow', C_hot: 213.1, C_cold: 835.6, T_hot_in: 373.15, T_hot_out: 333.15, T_cold_in: 303.15 }).UA // 197.315
 */
export function uaFromRating({
  arrangement,
  C_hot,
  C_cold,
  T_hot_in,
  T_hot_out,
  T_cold_in,
}: {
  arrangement: ExchangerArrangement;
  C_hot: number;
  C_cold: number;
  T_hot_in: number;
  T_hot_out: number;
  T_cold_in: number;
}): RatedExchanger {
  if (!(T_hot_in > T_hot_out && T_hot_out > T_cold_in)) {
    throw new InvalidInputError('T_hot_out', 'must lie between the two inlets', T_hot_out);
  }
  const C_min = Math.min(C_hot, C_cold);
  const heat = C_hot * (T_hot_in - T_hot_out);
  const eps = heat / (C_min * (T_hot_in - T_cold_in));
  const NTU = ntuFromEffectiveness({
    arrangement,
    effectiveness: eps,
    Cr: C_min / Math.max(C_hot, C_cold),
  });
  return { heat, T_cold_out: T_cold_in + heat / C_cold, effectiveness: eps, NTU, UA: NTU * C_min };
}

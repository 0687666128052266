/** Intervals made as wide as residuals that are not noise ask for. */
import { clusteredDeviations } from '../../fit/clustered';
import { estimates, type Estimates } from '../../fit/estimates';
import type { LeastSquaresFit } from '../../fit/types';
import type { ChannelResult, IdentifyRequest } from './asked';

/**
 * What hoses as mixed parts and flows held between rows cost a conductance, a mass or a heat load, as a
 * share of it at one deviation: the root mean square of what is left on fitting drives of the loop's own engine, whose hoses mix less.
 */
const MODEL_SHARE = 0.004;

/**
 * Each deviation is the larger of two: that of noise, stretched where residuals hang together throughout,
 * and that of the scatter between stretches, which also sees a model that misses in one of them.
 */
export function widenedEstimates(
  { blocks, confidence, drive }: IdentifyRequest,
  fit: LeastSquaresFit,
  channels: readonly ChannelResult[],
): { readonly scaled: Estimates; readonly widened: number } {
  const plain = estimates(fit, { confidence });
  const stretch = hanging(channels);
  const noise = plain.residualDeviation * stretch;
  const scaled = stretch > 1 ? estimates(fit, { confidence, noise }) : plain;
  if (blocks === undefined) return { scaled, widened: stretch };
  const block = channels.flatMap(({ rows }) =>
    Array.from(rows, (row) => Math.floor(drive.t[row]! / blocks)),
  );
  const byBlocks = clusteredDeviations(fit, block);
  let widened = stretch;
  const parameters = scaled.parameters.map((own, i) => {
    const { value, deviation } = own;
    if (!Number.isFinite(deviation)) return own;
    const larger = Number.isFinite(byBlocks[i]!) ? Math.max(deviation, byBlocks[i]!) : deviation;
    const starts = own.name.endsWith('Start');
    if (!starts) widened = Math.max(widened, (stretch * larger) / deviation);
    const wide = Math.hypot(larger, starts ? 0 : MODEL_SHARE * value);
    const ratio = wide / deviation;
    return {
      ...own,
      deviation: wide,
      low: value - ratio * (value - own.low),
      high: value + ratio * (own.high - value),
    };
  });
  return { scaled: { ...scaled, parameters }, widened };
}

/**
 * √((1 + ρ)/(1 - ρ)): readings that hang together tell as much as fewer that do not. Only where ρ is
 * larger than chance.
 * @source effective sample size of a first-order process, any text of time series
 */
function hanging(channels: readonly ChannelResult[]): number {
  const all = channels.reduce((sum, { rows }) => sum + rows.length, 0);
  const rho = channels.reduce((sum, c) => sum + (c.nextCorrelation * c.rows.length) / all, 0);
  return rho > 3 / Math.sqrt(all) ? Math.sqrt((1 + rho) / (1 - Math.min(rho, 0.999))) : 1;
}

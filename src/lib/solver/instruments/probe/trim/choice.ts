/** Whether a trim is worth soldering, and if not, why. */
import { recommended, type Trim, type Trims } from './trims';

/**
 * Error over the range that a trim may leave, K (5 °F), where the one asked for cannot be had: common
 * practice, no source. A reading further off misleads with the trim as it did without.
 */
export const LEFT_MOST = 5 / 1.8;
/** A trim takes at least this share of the error away, or it is not worth its joints: common practice. */
export const GONE_LEAST = 0.5;

/** Why nothing is to be soldered. */
export type NoTrim =
  /** Good enough as it is. */
  | 'not-needed'
  /** Not even the best bias there could be leaves a useful error: something else is wrong. */
  | 'bias-cannot'
  /** Some bias would, but no network of these resistors comes near enough. */
  | 'stock-cannot';

export type TrimChoice =
  { readonly trim: Trim; readonly none: null } | { readonly trim: null; readonly none: NoTrim };

/**
 * The {@link recommended} trim where what it leaves is of use.
 *
 * @param goodEnough - largest error asked for, K
 */
export function chosenTrim(trims: Trims, goodEnough: number): TrimChoice {
  const { present, least } = trims;
  const nothing = (none: NoTrim): TrimChoice => ({ trim: null, none });
  const useful = (left: number) =>
    left <= goodEnough || (left <= LEFT_MOST && left <= (1 - GONE_LEAST) * present);
  if (present <= goodEnough) return nothing('not-needed');
  if (!useful(least)) return nothing('bias-cannot');
  const trim = recommended(trims, goodEnough);
  return trim && useful(trim.worst) ? { trim, none: null } : nothing('stock-cannot');
}

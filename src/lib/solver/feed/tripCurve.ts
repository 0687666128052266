/** Trip time read from a maker's curve instead of from the thermal model. */
import { InvalidInputError, OutOfRangeError, requireWithin } from '../errors';

/** Points of an inverse-time curve at the reference temperature. */
export interface TripCurve {
  /** Up to this multiple of the rating it never opens. */
  readonly holdsTo: number;
  /** Multiples rising, times falling; straight lines between on a log-log chart. */
  readonly points: readonly { readonly multiple: number; readonly time: number }[];
}

export type CurveTrip =
  | { readonly trips: 'yes'; readonly time: number }
  | { readonly trips: 'never' }
  /** Between the current it holds and the first point: the maker promises neither. */
  | { readonly trips: 'not-promised'; readonly longerThan: number };

/**
 * Time to open at a multiple of the (derated) rating.
 * @throws {@link OutOfRangeError} beyond the last point
 * @throws {@link InvalidInputError} for a curve that does not fall
 * @source Interpolation linear in log current and log time, as such curves are drawn
 */
export function tripTimeFromCurve({ holdsTo, points }: TripCurve, multiple: number): CurveTrip {
  requireWithin('trip curve', { multiple: [0, 100], holdsTo: [0, 100] }, { multiple, holdsTo });
  const first = points[0];
  const last = points[points.length - 1];
  if (!first || !last) throw new InvalidInputError('breaker.curve', 'has no points');
  points.forEach((p, i) => {
    const before = points[i - 1] ?? { multiple: holdsTo, time: Infinity };
    if (!(p.multiple > before.multiple && p.time < before.time && p.time > 0)) {
      throw new InvalidInputError('breaker.curve', 'time must fall as current rises', p.multiple);
    }
  });
  if (multiple <= holdsTo) return { trips: 'never' };
  if (multiple < first.multiple) return { trips: 'not-promised', longerThan: first.time };
  if (multiple > last.multiple) {
    throw new OutOfRangeError('trip curve', 'multiple', multiple, [0, last.multiple]);
  }
  for (let i = 1; i < points.length; i++) {
    const [low, high] = [points[i - 1]!, points[i]!];
    if (multiple > high.multiple) continue;
    const share = Math.log(multiple / low.multiple) / Math.log(high.multiple / low.multiple);
    return { trips: 'yes', time: low.time * (high.time / low.time) ** share };
  }
  return { trips: 'yes', time: last.time };
}

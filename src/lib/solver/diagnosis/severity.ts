/** How bad a fault is, as words and plots want it. */
import { PLUS_MINUS_SIGMAS } from './likelihood';
import type { Cause } from './rank';

/** ± of a cause's severity, two standard deviations; 0 where it has none. */
export const plusMinusOf = ({ severity }: Cause): number =>
  severity ? PLUS_MINUS_SIGMAS * severity.sigma : 0;

/** Points (severity, share of the cause's belief), one for each step of its range. */
export const severityCurve = ({ spread }: Cause): (readonly [number, number])[] =>
  spread.map(({ shown, share }) => [shown.severity, share] as const);

/** ± of a reading as it was taken, two standard deviations. */
export const plusMinusRead = ({ sigma }: { readonly sigma: number }): number =>
  PLUS_MINUS_SIGMAS * sigma;

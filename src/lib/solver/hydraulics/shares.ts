/** Who takes how much of the pump's head. */
import type { HeadShare, HoseId, OperatingPoint } from '../loop/types';

/** A hose's share: velocity and the rest are there. */
export type RunShare = HeadShare & { readonly part: HoseId };

const isRun = (share: HeadShare): share is RunShare =>
  share.part !== 'chargeCooler' && share.part !== 'frontExchanger';

/** The four runs in order of flow. */
export const runShares = ({ shares }: Pick<OperatingPoint, 'shares'>): readonly RunShare[] =>
  shares.filter(isRun);

const larger = <T extends HeadShare>(a: T, b: T) => (b.head > a.head ? b : a);

/** The part that takes most. */
export const largestShare = ({ shares }: Pick<OperatingPoint, 'shares'>): HeadShare =>
  shares.reduce(larger);

/** The run of hose that takes most. */
export const worstRun = (point: Pick<OperatingPoint, 'shares'>): RunShare =>
  runShares(point).reduce(larger);

/** Sum of the heads of all parts, m. */
export const headSum = ({ shares }: Pick<OperatingPoint, 'shares'>): number =>
  shares.reduce((sum, { head }) => sum + head, 0);

/**
 * A head as a fraction of all that the loop asks; 0 where it asks nothing.
 *
 * @formula x = h / H
 * @symbol h - head of the part, m
 * @symbol H - sum over all parts, m
 */
export function fractionOfHead(head: number, point: Pick<OperatingPoint, 'shares'>): number {
  const sum = headSum(point);
  return sum > 0 ? head / sum : 0;
}

/** Head of all four runs together, m. */
export const headOfRuns = (point: Pick<OperatingPoint, 'shares'>): number =>
  headSum({ shares: runShares(point) });

/** Rows of the tables on the sheet: networks by size, corrected points for an editable reader. */
import type { Trim } from '$lib/solver/instruments/probe/trim/trims';
import type { Sentence } from '../types';
import type { Study } from './study';
import { networkWords } from './words';

export interface TrimRow {
  readonly key: string;
  readonly words: Sentence;
  readonly bias: number;
  readonly worst: number;
  readonly withTolerance: number;
  readonly chosen: boolean;
}

/** Best networks of one, two and three resistors; empty where no trim is to be thought of. */
export function trimRows({ trims, trim, noTrim, verdict, job }: Study): TrimRow[] {
  if (!trims?.ok || (!verdict && !job.readerBiasKnown)) return [];
  if (noTrim === 'repair' || noTrim === 'bias-cannot') return [];
  const row = (one: Trim): TrimRow => ({
    key: `${one.network.form} ${one.network.parts.join(' ')}`,
    words: networkWords(one.network),
    bias: one.bias,
    worst: one.worst,
    withTolerance: one.worstWithTolerance,
    chosen: one === trim,
  });
  return ([1, 2, 3] as const)
    .flatMap((size) => trims.value.bySize[size])
    .filter(({ worst, worstWithTolerance }) => Number.isFinite(worst + worstWithTolerance))
    .map(row);
}

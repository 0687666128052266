/** The plan of instruments as data. */
import type { Side } from '$lib/job/evaluate';
import { studyOf as diagnosisOf } from '../diagnosis/study';
import type { ContentOf, SheetContent } from '../types';
import { findings } from './findings';
import { lines } from './lines';
import { inOrder, type Placed } from './order';
import { results } from './results';
import { studyOf } from './study';

/** By what the readings still leave open, where there are any; this may solve every fault. */
export function orderByReadings(side: Side): Placed[] {
  const diagnosis = diagnosisOf(side);
  return inOrder(studyOf(side).read, diagnosis?.ok ? diagnosis.value : null);
}

/** By the trade alone: nothing is solved. */
export const orderByTrade = (side: Side): Placed[] => inOrder(studyOf(side).read, null);

function contentIn(side: Side, order: readonly Placed[]): SheetContent {
  const study = studyOf(side);
  return { results: results(study), lines: lines(study), findings: findings(study, order) };
}

export const content: ContentOf = (side) => contentIn(side, orderByReadings(side));

/** While the faults are being solved; the page alone shows this. */
export const contentByTrade: ContentOf = (side) => contentIn(side, orderByTrade(side));

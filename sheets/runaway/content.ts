/** The sheet on runaway as data: the balance as tried. */
import type { Side } from '$lib/job/evaluate';
import { say, type ContentOf, type SheetContent } from '../types';
import { findings } from './findings';
import { lines } from './lines';
import { results } from './results';
import { studyOf } from './study';

export const content: ContentOf = (side) => {
  const outcome = studyOf(side);
  if (!outcome.ok) {
    return {
      results: results(side, null),
      lines: [],
      findings: [
        {
          code: 'unsolved',
          level: 'act',
          sentence: say`This cannot be solved as tried: ${outcome.problem.message}`,
        },
      ],
    };
  }
  const study = outcome.value;
  return {
    results: results(side, study),
    lines: lines(side, study),
    findings: findings(study),
  };
};

/** Results as tried, with lines and findings as they were said last: a hand on a knob watches the curve. */
export function whileDragged(side: Side, last: SheetContent | undefined): SheetContent {
  if (!last) return content(side);
  const outcome = studyOf(side);
  return { ...last, results: results(side, outcome.ok ? outcome.value : null) };
}

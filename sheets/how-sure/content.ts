/** How sure, as data: results, lines, findings. */
import { STUDIED, type Sureness } from '$lib/job/sure/sureness';
import type { Side } from '$lib/job/evaluate';
import { dutyOf } from '../wiring/duty';
import type { ContentOf, Result } from '../types';
import { findings, nothing } from './findings';
import { lines } from './lines';
import { doubtsOf, meetsLimit, plusMinusOf, spreadOf, studyOf, SUBJECT } from './study';

/** @param withDoubts - false while the shares are still worked out on another thread */
const contentOf =
  (withDoubts: boolean): ContentOf =>
  (side) => {
    const study = studyOf(side);
    if (!study) return { results: [], lines: [], findings: [nothing(side)] };
    const doubts = withDoubts ? doubtsOf(side, dutyOf(side)) : null;
    return {
      results: results(side, study),
      lines: lines(side, study, doubts),
      findings: findings(side, study, doubts),
    };
  };

export const content = contentOf(true);
/** While what makes the answer unsure is worked out on another thread. */
export const DRAWS_ONLY = contentOf(false);
/** While the draws are. */
export const UNDER_WAY: ContentOf = () => ({ results: [], lines: [], findings: [] });

function results(side: Side, study: Sureness): Result[] {
  return STUDIED.flatMap((id): Result[] => {
    const { name, symbol, quantity, difference, better } = SUBJECT[id];
    const s = spreadOf(study, id);
    const absent = 'no draw gave an answer';
    const of = (part: string, says: string, value: number | null | undefined): Result => ({
      id: `${id}-${part}`,
      name: `${name}, ${says}`,
      symbol,
      value: value ?? null,
      absent,
      quantity,
      differenceQuantity: difference,
      better,
    });
    const met = meetsLimit(side, study, id);
    return [
      {
        ...of('middle', 'middle of all draws', s?.median),
        ...(s && { plusMinus: plusMinusOf(s) }),
      },
      of('low', '97.5 % of the draws lie above', s && s.low),
      of('high', '97.5 % of the draws lie below', s && s.high),
      ...(met === null
        ? []
        : [
            {
              id: `${id}-meets`,
              name: `${name}, chance of meeting its limit`,
              symbol: 'p',
              value: met,
              quantity: 'percent' as const,
              better: 'higher' as const,
            },
          ]),
    ];
  });
}

/** The sheet on runaway as data: the balance as tried. */
import { say, type ContentOf } from '../types';
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

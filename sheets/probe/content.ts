/** The probe check as data. */
import { say, type ContentOf } from '../types';
import { findings } from './findings';
import { lines } from './lines';
import { noResults, results } from './results';
import { studyOf } from './study';

export const content: ContentOf = (side) => {
  if (side.id === 'candidate') {
    return {
      results: [],
      lines: [],
      findings: [
        {
          code: 'candidate-not-read',
          level: 'info',
          sentence: say`A candidate has not been built, so no probe was read on it: this sheet is about the loop as found.`,
        },
      ],
    };
  }
  const study = studyOf(side);
  if (!study.ok) {
    return {
      results: noResults('the probe as described cannot be'),
      lines: [],
      findings: [{ code: study.problem.code, level: 'act', sentence: study.sentence }],
    };
  }
  return {
    results: results(study.value),
    lines: lines(study.value),
    findings: findings(study.value),
  };
};

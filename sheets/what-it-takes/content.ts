/** What it would take, as data: results, lines, findings. */
import type { ContentOf } from '../types';
import { findings } from './findings';
import { lines } from './lines';
import { results } from './results';
import { studyOf } from './study';

export const content: ContentOf = (side) => {
  const study = studyOf(side);
  return { results: results(study), lines: lines(study), findings: findings(study) };
};

/** While the answer is worked out on another thread. */
export const UNDER_WAY: ContentOf = () => ({ results: [], lines: [], findings: [] });

/** The log as data: what the job keeps of it. */
import type { ContentOf } from '../types';
import { findings } from './findings';
import { lines } from './lines';
import { results } from './results';
import { studyOf } from './study';

export const content: ContentOf = (side) => {
  const study = studyOf(side);
  return { results: results(study), lines: lines(study), findings: findings(study) };
};

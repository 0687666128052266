/** The few results that say how a loop stands, for the desk. */
import type { Side } from '$lib/job/evaluate';
import { content } from './loop-balance/content';
import type { Result } from './types';

const SHOWN = [
  'cruise.charge-out',
  'cruise.reservoir',
  'traffic.reservoir',
  'pull.charge-out',
  'flow',
];

export const headlineOf = (side: Side): Result[] =>
  content(side).results.filter((result) => SHOWN.includes(result.id));

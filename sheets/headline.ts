/** The few results that say how a loop stands, for the desk; the lines behind them stay unloaded. */
import type { Side } from '$lib/job/evaluate';
import { dutyResults } from './loop-balance/results';
import type { Result } from './types';

const SHOWN = ['cruise.charge-out', 'cruise.reservoir', 'traffic.reservoir', 'pull.charge-out'];

export const headlineOf = (side: Side): Result[] =>
  dutyResults(side).filter((result) => SHOWN.includes(result.id));

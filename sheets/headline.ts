/** The few results that say how a loop stands, for the desk; the lines behind them stay unloaded. */
import type { Side } from '$lib/job/evaluate';
import { stateBelow } from '$lib/solver/loop/limits';
import { dutyResults } from './loop-balance/results';
import type { Result } from './types';

const SHOWN = ['cruise.charge-out', 'cruise.reservoir', 'traffic.reservoir'];

/** Where the loop settles, and the hottest charge of the drive. */
export const headlineOf = (side: Side): Result[] => [
  ...dutyResults(side).filter((result) => SHOWN.includes(result.id)),
  hottestCharge(side),
];

function hottestCharge({ warmUp, limits }: Side): Result {
  const peak = warmUp.ok ? (warmUp.value.peakCharge?.value ?? null) : null;
  return {
    id: 'peak-charge',
    name: 'Charge air to the engine, hottest of the drive',
    symbol: 'T_{3,max}',
    value: peak,
    absent: warmUp.ok ? 'heat is stated outright, so the air is not known' : 'not solved',
    quantity: 'temperature',
    better: 'lower',
    ...(peak !== null && { state: stateBelow(peak, limits.charge) }),
  };
}

/** The ± of each result of a choice: half the range that holds 95 of 100 draws. */
import { costsPerDegree, rangeOf, type Drawn } from '$lib/job/upgrades/spreads';
import { plusMinusOf } from '../how-sure/study';
import { costOf, gainDraws, type Choice } from './choice';

/** Draws of a result, by its id; results that nothing makes unsure are not named. */
const DRAWS: Readonly<Record<string, (choice: Choice) => Drawn | null | undefined>> = {
  'charge-cruise': ({ draws }) => draws.chargeCruise,
  'charge-pull': ({ draws }) => draws.chargePull,
  'charge-after': ({ draws }) => draws.chargeAfter,
  'recovery-time': ({ draws }) => draws.recovery,
  'tank-cruise': ({ draws }) => draws.tankCruise,
  'tank-peak': ({ draws }) => draws.tankPeak,
  'suction-margin': ({ draws }) => draws.suction,
  'boiling-margin': ({ draws }) => draws.boiling,
  'freezing-margin': ({ draws }) => draws.freezing,
  'feed-margin': ({ draws }) => draws.feed,
  'pump-current': ({ draws }) => draws.pumpCurrent,
  current: ({ draws }) => draws.current,
  'gain-cruise': (choice) => gainDraws(choice, 'cruise'),
  'gain-pull': (choice) => gainDraws(choice, 'pull'),
  'per-degree-cruise': (choice) => perDegree(choice, 'cruise'),
  'per-degree-pull': (choice) => perDegree(choice, 'pull'),
};

function perDegree(choice: Choice, judge: 'cruise' | 'pull'): Drawn | null {
  const cost = costOf(choice);
  const taken = gainDraws(choice, judge);
  return cost === null || !taken ? null : costsPerDegree(cost, taken);
}

/** Half the range of draws, SI; undefined where there is none to tell. */
export function halfWidth(draws: Drawn | null | undefined): number | undefined {
  const range = rangeOf(draws ?? null);
  return range ? plusMinusOf(range) : undefined;
}

/** ± of a result of a choice; undefined where it is not drawn, or not unsure. */
export const plusMinus = (choice: Choice, id: string): number | undefined =>
  halfWidth(DRAWS[id]?.(choice));

/** Draws behind the ± of this sheet: as the other thread left them, or fewer made here and now. */
import type { Evaluated, Side } from '$lib/job/evaluate';
import { finished, surenessKey, type Sureness } from '$lib/job/sure/sureness';
import type { Judge } from '$lib/job/upgrades/assess';
import {
  driven,
  drivenKey,
  DRIVES,
  type Driven,
  type DrivenResult,
} from '$lib/job/upgrades/driven';
import type { Drawn } from '$lib/job/upgrades/spreads';
import { candidateSides, toldSets, type UpgradeStudy } from '$lib/job/upgrades/upgrades';
import { Keep } from '$lib/keep';
import { quickStudyOf, studies } from '../how-sure/study';
import { sidesIn } from './study';

/** Some more than the candidates a job can hold. */
const SIDES = 48;
export const drives = new Keep<Driven | null>(SIDES);
const quickDrives = new Keep<Driven | null>(SIDES);

/** Draws of one side; a result that was not drawn is missing. */
export type SideDraws = Readonly<
  Partial<Record<DrivenResult | 'chargeCruise' | 'tankCruise', Drawn>>
>;
export type DrawsOf = (side: Side) => SideDraws;

/** Nothing was drawn. */
export const NO_DRAWS: DrawsOf = () => ({});

/** Sides whose ± are told: of all the settled loops, of some the drives too. */
export function toldSides(all: Evaluated, study: UpgradeStudy) {
  const choices = [all.asFound, ...candidateSides(all.job)];
  const every = [...choices, ...toldSets(study).map(sidesIn(all.job))];
  // Of the best its drive is told as well, whatever it is judged by.
  const best = study.best ? [sidesIn(all.job)(study.best.moves)] : [];
  return { settled: every, driven: study.judge === 'pull' ? every : [...choices, ...best] };
}

/** What of them the other thread still has to draw: nothing, when all is there. */
export const isDrawn = (all: Evaluated, study: UpgradeStudy): boolean => {
  const told = toldSides(all, study);
  return (
    told.settled.every((side) => studies.has(surenessKey(side))) &&
    told.driven.every((side) => drives.has(drivenKey(side)))
  );
};

/**
 * Draws of the sides told. What is missing is drawn at once where nothing can wait, for all alike:
 * sides drawn differently often could not be set beside one another.
 */
export function drawsFor(all: Evaluated, study: UpgradeStudy, atOnce: boolean): DrawsOf {
  const told = toldSides(all, study);
  const quickly = atOnce && !isDrawn(all, study);
  const driving = new Set(told.driven);
  const sure = (side: Side): Sureness | null =>
    quickly ? quickStudyOf(side) : kept(studies, surenessKey(side));
  const drive = (side: Side): Driven | null => {
    const key = drivenKey(side);
    if (!quickly) return kept(drives, key);
    if (!driving.has(side)) return null;
    return quickDrives.of(key, () => finished(driven(side, DRIVES.atOnce)));
  };
  const known = new Map<Side, SideDraws>();
  return (side) => {
    let draws = known.get(side);
    if (!draws) known.set(side, (draws = together(sure(side), drive(side))));
    return draws;
  };
}

const kept = <T>(keep: Keep<T | null>, key: string): T | null =>
  keep.has(key) ? keep.of(key, () => null) : null;

const together = (sure: Sureness | null, drive: Driven | null): SideDraws => ({
  ...(sure && {
    chargeCruise: sure.draws['charge-cruise'],
    tankCruise: sure.draws['reservoir-cruise'],
  }),
  ...drive,
});

/** Draws of the temperature judged by. */
export const judgedDraws = (judge: Judge, draws: SideDraws): Drawn | null =>
  (judge === 'cruise' ? draws.chargeCruise : draws.chargePull) ?? null;

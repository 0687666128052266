/** The study of a job's candidates, kept by what it depends on. */
import { Keep } from '$lib/keep';
import { evaluate, type Evaluated, type Side } from '$lib/job/evaluate';
import { movesOf } from '$lib/job/upgrades/moves';
import type { Job } from '$lib/job/types';
import {
  judgeOf,
  limitsOf,
  setSides,
  upgradesKey,
  upgradeStudy,
  type UpgradeStudy,
} from '$lib/job/upgrades/upgrades';
import type { Limiting } from '$lib/solver/loop/limiting';

const studies = new Keep<UpgradeStudy>(6);

export const isKnown = (job: Job): boolean => studies.has(upgradesKey(job));
export const keep = (job: Job, study: UpgradeStudy): void => studies.set(upgradesKey(job), study);

/** The study, worked out here and now where it is not kept. */
export const studyOf = ({ job }: Evaluated): UpgradeStudy =>
  studies.of(upgradesKey(job), () => {
    const work = upgradeStudy(job);
    for (;;) {
      const step = work.next();
      if (step.done) return step.value;
    }
  });

const limits = new WeakMap<Side, Limiting | null>();

/** What limits one side, where there is no job to study. */
export function ownLimits(side: Side): Limiting | null {
  let found = limits.get(side);
  if (found === undefined) limits.set(side, (found = limitsOf(side, judgeOf(side))));
  return found;
}

const moves = new WeakMap<Job, ReturnType<typeof movesOf>>();

export function movesIn(job: Job) {
  let found = moves.get(job);
  if (!found) moves.set(job, (found = movesOf(job)));
  return found;
}

/** Every ± as typed: none of them moves the comparison itself. */
const plusMinusTexts = ({ asFound, candidate, aside }: Job) =>
  [asFound, candidate?.changes ?? {}, ...aside.map(({ changes }) => changes)].map((entries) =>
    Object.entries(entries).map(([path, { pm, spread, k }]) => [path, pm, spread, k]),
  );

/** What a study with its ± depends on, as text. */
export const drawsKey = (job: Job): string =>
  JSON.stringify([upgradesKey(job), plusMinusTexts(job)]);

const sides = new Keep<ReturnType<typeof setSides>>(6);

/** Sides of the job with sets of its moves. */
export const sidesIn = (job: Job) =>
  sides.of(drawsKey(job), () => setSides(job, movesIn(job), evaluate(job).asFound));

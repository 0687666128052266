/** The thread that compares candidates: one job, one study, then its ±. To stop it, end the thread. */
import { evaluate, type Side } from '$lib/job/evaluate';
import { FULL, sureness, surenessKey } from '$lib/job/sure/sureness';
import { driven, drivenKey, DRIVES } from '$lib/job/upgrades/driven';
import { movesOf } from '$lib/job/upgrades/moves';
import {
  candidateSides,
  setSides,
  toldSets,
  upgradeStudy,
  type UpgradeStudy,
} from '$lib/job/upgrades/upgrades';
import type { PlanAnswer, PlanAsked } from './planMessages';

/** Between two words about how far it is, ms. */
const TELL_EVERY = 100;

const send = (answer: PlanAnswer) => postMessage(answer);

addEventListener('message', ({ data }: MessageEvent<PlanAsked>) => {
  try {
    const study = data.study ?? compared(data);
    draw(data, study);
    send({ kind: 'done' });
  } catch {
    // What cannot be solved is worded where it is shown.
    send({ kind: 'refused' });
  }
});

/** Tells how far it is, not too often. */
function teller(what: 'study' | 'draws'): (done: number, of: number) => void {
  let told = 0;
  return (done, of) => {
    if (performance.now() - told < TELL_EVERY) return;
    told = performance.now();
    send({ kind: 'progress', what, done, of });
  };
}

function compared({ job }: PlanAsked): UpgradeStudy {
  const tell = teller('study');
  const work = upgradeStudy(job);
  for (;;) {
    const step = work.next();
    if (step.done) {
      send({ kind: 'study', study: step.value });
      return step.value;
    }
    tell(step.value.done, step.value.of);
  }
}

/** Settled loops of every side told, then the drives of the candidates and of the best: of all where the pull decides. */
function draw(asked: PlanAsked, study: UpgradeStudy): void {
  const { job } = asked;
  const { asFound } = evaluate(job);
  const sideOf = setSides(job, movesOf(job), asFound);
  const candidates = [asFound, ...candidateSides(job)];
  const all = [...candidates, ...toldSets(study).map(sideOf)];
  const toDraw = open(all, surenessKey, asked.drawn);
  const best = study.best ? [sideOf(study.best.moves)] : [];
  const driving = study.judge === 'pull' ? all : [...candidates, ...best];
  const toDrive = open(driving, drivenKey, asked.driven);
  const of = toDraw.length + toDrive.length;
  const tell = teller('draws');
  let done = 0;
  const finished = <T>(work: Generator<number, T>): T => {
    for (;;) {
      const step = work.next();
      if (step.done) {
        done++;
        return step.value;
      }
      tell(done, of);
    }
  };
  for (const [key, side] of toDraw) {
    send({ kind: 'drawn', key, value: finished(sureness(side, FULL)) });
  }
  if (toDrive.length > 0) send({ kind: 'settled' });
  for (const [key, side] of toDrive) {
    send({ kind: 'driven', key, value: finished(driven(side, DRIVES.full)) });
  }
}

/** Each side once, by what it depends on, less those that are there. */
const open = (sides: readonly Side[], keyOf: (side: Side) => string, known: readonly string[]) =>
  [...new Map(sides.map((side) => [keyOf(side), side]))].filter(([key]) => !known.includes(key));

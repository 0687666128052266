/** The whole loop solved for both sides of a job: once per job, shared by every sheet. */
import { prepareLoop } from '$lib/solver/loop/prepare';
import { requireMeasures } from './models/coreMeasures';
import { requireConsistent } from './models/consistency';
import type { LogRecord } from './log/logRecord';
import { toLoop } from './models/toLoop';
import type { Side } from './side';
import { solvedSide } from './solvedSide';
import type { Candidate, Job, SideId } from './types';
import { resolve } from './values';

export { requestOf } from './solvedSide';

export type { Side };

export interface Evaluated {
  /** What it was made from: names and parts of the candidates stand there, and those put aside. */
  readonly job: Job;
  readonly asFound: Side;
  readonly candidate: Side | null;
}

const known = new WeakMap<Job, Evaluated>();

/** Evaluate a job; the same job gives the same object. Never throws. */
export function evaluate(job: Job): Evaluated {
  let evaluated = known.get(job);
  if (!evaluated) {
    evaluated = {
      job,
      asFound: withLog(keptSide(job, 'asFound', job.asFound, job.header), job.log),
      candidate: job.candidate
        ? withLog(
            keptSide(job, 'candidate', job.candidate.changes, job.asFound, job.header),
            job.log,
          )
        : null,
    };
    known.set(job, evaluated);
  }
  return evaluated;
}

/** The candidates put aside, each as a side of its own; solved when asked, and kept like the others. */
export const evaluateAside = (job: Job): readonly Side[] =>
  job.aside.map((candidate) => sideWith(job, candidate));

/** The loop as found with a candidate of its own making. */
export const sideWith = (job: Job, candidate: Candidate): Side =>
  evaluate({ ...job, candidate, aside: [] }).candidate!;

const logged = new WeakMap<Side, Side>();

/** The side with what the job keeps of a log: it stands before the other, which stays as it was solved. */
function withLog(side: Side, log: LogRecord | undefined): Side {
  if (!log) return side;
  let own = logged.get(side);
  if (own?.log !== log) {
    own = Object.create(side, { log: { value: log, enumerable: true } }) as Side;
    logged.set(side, own);
  }
  return own;
}

interface KeptSide {
  readonly side: Side;
  readonly madeOf: readonly object[];
}

const kept = new WeakMap<object, KeptSide>();

/** An edit of the candidate or of a note leaves the loop as found, and what was solved of it, alone. */
function keptSide(job: Job, id: SideId, key: object, ...madeOf: object[]): Side {
  const found = kept.get(key);
  if (found?.side.id === id && found.madeOf.every((part, i) => part === madeOf[i])) {
    return found.side;
  }
  const side = sideOf(job, id);
  kept.set(key, { side, madeOf });
  return side;
}

function sideOf(job: Job, id: SideId): Side {
  const { values, problems } = resolve(job, id);
  const described = { id, values, problems, loop: toLoop(values) };
  return solvedSide(described, job.header.units, (loop) => {
    requireMeasures(values);
    requireConsistent(loop);
    return prepareLoop(loop);
  });
}

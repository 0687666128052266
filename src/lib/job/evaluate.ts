/** The whole loop solved for both sides of a job: once per job, shared by every sheet. */
import { once } from '$lib/once';
import { prepareLoop, type PreparedLoop } from '$lib/solver/loop/prepare';
import { steadyIn } from '$lib/solver/loop/steady';
import type {
  DutyId,
  Loop,
  SteadySolution,
  WarmUpRequest,
  WarmUpSolution,
} from '$lib/solver/loop/types';
import { coldState, settledState, warmUp } from '$lib/solver/loop/warmUp';
import { requireMeasures } from './models/coreMeasures';
import { requireConsistent } from './models/consistency';
import type { LogRecord } from './log/logRecord';
import { problemOf } from './problem';
import { toLimits, toLoop, toSchedule, toStart, type Limits } from './models/toLoop';
import type { Candidate, Job, Outcome, OutcomeProblem, Problem, SideId } from './types';
import { resolve, type Values } from './values';

/** One side of a job: its values, and what they lead to. Solutions are found when first asked for. */
export interface Side {
  readonly id: SideId;
  readonly values: Values;
  /** Fields whose last text was refused. */
  readonly problems: readonly Problem[];
  readonly loop: Loop;
  readonly limits: Limits;
  /** What the job keeps of a log. */
  readonly log: LogRecord | null;
  /** The loop ready to be solved, with its curves; absent when its description contradicts itself. */
  readonly prepared: Outcome<PreparedLoop>;
  readonly steady: Readonly<Record<DutyId, Outcome<SteadySolution>>>;
  readonly request: Outcome<WarmUpRequest>;
  readonly warmUp: Outcome<WarmUpSolution>;
  /** Set when the loop as described contradicts itself: nothing below can be solved. */
  readonly problem?: OutcomeProblem;
}

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
  const { units } = job.header;
  const { values, problems } = resolve(job, id);
  const loop = toLoop(values);
  const attempt = <T>(work: () => T): Outcome<T> => {
    try {
      return { ok: true, value: work() };
    } catch (thrown) {
      return { ok: false, problem: problemOf(thrown, units) };
    }
  };
  const prepared = attempt(() => {
    requireMeasures(values);
    requireConsistent(loop);
    const ready = prepareLoop(loop);
    // The air side is checked by being solved; the duties need it anyway.
    for (const duty of Object.values(loop.duties)) ready.airAt(duty.vehicleSpeed);
    return ready;
  });
  const solved = <T>(work: (ready: PreparedLoop) => T) =>
    once((): Outcome<T> => (prepared.ok ? attempt(() => work(prepared.value)) : prepared));

  const steadyAt = (duty: DutyId) =>
    solved((ready) => steadyIn(ready, loop.duties[duty], loop.duties[duty].vehicleSpeed));
  const traffic = steadyAt('traffic');
  const cruise = steadyAt('cruise');
  const pull = steadyAt('pull');
  const request = solved((ready) => requestOf(ready, values));
  const history = once((): Outcome<WarmUpSolution> => {
    const asked = request();
    if (!asked.ok) return asked;
    if (!prepared.ok) return prepared;
    return attempt(() => warmUp(prepared.value, asked.value));
  });

  return {
    id,
    values,
    problems,
    loop,
    limits: toLimits(values),
    log: null,
    prepared,
    steady: {
      get traffic() {
        return traffic();
      },
      get cruise() {
        return cruise();
      },
      get pull() {
        return pull();
      },
    },
    get request() {
      return request();
    },
    get warmUp() {
      return history();
    },
    ...(prepared.ok ? {} : { problem: prepared.problem }),
  };
}

/** The drive that is asked of a loop. */
export function requestOf(ready: PreparedLoop, values: Values): WarmUpRequest {
  const { charge, recoveryBand } = toLimits(values);
  const start = toStart(values);
  return {
    schedule: toSchedule(values),
    start:
      start.kind === 'cruise'
        ? settledState(ready, 'cruise')
        : coldState(ready, start.kind === 'given' ? start.temperature : undefined),
    chargeLimit: charge,
    recoveryBand,
  };
}

/** The results a target may be set for, each worked out for one set of values. */
import { once } from '$lib/once';
import { SolverError } from '$lib/solver/errors';
import { settledIn } from '$lib/solver/hydraulics/pumpInLoop';
import { prepareLoop, type PreparedLoop } from '$lib/solver/loop/prepare';
import { steadyIn } from '$lib/solver/loop/steady';
import type {
  DutyId,
  Segment,
  SteadySolution,
  TransientState,
  WarmUpSolution,
} from '$lib/solver/loop/types';
import { coldState, settledState, warmUp } from '$lib/solver/loop/warmUp';
import { requireConsistent } from '../models/consistency';
import { requireMeasures } from '../models/coreMeasures';
import type { ResultId } from '../fields/whatItTakes';
import { aroundPulls, type Question } from './invertQuestion';
import { fieldPathOf } from '../problem';
import { toLimits, toLoop, toSchedule, toStart } from '../models/toLoop';
import type { Values } from '../values';

/** Why there is no result. `refused`: the description contradicts itself, at `path` where it is known. */
export interface Gone {
  readonly code:
    'boils' | 'freezes' | 'no-flow' | 'no-air' | 'pump-stopped' | 'not-back' | 'refused';
  readonly path?: string;
  /** In the solver's words. */
  readonly words?: string;
}

/** A result, or why there is none. */
export type Tried =
  { readonly y: number; readonly gone: null } | { readonly y: null; readonly gone: Gone };

/** Thrown inside this file only, where a state has no result. */
class NotThere extends Error {
  constructor(readonly gone: Gone) {
    super(gone.code);
  }
}
const not = (code: Gone['code']): never => {
  throw new NotThere({ code });
};

/** Pulls counted before a loop is called endless. */
export const MOST_PULLS = 12;
/** A loop is given so long to recover, s. */
const RECOVERS_WITHIN = 7200;
/** Points of a history nobody looks at. */
const FEW = 2;

/** The loop of one set of values, solved as far as asked. */
export interface Trial {
  readonly values: Values;
  readonly prepared: () => PreparedLoop;
  /** Settled in a duty; refuses a state that has no liquid balance or no flow. */
  settled(duty: DutyId): SteadySolution;
  /** Several pulls out of the settled loop, with rests between. */
  readonly pulls: () => WarmUpSolution;
}

export function trialOf(values: Values, question: Question): Trial {
  const prepared = once(() => {
    requireMeasures(values);
    const loop = toLoop(values);
    requireConsistent(loop);
    return prepareLoop(loop);
  });
  const states = new Map<DutyId, SteadySolution>();
  const settled = (duty: DutyId) => {
    const ready = prepared();
    const { [duty]: asked } = ready.loop.duties;
    const s = states.get(duty) ?? steadyIn(ready, asked, asked.vehicleSpeed);
    states.set(duty, s);
    return s.status === 'balanced' ? s : not(s.status);
  };
  const around = aroundPulls(question);
  return {
    values,
    prepared,
    settled,
    pulls: once(() =>
      driven(
        values,
        prepared(),
        inARow(question, question.pulls),
        settledState(prepared(), around, settled(around)),
      ),
    ),
  };
}

function inARow(question: Question, pulls: number): Segment[] {
  const pull = { duty: 'pull', duration: question.pullTime } as const;
  const rest = { duty: aroundPulls(question), duration: question.rest };
  return Array.from({ length: pulls }, (_, i) => (i === 0 ? [pull] : [rest, pull])).flat();
}

/** @throws where the liquid does not stay one to the end */
function driven(
  values: Values,
  ready: PreparedLoop,
  schedule: readonly Segment[],
  start: TransientState,
): WarmUpSolution {
  const { charge, recoveryBand } = toLimits(values);
  const request = { schedule, start, chargeLimit: charge, recoveryBand, points: FEW };
  const run = warmUp(ready, request);
  return run.status === 'completed' ? run : not(run.status);
}

const known = (air: number | null): number =>
  air === null || Number.isNaN(air) ? not('no-air') : air;

const RESULT: Readonly<Record<ResultId, (trial: Trial, question: Question) => number>> = {
  charge: ({ settled }, { duty }) => known(settled(duty).chargeOut),
  reservoir: ({ settled }, { duty }) => settled(duty).temperatures.reservoir,
  flow: ({ settled }, { duty }) => settled(duty).operating.flow,
  air: ({ prepared }, { duty }) => {
    const ready = prepared();
    return ready.airAt(ready.loop.duties[duty].vehicleSpeed).totalVolumeFlow;
  },
  suction: ({ settled }, { duty }) => settled(duty).margins.suction,
  boiling: ({ settled }, { duty }) => settled(duty).margins.boiling,
  drop({ settled, prepared }, { duty }) {
    const { supplied } = settledIn(prepared().hydraulics, settled(duty).liquid);
    return supplied?.status === 'runs' ? supplied.drop : not('pump-stopped');
  },
  'pull-end': ({ pulls }) => known(pulls().history.chargeOut.at(-1)!),
  pulls: ({ values, prepared, settled }, question) => {
    const around = aroundPulls(question);
    let state = settledState(prepared(), around, settled(around));
    for (let done = 0; done < MOST_PULLS; done++) {
      const schedule = inARow(question, 2).slice(done === 0 ? 0 : 1, done === 0 ? 1 : 3);
      const run = driven(values, prepared(), schedule, state);
      if (known(run.peakCharge?.value ?? null) > toLimits(values).charge) return done;
      state = run.end;
    }
    return MOST_PULLS;
  },
  peak({ values, prepared, settled }) {
    const start = toStart(values);
    const ready = prepared();
    const from =
      start.kind === 'cruise'
        ? settledState(ready, 'cruise', settled('cruise'))
        : coldState(ready, start.kind === 'given' ? start.temperature : undefined);
    return known(driven(values, ready, toSchedule(values), from).peakCharge?.value ?? null);
  },
  recovery({ values, prepared, settled }, question) {
    const around = aroundPulls(question);
    const run = driven(
      values,
      prepared(),
      [
        { duty: 'pull', duration: question.pullTime },
        { duty: around, duration: RECOVERS_WITHIN },
      ],
      settledState(prepared(), around, settled(around)),
    );
    return run.recoveryTime ?? not('not-back');
  },
};

/** The result of a trial. Never throws for what a loop can be. */
export function tried(trial: Trial, question: Question): Tried {
  try {
    return { y: RESULT[question.result](trial, question), gone: null };
  } catch (thrown) {
    if (thrown instanceof NotThere) return { y: null, gone: thrown.gone };
    if (!(thrown instanceof SolverError)) throw thrown;
    const { quantity, code } = thrown.facts;
    const path = quantity === undefined ? undefined : fieldPathOf(quantity);
    return {
      y: null,
      gone: {
        code: 'refused',
        ...(path !== undefined && { path }),
        ...(code === 'invalid-input' && { words: thrown.message }),
      },
    };
  }
}

/** What the sheet asks the solver for, once per side; what does not depend on the knobs is kept. */
import type { Side } from '$lib/job/evaluate';
import { once } from '$lib/once';
import { problemOf } from '$lib/job/problem';
import { whatIfOf } from '$lib/job/models/toWhatIf';
import type { Outcome } from '$lib/job/types';
import { runawayModel, type Balance, type RunawayModel } from '$lib/solver/loop/runaway/balanceAt';
import { edgeOf, type Branch, type Edge } from '$lib/solver/loop/runaway/branches';
import { continueCrossings } from '$lib/solver/loop/runaway/continueCrossings';
import { crossings, type Crossings } from '$lib/solver/loop/runaway/crossings';
import { HARDER } from '$lib/solver/loop/runaway/readings';
import {
  KNOB_RANGE,
  NEUTRAL,
  type Feedbacks,
  type Knob,
  type Knobs,
  type WhatIf,
} from '$lib/solver/loop/runaway/types';
import type { PreparedLoop } from '$lib/solver/loop/prepare';
import type { DutyId } from '$lib/solver/loop/types';
import { dutyOf } from '../wiring/duty';

/** One setting with its crossings. */
export interface Setting {
  readonly balance: Balance;
  readonly found: Crossings;
}

export interface Study {
  readonly duty: DutyId;
  readonly knob: Knob;
  readonly knobs: Knobs;
  /** As tried, and the loop as described (what sheet 1 shows). */
  readonly now: Setting;
  readonly neutral: Setting;
  /** Knobs or switches stand elsewhere than described. */
  readonly moved: boolean;
  readonly branches: readonly Branch[];
  /** Where the balance tried is lost when the knob is turned the hard way. */
  readonly edge: Edge | null;
}

const known = new WeakMap<Side, Outcome<Study>>();

/** The study of a side; the same side gives the same object. */
export function studyOf(side: Side): Outcome<Study> {
  let study = known.get(side);
  if (!study) known.set(side, (study = attempt(side, (prepared) => newStudy(side, prepared))));
  return study;
}

/** Work on the loop of a side; a refusal of the solver becomes words. */
export function attempt<T>(side: Side, work: (prepared: PreparedLoop) => T): Outcome<T> {
  if (!side.prepared.ok) return side.prepared;
  try {
    return { ok: true, value: work(side.prepared.value) };
  } catch (thrown) {
    return { ok: false, problem: problemOf(thrown, 'US') };
  }
}

/** The loop as the other sheets have it. */
export const describedBy = ({ loop }: PreparedLoop): Omit<WhatIf, 'knobs'> => ({
  feedbacks: {
    suction: loop.pump.cavitation === 'counted',
    breaker: false,
    underhood: null,
  } satisfies Feedbacks,
  cap: 'as-found',
});

export function settingOf(model: RunawayModel, knobs: Knobs): Setting {
  const balance = model.with(knobs);
  return { balance, found: crossings(balance) };
}

function newStudy(side: Side, prepared: PreparedLoop): Study {
  const duty = dutyOf(side);
  const what = whatIfOf(side.values);
  const { knobs } = what;
  const knob = side.values['runaway.knobMoved']!.choice as Knob;
  const model = modelOf(prepared, duty, what);
  const described = modelOf(prepared, duty, describedBy(prepared));
  const now = settingOf(model, knobs);
  const neutral = settingOf(described, NEUTRAL);
  const { fromCold } = now.found;
  // Worked out when asked for: while a knob is dragged nobody looks at them.
  const branches = once(() => branchesOf(prepared, duty, what, knob));
  const edge = once(() =>
    fromCold
      ? edgeOf(branches(), { knob: knobs[knob], T: fromCold.T }, HARDER[knob], KNOB_RANGE[knob])
      : null,
  );
  return {
    duty,
    knob,
    knobs,
    now,
    neutral,
    moved:
      (Object.keys(NEUTRAL) as Knob[]).some((key) => knobs[key] !== NEUTRAL[key]) ||
      now.found.fromCold?.T !== neutral.found.fromCold?.T,
    get branches() {
      return branches();
    },
    get edge() {
      return edge();
    },
  };
}

/** Things worked out for a description, whatever object holds it: a moved knob makes a new job. */
const MOST = 24;
const kept = new Map<string, unknown>();

export function remembered<T>(key: string, work: () => T): T {
  if (kept.has(key)) return kept.get(key) as T;
  const made = work();
  if (kept.size >= MOST) kept.delete(kept.keys().next().value!);
  kept.set(key, made);
  return made;
}

const keyOf = (prepared: PreparedLoop, duty: DutyId, what: Omit<WhatIf, 'knobs'>) =>
  JSON.stringify([prepared.loop, duty, what.feedbacks, what.cap]);

export const modelOf = (
  prepared: PreparedLoop,
  duty: DutyId,
  what: Omit<WhatIf, 'knobs'>,
): RunawayModel =>
  remembered(`model ${keyOf(prepared, duty, what)}`, () =>
    runawayModel(prepared, prepared.loop.duties[duty], what),
  );

/** Branches along a knob do not depend on where that knob stands: sliding it costs nothing here. */
export function branchesOf(
  prepared: PreparedLoop,
  duty: DutyId,
  what: WhatIf,
  knob: Knob,
): readonly Branch[] {
  const others = { ...what.knobs, [knob]: NEUTRAL[knob] };
  const key = `branches ${knob} ${JSON.stringify(others)} ${keyOf(prepared, duty, what)}`;
  return remembered(key, () => continueCrossings(modelOf(prepared, duty, what), others, knob));
}

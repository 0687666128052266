/**
 * The guided walk: predict, then see. Which answer is right and every number said come of this loop's
 * own solution; the words cover each way it can come out.
 */
import { gainOf } from '$lib/job/models/toWhatIf';
import type { Side } from '$lib/job/evaluate';
import type { Outcome } from '$lib/job/types';
import { edgeOf } from '$lib/solver/loop/runaway/branches';
import { changeOf, holding } from '$lib/solver/loop/runaway/readings';
import { KNOB_RANGE, NEUTRAL, type WhatIf } from '$lib/solver/loop/runaway/types';
import { dutyOf } from '../wiring/duty';
import { q, say } from '../types';
import { attempt, branchesOf, describedBy, modelOf, remembered, settingOf } from './study';
import { edgeStep, loadStep, underhoodStep } from './walkLater';
import { HOTTER_DAY, LOST, NOTHING, type Answer, type WalkFacts, type WalkStep } from './walkFacts';

/** The seven steps for a side; null where the loop as described has no balance to start from. */
export function walkOf(side: Side): Outcome<readonly WalkStep[] | null> {
  return attempt(side, (prepared) => {
    const duty = dutyOf(side);
    const gain = gainOf(side.values);
    return remembered(`walk ${duty} ${JSON.stringify([gain, prepared.loop])}`, () => {
      const what = (underhood: boolean, open: boolean): Omit<WhatIf, 'knobs'> => ({
        feedbacks: { suction: true, breaker: false, underhood: underhood ? gain : null },
        cap: open ? 'open' : 'as-found',
      });
      const base = settingOf(modelOf(prepared, duty, describedBy(prepared)), NEUTRAL).found
        .fromCold;
      if (!base || !(base.boilingMargin > 0)) return null;
      const settle: WalkFacts['settle'] = (knobs, { underhood = false, open = false } = {}) =>
        settingOf(modelOf(prepared, duty, what(underhood, open)), { ...NEUTRAL, ...knobs }).found
          .fromCold;
      const start = settle({}, { underhood: true, open: true });
      const branches = branchesOf(
        prepared,
        duty,
        { ...what(true, true), knobs: NEUTRAL },
        'ambientShift',
      );
      const edge = start
        ? edgeOf(branches, { knob: 0, T: start.T }, 1, KNOB_RANGE.ambientShift)
        : null;
      const facts: WalkFacts = { base, settle, edge };
      return [
        crossingStep(facts),
        dayStep(facts),
        flowStep(facts),
        fanStep(facts),
        loadStep(facts),
        underhoodStep(facts),
        edgeStep(facts, start),
      ];
    });
  });
}

const crossingStep = ({ base }: WalkFacts): WalkStep => ({
  title: 'One crossing',
  situation: say`The loop starts cold. ${q(base.entering, 'heat')} would enter the liquid at the temperature where it ends; at first more enters than leaves.`,
  question: 'What decides where it stops?',
  choices: {
    a: say`The volume of the reservoir`,
    b: say`The temperature at which as much heat leaves as enters`,
    c: say`The boiling point`,
  },
  right: 'b',
  see: say`It stops at ${q(base.T, 'temperature')}, where the two curves cross. A degree above that, ${q(holding(base), 'conductance')} more leaves than enters, and a degree below as much less: the crossing holds. The volume stands in neither curve; it only sets how long this takes.`,
  set: { knobs: {}, ...NOTHING },
});

/** Which of three stretches a ratio falls into. */
const third = (ratio: number, low: number, high: number): Answer =>
  ratio < low ? 'a' : ratio <= high ? 'b' : 'c';

function dayStep({ base, settle }: WalkFacts): WalkStep {
  const hot = settle({ ambientShift: HOTTER_DAY });
  const rise = hot ? hot.T - base.T : null;
  const day = q(HOTTER_DAY, 'temperatureDifference');
  return {
    title: 'A hotter day',
    situation: say`Everything stays, but the day is ${day} hotter.`,
    question: 'How much hotter does the tank settle?',
    choices: {
      a: say`Less than half of that`,
      b: say`About as much`,
      c: say`Half as much again, or more`,
    },
    right: rise === null ? 'c' : third(rise / HOTTER_DAY, 0.5, 1.5),
    see:
      rise === null
        ? LOST
        : say`It settles ${q(rise, 'temperatureDifference')} hotter. Heat leaves by the difference to ambient, so the whole curve of leaving heat slides with the day. Heat from the engine, which is as hot as before, enters a little less; inlet and bay follow the day.`,
    set: { knobs: { ambientShift: HOTTER_DAY }, ...NOTHING },
  };
}

/** Bounds of "hardly" and "much", K. */
const HARDLY = 2;
const MUCH = 8;

function flowStep({ base, settle }: WalkFacts): WalkStep {
  const half = settle({ flow: 0.5 });
  const change = half && changeOf(base, half);
  return {
    title: 'Half the flow',
    situation: say`The flow is halved: a kinked hose, a tired pump, air in the loop.`,
    question: 'What does the liquid at the tank do?',
    choices: {
      a: say`Hardly anything: within ${q(HARDLY, 'temperatureDifference')}`,
      b: say`It rises, by up to ${q(MUCH, 'temperatureDifference')}`,
      c: say`It rises by more than that`,
    },
    right: !change || change.liquid > MUCH ? 'c' : change.liquid > HARDLY ? 'b' : 'a',
    see: change
      ? say`It moves by ${q(change.liquid, 'temperatureDifference')}. The same heat now rides on half the flow, so the drop across the exchanger goes from ${q(base.drop, 'temperatureDifference')} to ${q(half.drop, 'temperatureDifference')}. Remember that drop: it is what tells this case from the next.`
      : LOST,
    set: { knobs: { flow: 0.5 }, ...NOTHING },
  };
}

/** A drop counts as changed beyond these ratios. */
const NARROWER = 0.85;
const WIDER = 1.15;

function fanStep({ base, settle }: WalkFacts): WalkStep {
  const slow = settle({ fan: 0.7 });
  const change = slow && changeOf(base, slow);
  return {
    title: 'A weak fan',
    situation: say`The fans get ${q(0.7, 'percent')} of their volts, with the flow as it was. At the tank this looks like too little flow.`,
    question: 'What does the drop across the front exchanger do?',
    choices: {
      a: say`It narrows`,
      b: say`It stays about the same`,
      c: say`It widens`,
    },
    right: change ? third(change.dropRatio, NARROWER, WIDER) : 'a',
    see: change
      ? say`The tank moves by ${q(change.liquid, 'temperatureDifference')}, and the drop goes from ${q(base.drop, 'temperatureDifference')} to ${q(slow.drop, 'temperatureDifference')}. The same flow carries nearly the same heat, so the drop can hardly widen. A hot tank with a wide drop wants flow; a hot tank with a narrow drop wants air or face.`
      : LOST,
    set: { knobs: { fan: 0.7 }, ...NOTHING },
  };
}

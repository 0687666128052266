/** The last three steps of the walk: load, the bay, and the edge. */
import { changeOf } from '$lib/solver/loop/runaway/readings';
import { KNOB_RANGE, type Crossing } from '$lib/solver/loop/runaway/types';
import { q, say } from '../types';
import { HOTTER_DAY, LOST, NOTHING, type WalkFacts, type WalkStep } from './walkFacts';

/** Within this the two rise alike, K. */
const ALIKE = 1;

export function loadStep({ base, settle }: WalkFacts): WalkStep {
  const more = settle({ load: 2 });
  const change = more && changeOf(base, more);
  const stated = change !== null && change.charge === null;
  const ahead = change && change.charge !== null ? change.charge - change.liquid : 0;
  return {
    title: 'Twice the load',
    situation: say`The engine breathes twice the air (or, where heat is stated, twice that heat enters), and goes on doing so.`,
    question: 'Which rises more?',
    choices: {
      a: say`The charge air to the engine`,
      b: say`Both alike, within ${q(ALIKE, 'temperatureDifference')}`,
      c: say`The liquid at the tank`,
    },
    right: ahead > ALIKE ? 'a' : ahead < -ALIKE || stated || !change ? 'c' : 'b',
    see: !change
      ? LOST
      : change.charge === null
        ? say`The liquid moves by ${q(change.liquid, 'temperatureDifference')}. Heat is stated outright here, so the charge air is not known.`
        : say`The liquid moves by ${q(change.liquid, 'temperatureDifference')} and the charge air by ${q(change.charge, 'temperatureDifference')}. At small loads the charge cooler is nearly perfect and the intake reading is the liquid’s temperature; at large ones it lets more of the compressor’s heat through.`,
    set: { knobs: { load: 2 }, ...NOTHING },
  };
}

/** The same within this, K. */
const SAME = 0.5;

export function underhoodStep({ settle }: WalkFacts): WalkStep {
  const rise = (underhood: boolean) => {
    const [cool, hot] = [
      settle({}, { underhood }),
      settle({ ambientShift: HOTTER_DAY }, { underhood }),
    ];
    return cool && hot ? hot.T - cool.T : null;
  };
  const [without, joined] = [rise(false), rise(true)];
  const settled = settle({}, { underhood: true });
  const alone = settle({});
  const more = without !== null && joined !== null ? joined - without : null;
  return {
    title: 'The bay joins in',
    situation: say`Hot liquid now warms bay and inlet, by the gains stated. The day becomes ${q(HOTTER_DAY, 'temperatureDifference')} hotter again.`,
    question: 'Compared with the same hotter day without this feedback, the tank rises',
    choices: {
      a: say`by less`,
      b: say`by the same, within ${q(SAME, 'temperatureDifference')}`,
      c: say`by more`,
    },
    right: more === null || more > SAME ? 'c' : more < -SAME ? 'a' : 'b',
    see:
      settled && alone && without !== null && joined !== null
        ? say`The feedback by itself moves the tank by ${q(settled.T - alone.T, 'temperatureDifference')}. The hotter day then adds ${q(joined, 'temperatureDifference')}, against ${q(without, 'temperatureDifference')} without it. The bay is warmed by how far the liquid stands above the day, and that hardly changes when both rise together; what the feedback does is tilt the entering curve, so the crossing holds less firmly.`
        : LOST,
    set: { knobs: { ambientShift: HOTTER_DAY }, underhood: true, open: false },
  };
}

/** Past the edge by this much, K. */
const PAST = 1;

export function edgeStep({ edge }: WalkFacts, start: Crossing | null): WalkStep {
  const set = {
    knobs: {
      ambientShift: edge
        ? Math.min(edge.knob + PAST, KNOB_RANGE.ambientShift[1])
        : KNOB_RANGE.ambientShift[1],
    },
    underhood: true,
    open: true,
  };
  const told = {
    fold: (knob: number) =>
      say`It rises as before, then at ${q(knob, 'temperatureDifference')} above the day described the stable crossing meets an unstable one and both are gone. Hot liquid starves the pump, the lost flow takes heat rejection with it, and nothing stops the rise any more. Cooling the day by a degree again does not bring it back once it has run past.`,
    boils: (knob: number) =>
      say`It rises as before, until at ${q(knob, 'temperatureDifference')} above the day described its hottest liquid boils. In this loop boiling comes before a fold: the heats still meet, but no longer as liquid.`,
    end: (knob: number) =>
      say`It rises as before until at ${q(knob, 'temperatureDifference')} above the day described it leaves the range in which the liquid is described. A cap that holds its pressure would be the next limit.`,
  };
  return {
    title: 'The edge',
    situation: say`The cap is open to the air, suction and bay feedbacks are on, and the day grows hotter and hotter.`,
    question: 'How does the tank follow?',
    choices: {
      a: say`Degree for degree, as far as the knob goes`,
      b: say`Degree for degree at first; then the balance is lost`,
      c: say`There is no balance even on the day described`,
    },
    right: !start || start.boilingMargin <= 0 ? 'c' : edge ? 'b' : 'a',
    see:
      !start || start.boilingMargin <= 0
        ? say`With the cap open and the bay joining in, this loop has no balance below boiling even on the day described.`
        : edge
          ? told[edge.why](edge.knob)
          : say`It follows as far as the knob goes: this loop keeps its balance on any day worth naming, even with the cap open.`,
    set,
  };
}

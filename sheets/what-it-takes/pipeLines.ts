/** Lines of hoses and of the wire at the value found. */
import { copperArea } from '$lib/solver/feed/gauge';
import { feedParts } from '$lib/solver/feed/circuit';
import { wireResistance20, wireResistanceHot } from '$lib/solver/feed/formulas';
import { jointResistanceOf } from '$lib/solver/feed/wireFor';
import { formulaLine, type Line } from '$lib/solver/formula';
import { flowArea, velocity } from '$lib/solver/hydraulics/hoseFormulas';
import { settledIn } from '$lib/solver/hydraulics/pumpInLoop';
import { aroundPulls } from '$lib/job/invert/invertQuestion';
import { dropAtCurrent } from '$lib/solver/loop/targetFormulas';
import type { Study } from './study';

/** How fast the liquid would run in the hose. */
export function hoseLines(study: Study): Line[] {
  const { answer, input, kind } = study;
  const trial = study.told();
  if (!trial || !answer.at || input.quantity !== 'bore' || input.id.endsWith('fittingBore'))
    return [];
  if (kind.anyDuty) return [];
  const { question } = answer;
  const duty = kind.followed ? aroundPulls(question) : question.duty;
  const { flow } = trial.settled(duty).operating;
  const area = formulaLine(
    flowArea,
    { D: answer.at.x },
    {
      statement: 'Open area at that bore',
      why: 'It goes with the square of the bore: one size up is worth more than it looks.',
    },
  );
  return [
    area,
    formulaLine(
      velocity,
      { Q: flow, A: area.value },
      {
        statement: 'Velocity in it',
        why: 'Common practice keeps suction below about 4 ft/s (1.2 m/s) and delivery below 7 ft/s (2.1 m/s).',
        notes: [{ code: 'flow', message: 'Flow of the loop solved with that bore.' }],
      },
    ),
  ];
}

/** What the wire loses, by hand. */
export function gaugeLines(study: Study): Line[] {
  const { answer } = study;
  const { question } = answer;
  const trial = study.told();
  if (!trial || question.input !== 'part.gauge' || question.result !== 'drop') return [];
  const { loop, hydraulics } = trial.prepared();
  const { feed } = loop;
  const { supplied } = settledIn(hydraulics, trial.settled(question.duty).liquid);
  if (!feed || supplied?.status !== 'runs') return [];
  const { wire } = feed.circuit;
  const cold = formulaLine(
    wireResistance20,
    { L: wire.lengthOneWay, A: copperArea(wire.size) },
    {
      statement: 'Wire of that gauge, out and back, at 20 °C (68 °F)',
      why: 'Length counts twice, as the ground is half of the way.',
    },
  );
  const hot = formulaLine(
    wireResistanceHot,
    { R_20: cold.value, T: wire.temperature },
    { statement: 'The same, hot', why: 'The wire does its work in a hot bay, not on the bench.' },
  );
  return [
    cold,
    hot,
    formulaLine(
      dropAtCurrent,
      { R_w: hot.value, R_c: jointResistanceOf(feed), I: supplied.current },
      {
        statement: 'Drop from battery to pump with it',
        why: 'What the joints take of it no wire gives back.',
        notes: [
          {
            code: 'joints',
            message: `Joints together and current: sheet 8. Counted: ${feedParts(feed.circuit)
              .filter(({ kind }) => kind !== 'wire')
              .map(({ name }) => name)
              .join(', ')}.`,
          },
        ],
      },
    ),
  ];
}

/** Numbered lines: how far off the target is, estimates by hand, and the check at the value found. */
import type { Rung } from '$lib/job/invert/invertWhy';
import { balanceLine, formulaLine, type Formula, type Line } from '$lib/solver/formula';
import {
  ambientAllowed,
  conductanceToAir,
  LADDERS,
  liquidAllowed,
  movedResult,
  nearBest,
  offTarget,
  overPresent,
  targetItself,
} from '$lib/solver/loop/targetFormulas';
import { coreLines } from './coreLines';
import { gaugeLines, hoseLines } from './pipeLines';
import type { Study } from './study';
import { tankLines } from './tankLines';

export function lines(study: Study): Line[] {
  const { answer, input, kind } = study;
  const { level, present, value } = answer;
  if (level === null) return [];
  return [
    ...levelLine(study),
    ...(present.tried.y === null
      ? []
      : [
          formulaLine(
            offTarget(kind.quantity),
            { y_0: present.tried.y, y_z: level },
            {
              id: 'off-target',
              statement: 'How far the loop is from the target with the input as it is',
              why: 'Small against the ± of the inputs: measure better before buying anything.',
            },
          ),
        ]),
    ...byHand(study),
    ...coreLines(study),
    ...hoseLines(study),
    ...gaugeLines(study),
    ...tankLines(study),
    ...checkLines(study),
    ...(value === null || !(present.x > 0) || input.quantity === 'temperature'
      ? []
      : [
          formulaLine(
            overPresent(input.quantity),
            { x: value, x_0: present.x },
            {
              id: 'over-present',
              statement: 'Value found over the present one',
              why: 'A factor is easier to judge than a figure: half as much again can be bought, five times cannot.',
            },
          ),
        ]),
  ];
}

/** The target, where it is told against the best. */
function levelLine({ answer, kind }: Study): Line[] {
  const { question, best, level } = answer;
  if (question.kind !== 'within' || !best || level === null) return [];
  const cost = offTarget(kind.quantity).value({ y_0: level, y_z: best.y });
  return [
    formulaLine(
      nearBest(kind.quantity),
      { y_b: best.y, c: cost },
      {
        id: 'level',
        statement: 'Target: the best this input can do, less what it may cost',
        why: 'The last degree is the dearest: what may be given up decides how much part is bought.',
        notes: [
          {
            code: 'best',
            message:
              'Best over the whole range of the input, by the loop solved anew at each look.',
          },
        ],
      },
    ),
  ];
}

/** A pocket calculator's answer: heat unchanged, or a degree for a degree. */
function byHand(study: Study): Line[] {
  const { question, level, present } = study.answer;
  const y = present.tried.y;
  const trial = study.now();
  const settled = question.result === 'charge' || question.result === 'reservoir';
  if (!trial || !settled || y === null || level === null) return [];
  const s = trial.settled(question.duty);
  const T_amb = trial.values['site.ambient']!.si!;
  if (question.input === 'site.ambient') {
    return [
      formulaLine(
        ambientAllowed,
        { T_amb, T_z: level, T_0: y },
        {
          id: 'ambient-by-hand',
          statement: 'Ambient allowed by the rule of a degree for a degree',
          why: 'Near enough while flow and heat stay; the value found counts what they do.',
        },
      ),
    ];
  }
  const T_f = s.temperatures.frontIn;
  if (!(s.front.heat > 0)) return [];
  const today = formulaLine(
    conductanceToAir,
    { Q: s.front.heat, T_f, T_amb },
    {
      id: 'conductance-now',
      statement: 'Heat the front exchanger gives per degree above ambient, now',
      why: 'The figure to raise: everything done to core and air shows in it.',
      notes: [
        { code: 'settled', message: 'Heat and temperatures where the loop settles: sheet 1.' },
      ],
    },
  );
  const allowed = formulaLine(
    liquidAllowed,
    { T_z: level, T_0: y, T_f },
    {
      statement: 'Liquid allowed into it, what lies between it and the result unchanged',
      why: 'The charge can only be as cool as the liquid lets it be.',
    },
  );
  // At or below the day's air no conductance is enough.
  const room = offTarget('temperature').value({ y_0: allowed.value, y_z: T_amb });
  if (!(room > LEAST_ROOM)) return [today, allowed];
  const needed = formulaLine(
    conductanceToAir,
    { Q: s.front.heat, T_f: allowed.value, T_amb },
    {
      id: 'conductance-needed',
      statement: 'What it would have to give per degree, the heat unchanged',
      why: 'By hand: a cooler loop takes up more charge heat and soak, a hotter one less.',
    },
  );
  return [
    today,
    allowed,
    needed,
    formulaLine(
      overPresent('conductance'),
      { x: needed.value, x_0: today.value },
      {
        id: 'conductance-ratio',
        statement: 'The same as a multiple of what it gives now',
        why: 'More air, more core and less hot air coming round all count towards it.',
      },
    ),
  ];
}

/** Less above ambient than this cannot be told from nothing by hand, K. */
const LEAST_ROOM = 1;

/** Both sides at the value found; at the best where there is none. */
function checkLines(study: Study): Line[] {
  const { answer, kind, input } = study;
  const { at, value, level, question, present } = answer;
  if (!at || level === null) return [];
  const steps = ladderLine(study, answer.rungs);
  const solved = value !== null && answer.end === 'crossing' && kind.stepped === undefined;
  const { quantity } = kind;
  const moved =
    present.tried.y === null
      ? null
      : {
          formula: movedResult(quantity),
          x: {
            y_0: present.tried.y,
            d: offTarget(quantity).value({ y_0: at.y, y_z: present.tried.y }),
          },
        };
  const left = steps ?? moved;
  if (!left) return [];
  if (!solved) {
    return [
      formulaLine(left.formula, left.x, {
        id: value === null ? 'at-best' : 'at-value',
        statement:
          value === null
            ? `${kind.name} at the best this input can do`
            : `${kind.name} with the value told`,
        why: 'Step by step, so that the largest shows what stands in the way.',
        notes: [solvedNote],
      }),
    ];
  }
  return [
    balanceLine(
      left,
      { formula: targetItself(quantity), x: { y_z: level } },
      {
        id: 'check',
        statement: 'Check: with the value found both sides agree',
        why: 'The loop was solved anew with it, not scaled.',
        unknown: { tex: 'x', quantity: input.quantity, name: input.name, value: value! },
        method: `The whole range of the input is looked at, each crossing of the target bracketed and closed by Brent’s method; ${question.result === 'pull-end' ? 'each look is a drive followed in time' : 'each look is the loop solved anew'}.`,
        notes: [solvedNote],
      },
    ),
  ];
}

const solvedNote = {
  code: 'solved-anew',
  message:
    'Differences read off the loop solved with this value; put it into a candidate and sheet 1 or 6 shows them.',
};

function ladderLine(
  study: Study,
  rungs: readonly Rung[],
): { formula: Formula; x: Readonly<Record<string, number>> } | null {
  const { result } = study.answer.question;
  const after = rungs.some(({ id }) => id === 'taken') ? '-after-cooler' : '';
  const name = `${result}${after}`;
  const formula = name in LADDERS ? LADDERS[name as keyof typeof LADDERS] : null;
  const trial = study.told();
  if (!formula || !trial || rungs.length === 0) return null;
  return {
    formula,
    x: {
      T_amb: trial.values['site.ambient']!.si!,
      ...Object.fromEntries(rungs.map(({ by }, i) => [`d_${i + 1}`, by])),
    },
  };
}

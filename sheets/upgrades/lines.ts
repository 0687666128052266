/** Lines of one choice: parts, mass, degrees, and what each degree costs. */
import { pumpCurrentOf, type Judge } from '$lib/job/upgrades/assess';
import type { Note } from '$lib/solver/errors';
import { formulaLine, type Line } from '$lib/solver/formula';
import type { Limiting } from '$lib/solver/loop/limiting';
import * as plan from '$lib/solver/plan/formulas';
import { gainOf, liquidAddedBy, takesOff, type Choice } from './choice';
import { listLines, takesMassOff, type Named } from './partsLines';
import { JUDGED, PART } from './words';

const SETTLED: Note = {
  code: 'settled',
  message: 'Where a loop settles is found on sheet 1, loop balance; its drive on sheet 6.',
};
const AGAIN: Note = {
  code: 'solved-again',
  message: 'The whole loop is solved again with that one part grown.',
};

const NOTHING_OFF: Note = {
  code: 'nothing-off',
  message: 'No part is stated to take an old one off, so nothing is subtracted.',
};

/** Every line of a choice; `prefix` keeps apart what several of them have in common. */
export function choiceLines(choice: Choice, judge: Judge, prefix = ''): Line[] {
  const named = (text: string) => (prefix === '' ? text : `“${choice.name}”: ${lower(text)}`);
  const parts = choice.parts;
  const cost = parts && parts.cost !== null ? listLines(parts.rows, 'price', prefix, named) : null;
  const mass =
    parts && parts.mass !== null && parts.off !== null
      ? listLines(parts.rows, 'mass', prefix, named)
      : null;
  const off =
    parts && parts.off ? listLines(parts.rows.filter(takesMassOff), 'off', prefix, named) : null;
  return [
    ...currentLines(choice, prefix, named),
    ...(cost?.lines ?? []),
    ...(mass?.lines ?? []),
    ...(off?.lines ?? []),
    ...massLines(choice, mass?.total ?? null, off?.total ?? 0, prefix, named),
    ...gainLines(choice, judge, cost?.total ?? null, prefix, named),
  ];
}

const lower = (text: string) => text.charAt(0).toLowerCase() + text.slice(1);

function currentLines(choice: Choice, prefix: string, named: Named): Line[] {
  const { pumpPower: P, pumpVolts: U, fans: N, fanCurrent: I_f } = choice.is;
  if (pumpCurrentOf(choice.is) === null) return [];
  const pump = formulaLine(
    plan.pumpCurrent,
    { P: P!, U: U! },
    {
      id: `${prefix}pump-current`,
      statement: named('Current of the pump'),
      why: 'Fuse, relay and wire are chosen by it, and a bigger pump may need all three.',
    },
  );
  if (I_f === null) return [pump];
  return [
    pump,
    formulaLine(
      plan.currentTogether,
      { I_p: pump.value, N, I_f },
      {
        id: `${prefix}current`,
        statement: named('Current of pump and fans'),
        why: 'The alternator and the wires must carry it all the time the loop runs.',
      },
    ),
  ];
}

function massLines(
  choice: Choice,
  m_p: number | null,
  m_off: number,
  prefix: string,
  named: Named,
): Line[] {
  if (liquidAddedBy(choice) === null) return [];
  const { is, found } = choice;
  const liquid = formulaLine(
    plan.liquidAdded,
    { rho: is.liquidDensity!, V_c: is.liquidVolume!, V_f: found!.liquidVolume! },
    {
      id: `${prefix}liquid-added`,
      statement: named('Liquid that it adds'),
      why: 'It slows every rise, and it has to be bought, carried and bled.',
      notes: [
        {
          code: 'volumes',
          message: 'Volumes of tank, cores and hoses together, see sheet 5, reservoir.',
        },
      ],
    },
  );
  if (m_p === null) return [liquid];
  return [
    liquid,
    formulaLine(
      plan.massAdded,
      { m_p, m_l: liquid.value, m_off },
      {
        id: `${prefix}mass-added`,
        statement: named('Mass added, less what comes off'),
        why: 'Two changes that cool alike may differ by a heavy tank.',
        ...(m_off === 0 && { notes: [NOTHING_OFF] }),
      },
    ),
  ];
}

function gainLines(
  choice: Choice,
  judge: Judge,
  C: number | null,
  prefix: string,
  named: Named,
): Line[] {
  if (gainOf(choice, judge) === null) return [];
  const { is, found } = choice;
  const [T_now, T_with] =
    judge === 'cruise'
      ? [found!.chargeCruise!, is.chargeCruise!]
      : [found!.chargePull!, is.chargePull!];
  const gain = formulaLine(
    plan.gainFormula,
    { T_now, T_with },
    {
      id: `${prefix}gain`,
      statement: named(`Degrees it takes off the charge air, ${JUDGED[judge]}`),
      why: 'This is what is bought; set it beside the ± of the loop before paying.',
      notes: [SETTLED],
    },
  );
  if (C === null || !takesOff(gain.value)) return [gain];
  return [
    gain,
    formulaLine(
      plan.costPerDegreeFormula,
      { C, dT: gain.value },
      {
        id: `${prefix}per-degree`,
        statement: named('Cost of each of these degrees'),
        why: 'What lets a cheap wire be compared with a dear exchanger.',
      },
    ),
  ];
}

/** So many parts are worth a line. */
const TOLD = 4;

/** What the next size of each part would take off, the greatest first. */
export const limitLines = ({ T, parts }: Limiting, judge: Judge): Line[] =>
  parts.slice(0, TOLD).map(({ part, T: T_with }, i) =>
    formulaLine(
      plan.gainFormula,
      { T_now: T, T_with },
      {
        id: `limit-${part}`,
        statement: `Degrees off the charge air, ${JUDGED[judge]}, by ${PART[part].more}`,
        why:
          i === 0
            ? 'The part whose next size takes most off is the one that limits.'
            : 'Close behind the first, it is the next to limit once that is done.',
        notes: [AGAIN],
      },
    ),
  );

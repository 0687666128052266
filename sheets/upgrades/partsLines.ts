/** Lines of a parts list: cost, mass, and the mass of what comes off. */
import type { PartRow } from '$lib/job/upgrades/partsList';
import { formulaLine, type Formula, type FormulaLine } from '$lib/solver/formula';
import * as plan from '$lib/solver/plan/formulas';

/** A statement, said of whose it is. */
export type Named = (text: string) => string;

/** So many rows of a parts list can be read in one formula. */
const READABLE = 4;

export const takesMassOff = ({ off }: PartRow) => off !== null && off > 0;

/** What is summed: formulas of a few rows and of all, words of ids and statements, letters of the terms. */
const SUMS = {
  price: {
    of: plan.rowsCost,
    sum: plan.costTogether,
    id: 'cost',
    word: 'Cost',
    one: 'p',
    some: 'C',
    why: 'What the customer pays for parts, to be set against the degrees they buy.',
  },
  mass: {
    of: plan.rowsMass,
    sum: plan.massTogether,
    id: 'parts-mass',
    word: 'Mass',
    one: 'm',
    some: 'm',
    why: 'It rides along for good, mostly ahead of the front axle.',
  },
  off: {
    of: plan.rowsMassOff,
    sum: plan.massOffTogether,
    id: 'mass-off',
    word: 'Mass taken off',
    one: 'o',
    some: 'o',
    why: 'What the new part replaces no longer rides along.',
  },
} as const;

/** Count times price (or a mass), a few rows a line, and their sum. */
export function listLines(
  rows: readonly PartRow[],
  key: keyof typeof SUMS,
  prefix: string,
  named: Named,
): { lines: FormulaLine[]; total: number } {
  const { of, sum, id, word, one, some: each, why } = SUMS[key];
  const some: FormulaLine[] = [];
  for (let from = 0; from < rows.length; from += READABLE) {
    const chunk = rows.slice(from, from + READABLE);
    const whole = chunk.every(({ count }) => Number.isInteger(count));
    const formula: Formula = of(chunk.length, whole);
    const x = Object.fromEntries(
      chunk.flatMap((row, i) => [
        [`n_${i + 1}`, row.count!],
        [`${one}_${i + 1}`, row[key]!],
      ]),
    );
    const names = chunk.map(({ what }, i) => what || `row ${from + i + 1}`).join('; ');
    some.push(
      formulaLine(formula, x, {
        id: `${prefix}${id}-rows-${from + 1}`,
        statement: named(`${word}${key === 'off' ? ' by' : ' of'}: ${names}`),
        why,
      }),
    );
  }
  if (some.length === 1) return { lines: some, total: some[0]!.value };
  const x = Object.fromEntries(some.map(({ value }, i) => [`${each}_${i + 1}`, value]));
  const total = formulaLine(sum(some.length), x, {
    id: `${prefix}${id}`,
    statement: named(`${word}${key === 'off' ? ' by' : ' of'} all its parts`),
    why,
  });
  return { lines: [...some, total], total: total.value };
}

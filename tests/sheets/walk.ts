/**
 * Walks the lines of a sheet as a reader with a calculator would: takes each number as printed, with its
 * unit, puts it into the formula as written, and asks whether the printed result comes out.
 * The arithmetic is that of mathjs on quantities with units, so a missing conversion or a wrong
 * dimension shows. Returns complaints; an empty list is a sheet that holds.
 */
import katex from 'katex';
import type { MathNode, Unit } from 'mathjs';
import { math } from '$lib/math';
import type { Formula, Line, NamedFunction } from '$lib/solver/formula';
import { SI_UNIT, type Quantity } from '$lib/solver/quantity';
import { explain } from '$lib/solver/symbols';
import { formatQuantity, type Formatted, type UnitSystem } from '$lib/units';
import type { SheetContent } from '../../sheets/types';

type Amount = number | Unit;
type X = Readonly<Record<string, number>>;

/** What is left over when the sum of the roundings is taken one at a time: products of two of them. */
const SECOND_ORDER = 1.02;
/** A double's noise through a formula with differences in it. */
const NOISE = 1e-9;
/** A relative change well above a double's last bits. */
const BITS = 1e-13;
/** Both sides of an equation solved by iteration. */
const BALANCED_WITHIN = 1e-6;

/** mathjs takes no leading 1 in a unit it converts to. */
const siOf = (quantity: Quantity) => SI_UNIT[quantity].replace(/^1\/(\w+)$/, '$1^-1');

/** SI number of an amount. @throws where it is not of this quantity's dimension */
function inSI(amount: Amount, quantity: Quantity): number {
  const si = siOf(quantity);
  if (typeof amount === 'number') {
    if (si !== '') throw new Error(`a bare number where ${quantity} belongs`);
    return amount;
  }
  if (si === '') throw new Error(`${amount.toString()} where a bare number belongs`);
  return amount.toNumber(si);
}

const parsed = new Map<string, MathNode>();

/** The same few formulas and numbers come again for every duty and job. */
function parse(expr: string): MathNode {
  let node = parsed.get(expr);
  if (!node) parsed.set(expr, (node = math.parse(expr)));
  return node;
}

const read = (expr: string): Amount => parse(expr).evaluate() as Amount;

/** The printed number moved by `steps` half units of its last place, with its unit. */
const moved = ({ expr, value, halfUlp }: Formatted, steps: number): Amount =>
  read(expr.replace(/-?\d[\d.]*(e[+-]?\d+)?/, `(${value + steps * halfUlp})`));

/** A named function for amounts with units; it takes and gives what it says, else bare numbers. */
const withUnits =
  ({ call, takes = [], gives = 'ratio' }: NamedFunction) =>
  (...args: Amount[]): Amount => {
    const value = call(...args.map((arg, i) => inSI(arg, takes[i] ?? 'ratio')));
    return siOf(gives) === '' ? value : math.unit(value, siOf(gives));
  };

/** SI value of the formula on amounts with units. */
function evaluate(formula: Formula, amounts: Readonly<Record<string, Amount>>): number {
  const functions = Object.fromEntries(
    Object.entries(formula.functions ?? {}).map(([name, fn]) => [name, withUnits(fn)]),
  );
  const result = parse(formula.expr).evaluate({ ...functions, ...amounts }) as Amount;
  return inSI(result, formula.gives.quantity);
}

const walked = new Map<string, string[]>();

/** As {@link walkAnew}; a formula without curves of its own is walked once per set of numbers. */
function walkFormula(formula: Formula, x: X, value: number, system: UnitSystem): string[] {
  if (formula.functions) return walkAnew(formula, x, value, system);
  const key = JSON.stringify([formula, x, value, system]);
  let complaints = walked.get(key);
  if (!complaints) walked.set(key, (complaints = walkAnew(formula, x, value, system)));
  return complaints;
}

/** Complaints about one formula with numbers put in. */
function walkAnew(formula: Formula, x: X, value: number, system: UnitSystem): string[] {
  const complaints: string[] = [];
  const keys = Object.keys(formula.terms);
  const missing = keys.filter((key) => !Number.isFinite(formula.filled(x)[key]));
  if (missing.length > 0) return [`no number for ${missing.join(', ')}`];
  if (formula.value(x) !== value) {
    complaints.push(`the formula gives ${formula.value(x)}, the line says ${value}`);
  }
  complaints.push(...walkTypesetting(formula, x, system));

  const put = (digits?: number) =>
    Object.fromEntries(
      keys.map((key) => {
        const options = digits === undefined ? {} : { digits, decimals: 30 };
        const { quantity } = formula.terms[key]!;
        return [key, formatQuantity(formula.filled(x)[key]!, quantity, system, options)];
      }),
    );
  const amountsOf = (printed: Readonly<Record<string, Formatted>>) =>
    Object.fromEntries(keys.map((key) => [key, read(printed[key]!.expr)]));

  try {
    // Every digit: a hidden constant or a wrong dimension has nowhere to hide.
    const exact = evaluate(formula, amountsOf(put(16)));
    if (!(Math.abs(exact - value) <= conditioned(formula, x, value))) {
      complaints.push(`with units and every digit it is ${exact}, not ${value} (SI)`);
    }
    // As printed: what a reader with a calculator gets.
    const printed = put();
    const amounts = amountsOf(printed);
    const byHand = evaluate(formula, amounts);
    const shown = formatQuantity(value, formula.gives.quantity, system);
    const said = inSI(read(shown.expr), formula.gives.quantity);
    let within = Math.abs(inSI(moved(shown, 1), formula.gives.quantity) - said);
    for (const key of keys) {
      if (formula.terms[key]!.quantity === 'count') continue; // printed whole
      const change = (steps: number) =>
        Math.abs(evaluate(formula, { ...amounts, [key]: moved(printed[key]!, steps) }) - byHand);
      within += Math.max(change(1), change(-1)) * SECOND_ORDER;
    }
    if (!(Math.abs(byHand - said) <= within + NOISE * Math.abs(said))) {
      complaints.push(
        `the printed numbers give ${byHand}, the printed result is ${said} (SI), rounding allows ${within}`,
      );
    }
  } catch (thrown) {
    complaints.push(`with units: ${(thrown as Error).message}`);
  }
  return complaints;
}

/** What the last bits of the terms may move the result: much, where nearly equal numbers are subtracted. */
function conditioned(formula: Formula, x: X, value: number): number {
  const all: X = formula.filled(x);
  const bits = Object.keys(all).map((key) => {
    const off = formula.value({ ...all, [key]: all[key]! * (1 + BITS) });
    return formula.terms[key]!.fixed === undefined ? Math.abs(off - value) : 0;
  });
  return NOISE * Math.abs(value) + bits.reduce((sum, bit) => sum + bit, 0);
}

const BROKEN = /NaN|undefined|\\text\{–\}|Infinity/;

/** Both typeset forms must be set without an error, with a number everywhere. */
function walkTypesetting(formula: Formula, x: X, system: UnitSystem): string[] {
  const forms = {
    formula: () => formula.tex(),
    'formula with numbers': () =>
      formula.texWith(formula.filled(x), (v, quantity) => formatQuantity(v, quantity, system).tex),
    ...Object.fromEntries(
      Object.entries(formula.functions ?? {}).map(([name, fn]) => [`symbol ${name}`, () => fn.tex]),
    ),
  };
  return Object.entries(forms).flatMap(([name, form]) => {
    try {
      const tex = form();
      katex.renderToString(tex, { throwOnError: true, strict: 'ignore' });
      return BROKEN.test(tex) ? [`${name} reads ${tex}`] : [];
    } catch (thrown) {
      return [`${name}: ${(thrown as Error).message}`];
    }
  });
}

/** Complaints about one line. */
export function walkLine(line: Line, system: UnitSystem): string[] {
  const complaints: string[] = [];
  if (line.statement.trim() === '') complaints.push('no statement');
  const parts = line.kind === 'formula' ? [line] : [line.left, line.right];
  for (const { formula, x, value } of parts) {
    if (formula.source.cite.trim() === '') complaints.push(`${formula.id}: no source`);
    complaints.push(
      ...walkFormula(formula, x, value, system).map((complaint) => `${formula.id}: ${complaint}`),
    );
  }
  if (line.kind === 'balance') {
    const { left, right, unknown, method } = line;
    const off = Math.abs(left.value - right.value);
    if (!(off <= BALANCED_WITHIN * Math.max(Math.abs(left.value), Math.abs(right.value)))) {
      complaints.push(`the sides differ: ${left.value} and ${right.value}`);
    }
    if (left.formula.id === right.formula.id) complaints.push('both sides are one formula');
    if (!Number.isFinite(unknown.value)) complaints.push('the unknown has no value');
    if (method.trim() === '') complaints.push('does not say how the unknown was found');
  }
  return complaints;
}

/** Complaints about what a line leaves unsaid: why it matters, or what one of its symbols means. */
export function walkTeaching(line: Line): string[] {
  const parts = line.kind === 'formula' ? [line] : [line.left, line.right];
  const terms = parts.flatMap(({ formula }) => [...Object.values(formula.terms), formula.gives]);
  if (line.kind === 'balance') terms.push(line.unknown);
  return [
    ...(/^\S.*[.?]$/.test(line.why ?? '') ? [] : ['does not say why it matters']),
    ...terms
      .filter((term) => explain(term) === undefined)
      .map(({ quantity, name }) => `nothing explains the ${quantity} “${name}”`),
  ];
}

/** Complaints about all a sheet says: lines, and the numbers in its results and findings. */
export function walkContent({ lines, results, findings }: SheetContent, system: UnitSystem) {
  return [
    ...lines.flatMap((line) =>
      [...walkLine(line, system), ...walkTeaching(line)].map(
        (complaint) => `line ${line.id}: ${complaint}`,
      ),
    ),
    ...twice(lines.map(({ id }) => id)).map((id) => `line ${id}: twice on the sheet`),
    ...twice(results.map(({ id }) => id)).map((id) => `result ${id}: twice on the sheet`),
    ...twice(findings.map(({ code }) => code)).map((code) => `finding ${code}: twice`),
    ...results
      .filter(({ value, absent }) => (value === null ? !absent : !Number.isFinite(value)))
      .map(({ id, value }) => `result ${id}: ${value} without a reason`),
    ...findings.flatMap(({ code, sentence }) =>
      sentence
        .filter((part) => typeof part === 'string' && BROKEN.test(part))
        .concat(sentence.filter((part) => typeof part !== 'string' && !Number.isFinite(part.value)))
        .map((part) => `finding ${code}: says ${JSON.stringify(part)}`),
    ),
  ];
}

const twice = (ids: readonly string[]) => [
  ...new Set(ids.filter((id, i) => ids.indexOf(id) !== i)),
];

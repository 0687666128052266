/**
 * The reader's own calculation lines of one sheet on one side, worked out in their order: each may use
 * the symbols of the sheet's lines, of the reader's lines above it, and of the job's inputs. Pure: page, print and command line share it.
 */
import type { Line } from '$lib/solver/formula';
import type { UnitSystem } from '$lib/units';
import {
  absoluteLeaves,
  amountOf,
  evaluateTree,
  isFunction,
  printAs,
  readExpression,
  shownIn,
  treeTex,
  unitWord,
  type Amount,
  type Shown,
  type Tree,
} from '$lib/units/expression';
import type { Values } from '../value';
import { inputSymbols, type InputSymbol, type InputSymbols } from './inputSymbols';
import type { OwnLine } from './ownLines';
import { RESERVED, sheetSymbols, type SheetSymbols } from './ownSymbols';

export type OwnCalculationLine = OwnLine & { readonly kind: 'calculation' };

/** The part of a line that is at fault. */
export type OwnPart = 'expression' | 'symbol' | 'unit';

export type OwnOutcome =
  | {
      readonly ok: true;
      /** SI. */
      readonly value: number;
      readonly amount: Amount;
      readonly shown: Shown;
      /** What must be told although there is a result. */
      readonly note?: string;
      /** Right side with numbers put in, typeset in the reader's units. */
      put(system: UnitSystem): string;
      /** The same, to be read aloud. */
      said(system: UnitSystem): string;
    }
  | { readonly ok: false; readonly part: OwnPart; readonly message: string };

export interface OwnCalculated {
  readonly id: string;
  readonly line: OwnCalculationLine;
  /** The formula typeset, as soon as it can be read. */
  readonly tex: string | null;
  readonly outcome: OwnOutcome;
}

/** A symbol that an expression may hold: one of the sheet, or of a line of the reader's. */
interface Usable {
  readonly tex: string;
  readonly amount: Amount;
  readonly shown: Shown;
}

const isCalculation = (line: OwnLine): line is OwnCalculationLine => line.kind === 'calculation';

/** Work out the calculations among `own` over what the sheet's `lines` say and the inputs hold. Never throws. */
export function ownCalculations(
  own: readonly OwnLine[],
  lines: readonly Line[],
  values: Values,
): readonly OwnCalculated[] {
  const sheet = sheetSymbols(lines);
  const inputs = inputSymbols(values);
  const usable = new Map<string, Usable>();
  for (const [name, symbol] of sheet.byName) usable.set(name, usableOf(symbol));
  const calculations = own.filter(isCalculation);
  return calculations.map((line, i) => {
    const later = new Set(calculations.slice(i).map((other) => other.symbol.trim()));
    const above = calculations.slice(0, i).map((other) => other.symbol.trim());
    const taken = (name: string) =>
      sheet.ambiguous.has(name) || above.includes(name) || (name !== '' && later.has(name));
    const here = new Map<string, Usable>();
    for (const [name, input] of inputs.byName) if (!taken(name)) here.set(name, usableOf(input));
    for (const [name, one] of usable) here.set(name, one);
    const done = calculated(line, sheet, here, { above, later, inputs });
    const symbol = line.symbol.trim();
    // A line without a result leaves its symbol unusable; what uses it says so.
    if (done.outcome.ok && symbol !== '') {
      const { amount, shown } = done.outcome;
      usable.set(symbol, { tex: symbolTex(symbol), amount, shown });
    }
    return done;
  });
}

const usableOf = ({ tex, quantity, value }: InputSymbol): Usable => ({
  tex,
  amount: amountOf(value, quantity),
  shown: { as: 'quantity', quantity },
});

const FROM_ABSOLUTE_ZERO =
  'A temperature is multiplied or divided here: it counts from absolute zero. For a difference subtract two temperatures first.';

interface Around {
  readonly above: readonly string[];
  readonly later: ReadonlySet<string>;
  readonly inputs: InputSymbols;
}

function calculated(
  line: OwnCalculationLine,
  sheet: SheetSymbols,
  usable: ReadonlyMap<string, Usable>,
  { above, later, inputs }: Around,
): OwnCalculated {
  const symbol = line.symbol.trim();
  const refused = (part: OwnPart, message: string, tex: string | null = null): OwnCalculated => ({
    id: line.id,
    line,
    tex,
    outcome: { ok: false, part, message },
  });

  const read = readExpression(line.expression, (name) => {
    if (usable.has(name)) return 'symbol';
    const choices = sheet.ambiguous.get(name);
    if (choices) {
      const several = `“${name}” stands for ${choices.length} values on this sheet: write ${choices.join(' or ')}.`;
      return { refused: several };
    }
    if (above.includes(name)) return { refused: `“${name}” has no result above: see its line.` };
    if (name !== '' && later.has(name)) {
      const own = name === symbol ? 'this very line' : 'a line below';
      return { refused: `“${name}” is worked out in ${own}; a line can use only those above it.` };
    }
    const several = inputs.ambiguous.get(name);
    return several ? { refused: besideInputs(name, several) } : 'unknown';
  });
  if (!read.ok)
    return refused('expression', `${read.message}${alike(read, line.expression, sheet)}`);

  const right = treeTex(read.tree, (name) => `{${usable.get(name)!.tex}}`);
  const tex = symbol === '' ? right : `${symbolTex(symbol)} = ${right}`;
  const amounts = new Map([...usable].map(([name, { amount }]) => [name, amount]));
  const result = evaluateTree(read.tree, amounts);
  if (!result.ok) return refused('expression', result.message, tex);
  const { amount, parts } = result;
  const natural = shownIn(amount, '');
  if (!natural.ok) return refused('expression', natural.message, tex);
  const wish = shownIn(amount, line.unit);
  if (!wish.ok) return refused('unit', wish.message, tex);
  const badSymbol = symbolFault(symbol, sheet, above);
  if (badSymbol) return refused('symbol', badSymbol, right);

  return {
    id: line.id,
    line,
    tex,
    outcome: {
      ok: true,
      value: amount.si,
      amount,
      shown: wish.shown,
      ...(absoluteLeaves(read.tree, parts).size > 0 && { note: FROM_ABSOLUTE_ZERO }),
      put: (system) => putIn(read.tree, usable, parts, system),
      said: (system) => spoken(line.expression, usable, system),
    },
  };
}

/** So many names are told; there may be a dozen. */
const TOLD = 4;

const besideInputs = (name: string, choices: readonly string[]) =>
  `“${name}” stands beside ${choices.length} inputs and in no line of this sheet: write ${choices.slice(0, TOLD).join(' or ')}${choices.length > TOLD ? ' or the like' : ''}.`;

/** Symbols that a name nobody knows may have been meant for. */
function alike(
  { code }: { readonly code: string },
  expression: string,
  { offered }: SheetSymbols,
): string {
  if (code !== 'unknown-name') return '';
  const letters = new Set(expression.match(/[A-Za-z]\w*/g)?.map((name) => name[0]!.toLowerCase()));
  const names = offered
    .map(({ name }) => name)
    .filter((name) => letters.has(name[0]!.toLowerCase()));
  return names.length === 0 ? '' : ` There are ${names.slice(0, 6).join(', ')}.`;
}

/** Numbers put in: each symbol in the units in which its own line shows it. */
function putIn(
  tree: Tree,
  usable: ReadonlyMap<string, Usable>,
  parts: ReadonlyMap<Tree, Amount>,
  system: UnitSystem,
): string {
  return treeTex(
    tree,
    (name, temperature) => {
      const { amount, shown } = usable.get(name)!;
      const as: Shown = temperature ? { as: 'quantity', quantity: temperature } : shown;
      const tex = printAs(amount.si, as, system).tex;
      return amount.si < 0 ? `\\left(${tex}\\right)` : `{${tex}}`;
    },
    parts,
  );
}

/** The expression with each symbol replaced by its value in words. */
const spoken = (expression: string, usable: ReadonlyMap<string, Usable>, system: UnitSystem) =>
  expression.replace(/[A-Za-z]\w*/g, (name) => {
    const symbol = usable.get(name);
    if (!symbol) return name;
    const { text, unit } = printAs(symbol.amount.si, symbol.shown, system);
    return unit ? `${text} ${unit}` : text;
  });

const SYMBOL = /^[A-Za-z][A-Za-z0-9]*(_[A-Za-z0-9]+)*$/;
const LONGEST_SYMBOL = 24;

function symbolFault(symbol: string, sheet: SheetSymbols, above: readonly string[]): string | null {
  if (symbol === '') return null;
  if (!SYMBOL.test(symbol) || symbol.length > LONGEST_SYMBOL) {
    return 'A symbol is a letter, then letters and digits, such as Q_loss.';
  }
  if (symbol === 'pi' || isFunction(symbol) || RESERVED.has(symbol)) {
    return `“${symbol}” means something already.`;
  }
  if (unitWord(symbol)) return `“${symbol}” is a unit: add an index, such as ${symbol}_1.`;
  if (sheet.byName.has(symbol) || sheet.ambiguous.has(symbol)) {
    return `“${symbol}” is a symbol of this sheet already.`;
  }
  if (above.includes(symbol)) return `“${symbol}” is the symbol of a line above.`;
  return null;
}

/** `Q_loss` as it is typeset. */
export const symbolTex = (symbol: string): string => {
  if (!SYMBOL.test(symbol)) return '';
  const [letter, ...index] = symbol.split('_') as [string, ...string[]];
  const head = letter.length === 1 ? letter : `\\mathrm{${letter}}`;
  return index.length === 0 ? head : `${head}_{\\mathrm{${index.join(',')}}}`;
};

/**
 * A formula that a sheet shows. One text yields the value, the typeset line and the line with
 * numbers put in, so none of them can drift from the others.
 */
import type { MathNode } from 'mathjs';
import { math } from '$lib/math';
import { SolverError, type Note } from './errors';
import type { Quantity } from './quantity';
import type { Source } from './sources';

/** One symbol of a formula. */
export interface Term {
  readonly tex: string;
  readonly quantity: Quantity;
  readonly name: string;
  /** A constant of nature or of definition, SI; such a term is not passed in. */
  readonly fixed?: number;
}

/**
 * A function a formula may call by name where no closed expression exists (an exact series, a curve
 * through points). The line prints its name; `says` tells the reader what to compute by hand.
 */
export interface NamedFunction {
  readonly tex: string;
  readonly says: string;
  /** Kinds of its arguments and of its value, SI; bare numbers unless told. */
  readonly takes?: readonly Quantity[];
  readonly gives?: Quantity;
  readonly call: (...args: number[]) => number;
}

/** What {@link defineFormula} takes. */
export interface FormulaText<K extends string> {
  /** `topic.name`, unique in the project. */
  readonly id: string;
  /** mathjs syntax over the keys of `terms`; SI in, SI out. */
  readonly expr: string;
  readonly gives: Omit<Term, 'fixed'>;
  readonly terms: Readonly<Record<K, Term>>;
  readonly functions?: Readonly<Record<string, NamedFunction>>;
  readonly source: Source;
}

/** Words a printer needs to put a number into a formula, e.g. `3.2\,\mathrm{m}`. */
export type ShowTex = (value: number, quantity: Quantity) => string;

export interface Formula<K extends string = string> extends FormulaText<K> {
  /** SI value at `x` (SI). @throws {@link SolverError} when the result is not finite */
  value(x: Readonly<Record<string, number>>): number;
  /** Left side, equals sign, right side, typeset. */
  tex(): string;
  /** Right side with numbers put in, typeset. */
  texWith(x: Readonly<Record<string, number>>, show: ShowTex): string;
  /** `x` with the fixed terms filled in. */
  filled(x: Readonly<Record<string, number>>): Record<K, number>;
}

/** Define a formula once; every other form of it is derived from here. */
export function defineFormula<const K extends string>(text: FormulaText<K>): Formula<K> {
  const node = math.parse(text.expr);
  const code = node.compile();
  const keys = Object.keys(text.terms) as K[];
  const calls: Record<string, NamedFunction['call']> = {};
  for (const name in text.functions) calls[name] = text.functions[name]!.call;
  const fnTex = (name: string) => text.functions?.[name]?.tex ?? FUNCTION_TEX[name];

  const filled = (x: Readonly<Record<string, number>>) => {
    const all = {} as Record<K, number>;
    for (const key of keys) all[key] = text.terms[key].fixed ?? x[key] ?? NaN;
    return all;
  };

  return {
    ...text,
    filled,
    value(x) {
      const value: number = code.evaluate({ ...calls, ...filled(x) });
      if (!Number.isFinite(value)) {
        throw new SolverError(`${text.id} gives no number for ${JSON.stringify(filled(x))}`, {
          code: 'not-finite',
          law: text.id,
        });
      }
      return value;
    },
    tex: () =>
      `${text.gives.tex} = ${toTex(node, (name) => `{${text.terms[name as K].tex}}`, fnTex)}`,
    texWith(x, show) {
      const all = filled(x);
      return toTex(
        node,
        (name) => {
          const value = all[name as K];
          const shown = show(value, text.terms[name as K].quantity);
          return value < 0 ? `\\left(${shown}\\right)` : `{${shown}}`;
        },
        fnTex,
      );
    },
  };
}

/** Names of functions as KaTeX writes them. */
const FUNCTION_TEX: Record<string, string> = {
  exp: '\\exp',
  log: '\\ln',
  min: '\\min',
  max: '\\max',
};

/** mathjs' own printer joins leaves without a space (`\cdotg`), hence ours. */
function toTex(
  node: MathNode,
  leaf: (name: string) => string,
  fnTex: (name: string) => string | undefined,
): string {
  // The node classes are told apart by `type`; mathjs types them as one union that is hard to narrow.
  const n = node as unknown as {
    type: string;
    name: string;
    value: unknown;
    op: string;
    fn: string | { name: string };
    args: MathNode[];
    content: MathNode;
  };
  const inside = (child: MathNode) => toTex(child, leaf, fnTex);
  const bare = (child: MathNode) =>
    child.type === 'ParenthesisNode'
      ? inside((child as unknown as { content: MathNode }).content)
      : inside(child);
  switch (n.type) {
    case 'ConstantNode':
      return String(n.value);
    case 'SymbolNode':
      return n.name === 'pi' ? '\\pi' : leaf(n.name);
    case 'ParenthesisNode':
      return `\\left(${inside(n.content)}\\right)`;
    case 'FunctionNode': {
      const name = typeof n.fn === 'string' ? n.fn : n.fn.name;
      const list = n.args.map(inside).join(',\\; ');
      if (name === 'sqrt') return `\\sqrt{${list}}`;
      if (name === 'abs') return `\\left|${list}\\right|`;
      return `${fnTex(name) ?? `\\operatorname{${name}}`}\\left(${list}\\right)`;
    }
    case 'OperatorNode': {
      const [a, b] = n.args as [MathNode, MathNode];
      if (n.args.length === 1) return `${n.op}${inside(a)}`;
      if (n.op === '/') return `\\frac{${bare(a)}}{${bare(b)}}`;
      // 3 gpm squared is (3 gpm)², not 3 gpm².
      if (n.op === '^') {
        const base = inside(a);
        const whole = a.type === 'SymbolNode' && base.includes('\\,');
        return `{${whole ? `\\left(${base}\\right)` : base}}^{${bare(b)}}`;
      }
      if (n.op === '*') return `${inside(a)} \\cdot ${inside(b)}`;
      return `${inside(a)} ${n.op} ${inside(b)}`;
    }
    default:
      throw new SolverError(`a formula may not hold a ${n.type}`, { code: 'formula-syntax' });
  }
}

/** A numbered line of a sheet: what is computed, from what, and what came out. */
export interface FormulaLine {
  readonly kind: 'formula';
  /** Unique within its sheet. */
  readonly id: string;
  /** What this line finds, in plain words. */
  readonly statement: string;
  /** Why it matters, one sentence. */
  readonly why?: string;
  readonly formula: Formula;
  readonly x: Readonly<Record<string, number>>;
  readonly value: number;
  readonly notes?: readonly Note[];
  /** About something else than the loop in whose list it stands. */
  readonly apart?: boolean;
}

/** A line for what no closed formula gives: the equation solved, both sides at the solution. */
export interface BalanceLine {
  readonly kind: 'balance';
  readonly id: string;
  readonly statement: string;
  readonly why?: string;
  /** The unknown that was found. */
  readonly unknown: Omit<Term, 'fixed'> & { readonly value: number };
  readonly left: {
    readonly formula: Formula;
    readonly x: Readonly<Record<string, number>>;
    readonly value: number;
  };
  readonly right: {
    readonly formula: Formula;
    readonly x: Readonly<Record<string, number>>;
    readonly value: number;
  };
  /** How the unknown was found, in words. */
  readonly method: string;
  readonly notes?: readonly Note[];
}

export type Line = FormulaLine | BalanceLine;

/** Evaluate `formula` at `x` and make a line of it. */
export function formulaLine<K extends string>(
  formula: Formula<K>,
  x: Readonly<Record<string, number>>,
  words: { statement: string; why?: string; id?: string; notes?: readonly Note[] },
): FormulaLine {
  const { id = formula.id, ...rest } = words;
  return { kind: 'formula', id, ...rest, formula, x: formula.filled(x), value: formula.value(x) };
}

/** A line that shows the equation solved, with both sides evaluated at the solution. */
export function balanceLine<L extends string, R extends string>(
  left: { formula: Formula<L>; x: Readonly<Record<string, number>> },
  right: { formula: Formula<R>; x: Readonly<Record<string, number>> },
  words: Omit<BalanceLine, 'kind' | 'left' | 'right'>,
): BalanceLine {
  const side = (s: { formula: Formula; x: Readonly<Record<string, number>> }) => ({
    formula: s.formula,
    x: s.formula.filled(s.x),
    value: s.formula.value(s.x),
  });
  return { kind: 'balance', ...words, left: side(left as never), right: side(right as never) };
}

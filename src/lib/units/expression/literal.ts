/** Numbers, and numbers with their unit, as they stand in what the parser gave. */
import { refuse, type Node } from './scan';
import type { Tree, UnitProduct } from './tree';
import { inFull, unitWord } from './unitWords';

const LARGEST_NUMBER = 1e15;
const LARGEST_POWER_OF_UNIT = 12;

/** What a name stands for besides a unit: nothing, a symbol, or why it cannot be used here. */
export type NameIs = (name: string) => 'symbol' | 'unknown' | { readonly refused: string };

export function numberOf({ value }: Node): Tree & { kind: 'number' } {
  if (typeof value !== 'number' || !Number.isFinite(value)) {
    return refuse('not-allowed', 'A calculation holds numbers, units and symbols only.');
  }
  if (Math.abs(value) > LARGEST_NUMBER) {
    return refuse('number', 'A number in it is too large to be meant.');
  }
  return { kind: 'number', value, text: numberText(value) };
}

/** As it was typed, but for what mathjs reads the same. */
function numberText(value: number): string {
  const [mantissa, power] = String(value).split('e') as [string, string?];
  return power === undefined ? mantissa : `${mantissa}\\times 10^{${Number(power)}}`;
}

/**
 * A number with its unit: `3 gal`, `-20 degC`, `1/2 inch`, `5 kg/(m^2 s)`. A unit stands right behind
 * its number or behind a `/` of such a unit; null when the node is anything else.
 */
export function literalOf(node: Node, is: NameIs): (Tree & { kind: 'literal' }) | null {
  if (node.type !== 'OperatorNode' || node.args.length !== 2) return null;
  const [left, right] = node.args as [Node, Node];
  const divides = node.op === '/';
  if (!divides && !(node.op === '*' && node.implicit)) return null;

  const before = literalOf(left, is);
  const number = before ? null : plainNumber(left);
  if (!before && (number === null || divides)) return null;
  const names: string[] = [];
  const unit = unitsOf(right, names);
  if (!unit) return null;
  const doubtful = names.find((name) => is(name) !== 'unknown');
  if (doubtful) refuse('ambiguous', twoMeanings(doubtful));
  const parts = divides ? unit.parts.map((p) => ({ ...p, power: -p.power })) : unit.parts;
  return before
    ? { ...before, unit: { parts: [...before.unit.parts, ...parts] } }
    : { kind: 'literal', value: number!.value, text: number!.text, unit: { parts } };
}

/** 3, −3 or 1/2. */
function plainNumber(node: Node): { value: number; text: string } | null {
  if (node.type === 'ConstantNode') return numberOf(node);
  if (node.type !== 'OperatorNode') return null;
  const numbers = node.args.map((arg) => (arg.type === 'ConstantNode' ? plainNumber(arg) : null));
  const [a, b] = numbers;
  if (!a) return null;
  if (node.op === '-' && numbers.length === 1) return { value: -a.value, text: `-${a.text}` };
  if (node.op === '/' && b)
    return { value: a.value / b.value, text: `\\tfrac{${a.text}}{${b.text}}` };
  return null;
}

/** Names, powers, products and quotients of units; null as soon as something else is in it. */
export function unitsOf(node: Node, names: string[]): UnitProduct | null {
  if (node.type === 'SymbolNode') {
    const word = node.name === 'pi' ? null : unitWord(node.name);
    names.push(node.name);
    return word && { parts: [{ word, power: 1 }] };
  }
  if (node.type === 'ParenthesisNode') return unitsOf(node.content, names);
  if (node.type !== 'OperatorNode' || node.args.length !== 2) return null;
  const [left, right] = node.args as [Node, Node];
  if (node.op === '^') {
    const power = plainNumber(right)?.value;
    if (left.type !== 'SymbolNode' || power === undefined) return null;
    const base = unitsOf(left, names);
    if (base && !(Math.abs(power) <= LARGEST_POWER_OF_UNIT)) {
      refuse('number', 'The power of a unit is too large to be meant.');
    }
    return base && { parts: base.parts.map((p) => ({ ...p, power: p.power * power })) };
  }
  if (node.op !== '*' && node.op !== '/') return null;
  const a = unitsOf(left, names);
  const b = a && unitsOf(right, names);
  if (!a || !b) return null;
  const sign = node.op === '/' ? -1 : 1;
  return { parts: [...a.parts, ...b.parts.map((p) => ({ ...p, power: sign * p.power }))] };
}

function twoMeanings(name: string): string {
  const full = inFull(name);
  const unit = full ? `For the unit write ${full}. ` : '';
  return `“${name}” is a unit and a symbol of this sheet. ${unit}For the symbol write * before it, or put what comes before it in brackets.`;
}

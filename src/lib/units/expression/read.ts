/**
 * Reads an expression that a person typed. mathjs only parses it; what is not on the short list here
 * is refused, and what is accepted is copied into a {@link Tree}. Nothing of mathjs is ever run on it.
 */
import { literalOf, numberOf, unitsOf, type NameIs } from './literal';
import { parsed, refuse, Refusal, type Node, type ReadCode } from './scan';
import { FUNCTIONS, isFunction, type Operator, type Tree, type UnitProduct } from './tree';
import { meantOtherwise, unitWord } from './unitWords';

export type { NameIs } from './literal';

export interface Refused {
  readonly ok: false;
  readonly code: ReadCode;
  readonly message: string;
}

export type ReadTree = { readonly ok: true; readonly tree: Tree } | Refused;

/** Read `typed`; `is` tells what its names stand for. Never throws. */
export function readExpression(typed: string, is: NameIs): ReadTree {
  try {
    const node = parsed(typed);
    return { ok: true, tree: treeOf(node, is) };
  } catch (thrown) {
    return refusedBy(thrown);
  }
}

export type ReadUnit = { readonly ok: true; readonly unit: UnitProduct } | Refused;

/** Read the name of a unit alone, such as `Btu/h` or `kg/(m^2 s)`. Never throws. */
export function readUnitProduct(typed: string): ReadUnit {
  try {
    const node = parsed(typed);
    const unit = unitsOf(node, []);
    return unit
      ? { ok: true, unit }
      : { ok: false, code: 'unknown-name', message: `“${typed}” is not a unit known here.` };
  } catch (thrown) {
    return refusedBy(thrown);
  }
}

const refusedBy = (thrown: unknown): Refused =>
  thrown instanceof Refusal
    ? { ok: false, code: thrown.code, message: thrown.message }
    : { ok: false, code: 'syntax', message: 'This cannot be read as a calculation.' };

const OPERATORS: ReadonlySet<string> = new Set<Operator>(['+', '-', '*', '/', '^']);

function treeOf(node: Node, is: NameIs): Tree {
  const literal = literalOf(node, is);
  if (literal) return literal;
  switch (node.type) {
    case 'ConstantNode':
      return numberOf(node);
    case 'SymbolNode':
      return nameOf(node.name, is);
    case 'ParenthesisNode':
      return { kind: 'group', of: treeOf(node.content, is) };
    case 'FunctionNode':
      return callOf(node, is);
    case 'OperatorNode':
      return operationOf(node, is);
    default:
      return refuse(
        'not-allowed',
        'A calculation holds numbers, units, symbols and + − * / ^ only.',
      );
  }
}

function nameOf(name: string, is: NameIs): Tree {
  if (name === 'pi') return { kind: 'pi' };
  const stands = is(name);
  if (stands === 'symbol') return { kind: 'symbol', name };
  if (typeof stands === 'object') return refuse('ambiguous', stands.refused);
  const word = unitWord(name);
  if (word?.offset) {
    return refuse('syntax', `${name} needs its number before it, such as 20 ${name}.`);
  }
  if (word) return { kind: 'literal', value: 1, text: '', unit: { parts: [{ word, power: 1 }] } };
  const why = meantOtherwise(name);
  if (why) return refuse('ambiguous', why);
  if (isFunction(name)) return refuse('syntax', `${name} needs its value in brackets.`);
  return refuse(
    'unknown-name',
    `“${name}” is neither a symbol of this sheet, nor of one of your lines, nor a unit.`,
  );
}

function callOf(node: Node, is: NameIs): Tree {
  const name = node.fn.type === 'SymbolNode' ? node.fn.name : '';
  if (!isFunction(name)) {
    return refuse(
      'not-allowed',
      name !== '' && is(name) === 'symbol'
        ? `${name} is a symbol: to multiply, write ${name} * ( … ).`
        : `“${name}” cannot be called here. There are ${Object.keys(FUNCTIONS).join(', ')}.`,
    );
  }
  const { least, most } = FUNCTIONS[name];
  if (node.args.length < least || node.args.length > most) {
    refuse(
      'syntax',
      `${name} takes ${least === most ? 'one value' : `${least} to ${most} values`}.`,
    );
  }
  return { kind: 'call', name, args: node.args.map((arg) => treeOf(arg, is)) };
}

function operationOf(node: Node, is: NameIs): Tree {
  const [left, right, more] = node.args as [Node, Node?, Node?];
  if (!right) {
    if (node.op === '-') return { kind: 'negative', of: treeOf(left, is) };
    if (node.op === '+') return treeOf(left, is);
  }
  if (node.op === 'to' || node.op === 'in') {
    refuse('not-allowed', 'The unit of the result has a blank of its own.');
  }
  if (!right || more || !OPERATORS.has(node.op)) {
    return refuse('not-allowed', `“${node.op}” has no place in a calculation.`);
  }
  if (node.implicit && left.type !== 'ConstantNode' && right.type !== 'ParenthesisNode') {
    return refuse('syntax', 'Between two parts something is missing: * to multiply, or + or -.');
  }
  if (node.implicit && right.type === 'ConstantNode') {
    return refuse('syntax', 'Two numbers stand side by side.');
  }
  return {
    kind: 'operation',
    op: node.op as Operator,
    left: treeOf(left, is),
    right: treeOf(right, is),
  };
}

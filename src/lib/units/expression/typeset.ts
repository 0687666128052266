/** An expression as TeX: with its symbols, or with numbers put in for them. */
import type { Quantity } from '$lib/solver/quantity';
import { temperatureKind, type Amount } from './amount';
import { isTemperature } from './dimension';
import { isWritten } from './evaluate';
import { FUNCTIONS, shiftedUnit, type Tree, type UnitProduct } from './tree';

/** Typeset a symbol; with numbers put in, the temperature kind it must be printed as. */
export type Leaf = (name: string, temperature: Quantity | null) => string;

/** A product of units. */
export function productTex({ parts }: UnitProduct): string {
  const side = (sign: 1 | -1) =>
    parts
      .filter(({ power }) => Math.sign(power) === sign)
      .map(({ word, power }) => {
        const size = Math.abs(power);
        return size === 1 ? word.tex : `{${word.tex}}^{${size}}`;
      });
  const [above, below] = [side(1), side(-1)];
  if (below.length === 0) return above.join('\\,');
  if (above.length === 0) {
    return parts.map(({ word, power }) => `{${word.tex}}^{${power}}`).join('\\,');
  }
  const denominator = below.length > 1 ? `(${below.join('\\,')})` : below[0]!;
  return `${above.join('\\,')}/${denominator}`;
}

/** Typeset `tree`. With `parts`, what each part came to, literals stand as numbers put in. */
export function treeTex(tree: Tree, leaf: Leaf, parts?: ReadonlyMap<Tree, Amount>): string {
  const absolute = parts ? absoluteLeaves(tree, parts) : new Set<Tree>();
  const kindOf = (node: Tree): Quantity | null => {
    const amount = parts?.get(node);
    if (!amount || !isTemperature(amount.dimension)) return null;
    if (amount.quantity === 'beta') return null;
    const kind = temperatureKind(amount);
    return kind === 'temperature' && absolute.has(node) ? 'absoluteTemperature' : kind;
  };
  const inside = (node: Tree): string => {
    switch (node.kind) {
      case 'number':
        return `{${node.text}}`;
      case 'pi':
        return '\\pi';
      case 'symbol':
        return leaf(node.name, kindOf(node));
      case 'literal':
        return literalTex(node, absolute.has(node));
      case 'group':
        return `\\left(${inside(node.of)}\\right)`;
      case 'negative':
        return `-${inside(node.of)}`;
      case 'call': {
        const list = node.args.map(inside).join(',\\; ');
        if (node.name === 'sqrt') return `\\sqrt{${list}}`;
        if (node.name === 'abs') return `\\left|${list}\\right|`;
        return `${FUNCTIONS[node.name].tex}\\left(${list}\\right)`;
      }
      case 'operation':
        return operationTex(node, inside, parts !== undefined);
    }
  };
  return inside(tree);
}

function operationTex(
  { op, left, right }: Tree & { kind: 'operation' },
  inside: (node: Tree) => string,
  numbers: boolean,
): string {
  const bare = (node: Tree) => inside(node.kind === 'group' ? node.of : node);
  switch (op) {
    case '/':
      return `\\frac{${bare(left)}}{${bare(right)}}`;
    case '^': {
      // 3 gpm squared is (3 gpm)², not 3 gpm².
      const whole = left.kind === 'literal' || (numbers && left.kind === 'symbol');
      const base = inside(left);
      return `{${whole ? `\\left(${base}\\right)` : base}}^{${bare(right)}}`;
    }
    case '*':
      return `${inside(left)} \\cdot ${inside(right)}`;
    default:
      return `${inside(left)} ${op} ${inside(right)}`;
  }
}

/** A temperature that is multiplied is written from absolute zero, as one would by hand. */
function literalTex({ text, unit }: Tree & { kind: 'literal' }, absolute: boolean): string {
  const shifted = shiftedUnit(unit);
  if (shifted && absolute) {
    const [zero, tex] =
      shifted.spelling === 'degF'
        ? ['459.67', '{}^{\\circ}\\mathrm{R}']
        : ['273.15', '\\mathrm{K}'];
    return `\\left(${text} + ${zero}\\right)\\,${tex}`;
  }
  return text === '' ? `{${productTex(unit)}}` : `{${text}\\,${productTex(unit)}}`;
}

/**
 * Temperatures that must be printed as counted from absolute zero for the printed numbers to give the
 * result: those multiplied or raised, and those summed with such.
 */
export function absoluteLeaves(tree: Tree, parts: ReadonlyMap<Tree, Amount>): Set<Tree> {
  const found = new Set<Tree>();
  const visit = (node: Tree, multiplied: boolean): void => {
    const amount = parts.get(node);
    if (amount && isTemperature(amount.dimension)) {
      mark(node, shownAbsolute(amount, multiplied));
      return;
    }
    const sums = node.kind === 'operation' && (node.op === '+' || node.op === '-');
    const loose = node.kind === 'group' || node.kind === 'negative' || sums;
    for (const child of childrenOf(node)) visit(child, loose ? multiplied : true);
  };
  /** Everything that a sum of temperatures is made of is counted alike. */
  const mark = (node: Tree, absolute: boolean): void => {
    if (node.kind === 'symbol' || node.kind === 'literal') {
      if (absolute) found.add(node);
      return;
    }
    const scaled =
      node.kind === 'operation' &&
      ((node.op === '*' && (isWritten(node.left) || isWritten(node.right))) ||
        (node.op === '/' && isWritten(node.right)));
    const affine =
      node.kind === 'group' ||
      node.kind === 'negative' ||
      node.kind === 'call' ||
      scaled ||
      (node.kind === 'operation' && (node.op === '+' || node.op === '-'));
    // One part that counts from absolute zero makes all of a sum do so.
    const all = absolute || childrenOf(node).some((child) => parts.get(child)?.absolute);
    for (const child of childrenOf(node)) {
      const amount = parts.get(child);
      if (affine && amount && isTemperature(amount.dimension)) mark(child, all);
      else visit(child, true);
    }
  };
  visit(tree, false);
  return found;
}

/** Whether a temperature is printed from absolute zero. */
const shownAbsolute = (amount: Amount, multiplied: boolean): boolean => {
  if (amount.absolute) return true;
  const isDifference = Math.abs(amount.zeros) < 1e-9;
  return multiplied
    ? !isDifference
    : !amount.summed && temperatureKind(amount) === 'absoluteTemperature';
};

const childrenOf = (node: Tree): readonly Tree[] => {
  switch (node.kind) {
    case 'group':
    case 'negative':
      return [node.of];
    case 'operation':
      return [node.left, node.right];
    case 'call':
      return node.args;
    default:
      return [];
  }
};

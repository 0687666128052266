/**
 * The tree of an accepted expression. It holds numbers, units, names and a few operations and nothing
 * else: whatever is done with an expression is done with this, never with what the parser gave.
 */
import { multiplied, NO_DIMENSION, type Dimension } from './dimension';
import type { UnitWord } from './unitWords';

/** A product of units. */
export interface UnitProduct {
  readonly parts: readonly { readonly word: UnitWord; readonly power: number }[];
}

export type Operator = '+' | '-' | '*' | '/' | '^';

export type Tree =
  | { readonly kind: 'number'; readonly value: number; readonly text: string }
  | { readonly kind: 'pi' }
  /** A number with its unit, or a unit alone (`value` 1, `text` empty). */
  | {
      readonly kind: 'literal';
      readonly value: number;
      readonly text: string;
      readonly unit: UnitProduct;
    }
  | { readonly kind: 'symbol'; readonly name: string }
  | { readonly kind: 'negative' | 'group'; readonly of: Tree }
  | {
      readonly kind: 'operation';
      readonly op: Operator;
      readonly left: Tree;
      readonly right: Tree;
    }
  | { readonly kind: 'call'; readonly name: FunctionName; readonly args: readonly Tree[] };

/** What may be called: how many values it takes, and how it is typeset. */
export const FUNCTIONS = {
  sqrt: { least: 1, most: 1, tex: '\\sqrt' },
  exp: { least: 1, most: 1, tex: '\\exp' },
  log: { least: 1, most: 1, tex: '\\ln' },
  log10: { least: 1, most: 1, tex: '\\log_{10}' },
  sin: { least: 1, most: 1, tex: '\\sin' },
  cos: { least: 1, most: 1, tex: '\\cos' },
  tan: { least: 1, most: 1, tex: '\\tan' },
  abs: { least: 1, most: 1, tex: '' },
  round: { least: 1, most: 1, tex: '\\operatorname{round}' },
  min: { least: 1, most: 10, tex: '\\min' },
  max: { least: 1, most: 10, tex: '\\max' },
} as const;
export type FunctionName = keyof typeof FUNCTIONS;

export const isFunction = (name: string): name is FunctionName => Object.hasOwn(FUNCTIONS, name);

/** The one unit of a temperature with a zero of its own, where the product is just that. */
export function shiftedUnit({ parts }: UnitProduct): UnitWord | null {
  const [only] = parts;
  return parts.length === 1 && only!.power === 1 && only!.word.offset !== 0 ? only!.word : null;
}

/** Factor to SI and dimensions; degrees inside a product are steps, without a zero. */
export function measureOf({ parts }: UnitProduct): { factor: number; dimension: Dimension } {
  let factor = 1;
  let dimension = NO_DIMENSION;
  for (const { word, power } of parts) {
    factor *= word.factor ** power;
    dimension = multiplied(dimension, word.dimension, power);
  }
  return { factor, dimension };
}

/** Names of the symbols a tree holds, each once. */
export function symbolsIn(tree: Tree): string[] {
  const found = new Set<string>();
  const visit = (node: Tree): void => {
    if (node.kind === 'symbol') found.add(node.name);
    else if (node.kind === 'negative' || node.kind === 'group') visit(node.of);
    else if (node.kind === 'operation') [node.left, node.right].forEach(visit);
    else if (node.kind === 'call') node.args.forEach(visit);
  };
  visit(tree);
  return [...found];
}

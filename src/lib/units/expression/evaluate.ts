/** The amount an expression comes to. */
import {
  absolute,
  AmountRefused,
  bareNumber,
  extreme,
  negated,
  ofNumber,
  product,
  raisedTo,
  squareRoot,
  sum,
  type Amount,
} from './amount';
import { measureOf, shiftedUnit, type FunctionName, type Tree } from './tree';

export type Evaluated =
  | {
      readonly ok: true;
      readonly amount: Amount;
      /** What every part of the tree came to. */
      readonly parts: ReadonlyMap<Tree, Amount>;
    }
  | { readonly ok: false; readonly message: string };

/** Evaluate `tree` with these symbols, all of which it must find. Never throws. */
export function evaluateTree(tree: Tree, symbols: ReadonlyMap<string, Amount>): Evaluated {
  const parts = new Map<Tree, Amount>();
  const visit = (node: Tree): Amount => {
    const amount = amountAt(node, symbols, visit);
    parts.set(node, amount);
    return amount;
  };
  try {
    return { ok: true, amount: visit(tree), parts };
  } catch (thrown) {
    const known = thrown instanceof AmountRefused;
    return { ok: false, message: known ? thrown.message : 'This cannot be worked out.' };
  }
}

function amountAt(
  node: Tree,
  symbols: ReadonlyMap<string, Amount>,
  visit: (node: Tree) => Amount,
): Amount {
  switch (node.kind) {
    case 'number':
      return bareNumber(node.value);
    case 'pi':
      return bareNumber(Math.PI);
    case 'literal':
      return literalAmount(node);
    case 'symbol': {
      const amount = symbols.get(node.name);
      if (!amount) throw new AmountRefused(`${node.name} has no value here.`);
      return amount;
    }
    case 'group':
      return visit(node.of);
    case 'negative':
      return negated(visit(node.of));
    case 'operation': {
      const [a, b] = [visit(node.left), visit(node.right)];
      switch (node.op) {
        case '+':
          return sum(a, b, 1);
        case '-':
          return sum(a, b, -1);
        case '^':
          return raisedTo(a, b, isWritten(node.right));
        default: {
          const written = isWritten(node.right) ? 'b' : isWritten(node.left) ? 'a' : null;
          return product(a, b, node.op === '*' ? 1 : -1, written);
        }
      }
    }
    case 'call':
      return called(node.name, node.args.map(visit));
  }
}

function literalAmount({ value, unit }: Tree & { kind: 'literal' }): Amount {
  const shifted = shiftedUnit(unit);
  if (shifted) {
    const si = value * shifted.factor + shifted.offset;
    return { si, dimension: shifted.dimension, quantity: 'temperature', zeros: 1 };
  }
  const { factor, dimension } = measureOf(unit);
  return { si: value * factor, dimension, zeros: 0 };
}

/** Made of written numbers only: the same whatever the job says. */
export function isWritten(node: Tree): boolean {
  switch (node.kind) {
    case 'number':
    case 'pi':
      return true;
    case 'negative':
    case 'group':
      return isWritten(node.of);
    case 'operation':
      return isWritten(node.left) && isWritten(node.right);
    default:
      return false;
  }
}

const OF_NUMBER = {
  exp: Math.exp,
  log: Math.log,
  log10: Math.log10,
  sin: Math.sin,
  cos: Math.cos,
  tan: Math.tan,
  round: Math.round,
} as const;

function called(name: FunctionName, args: readonly Amount[]): Amount {
  switch (name) {
    case 'sqrt':
      return squareRoot(args[0]!);
    case 'abs':
      return absolute(args[0]!);
    case 'min':
    case 'max':
      return extreme(name, args);
    default:
      return ofNumber(name, args[0]!, OF_NUMBER[name]);
  }
}

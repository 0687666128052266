/**
 * Exhaustive search of resistor networks: of all that a stock can make, the few nearest a wanted
 * resistance from below and from above.
 *
 * Each form's resistance rises with its last resistor, so for given first ones the best last ones stand
 * side by side in the sorted stock: one binary search finds them, and the walk outward ends where nothing
 * nearer can follow. Every network is thereby weighed, most without being visited.
 */
import { InvalidInputError, requireWithin } from '../../../errors';
import { RESISTOR_RANGE } from '../../preferred';
import { FORMS, resistanceOf, type Form, type Network } from './network';

export interface Stock {
  /** ohm, ascending, each once. */
  readonly values: readonly number[];
  /** How many of each; as many as wanted where absent. */
  readonly counts?: readonly number[];
}

export interface FoundNetwork {
  readonly network: Network;
  /** ohm */
  readonly R: number;
}

/** Nearest networks on either side, the nearest first. */
export interface Nearest {
  /** At the wanted resistance or below. */
  readonly below: readonly FoundNetwork[];
  readonly above: readonly FoundNetwork[];
}

/** More values than this make a search of three too slow for a page. */
export const STOCK_MOST = 1000;

/**
 * Stock from a list as a person keeps it: any order, values repeated.
 * @param list - value in ohm and, where counted, how many
 * @throws {@link InvalidInputError} for an empty list, or one longer than {@link STOCK_MOST}
 * @throws {@link OutOfRangeError} for a value that is no resistor's
 */
export function stockOf(list: readonly { readonly R: number; readonly count?: number }[]): Stock {
  const byValue = new Map<number, number>();
  for (const { R, count = Infinity } of list) {
    requireWithin('resistors', RESISTOR_RANGE, { R });
    if (!(count >= 0)) throw new InvalidInputError('resistors', 'a count is below zero', count);
    byValue.set(R, (byValue.get(R) ?? 0) + count);
  }
  const values = [...byValue.keys()].filter((R) => byValue.get(R)! >= 1).sort((a, b) => a - b);
  if (values.length === 0) {
    throw new InvalidInputError(
      'resistors',
      'the list of resistors is empty: enter what is there, or choose a series',
      0,
    );
  }
  if (values.length > STOCK_MOST) {
    throw new InvalidInputError('resistors', `more than ${STOCK_MOST} values`, values.length);
  }
  return { values, counts: values.map((R) => byValue.get(R)!) };
}

/**
 * The `keep` nearest networks of `size` resistors on each side of `target`, out of all.
 *
 * @param target - wanted, ohm
 * @param size - number of resistors, 1 to 3
 * @param keep - how many to return on each side
 */
export function nearestNetworks(
  target: number,
  stock: Stock,
  size: 1 | 2 | 3,
  keep: number,
): Nearest {
  const search = new Search(target, stock, keep);
  for (const form of FORMS[size]) search.form(form, size);
  return { below: search.below.list, above: search.above.list };
}

/** The nearest so far on one side. */
class Side {
  readonly list: FoundNetwork[] = [];
  /** Nothing at this distance or beyond is wanted any more. */
  worst = Infinity;
  constructor(readonly keep: number) {}

  add(gap: number, target: number, found: FoundNetwork): void {
    let at = this.list.length;
    while (at > 0 && Math.abs(this.list[at - 1]!.R - target) > gap) at--;
    this.list.splice(at, 0, found);
    if (this.list.length > this.keep) this.list.pop();
    if (this.list.length === this.keep) {
      this.worst = Math.abs(this.list[this.keep - 1]!.R - target);
    }
  }
}

class Search {
  readonly below: Side;
  readonly above: Side;
  readonly #values: Float64Array;
  readonly #counts: readonly number[] | undefined;

  constructor(
    readonly target: number,
    stock: Stock,
    keep: number,
  ) {
    this.below = new Side(keep);
    this.above = new Side(keep);
    this.#values = Float64Array.from(stock.values);
    this.#counts = stock.counts;
  }

  form(form: Form, size: 1 | 2 | 3): void {
    const n = this.#values.length;
    if (size === 1) this.#last(form, 0, -1, -1);
    else if (size === 2) for (let i = 0; i < n; i++) this.#last(form, i, i, -1);
    else {
      // Equal roles are taken in rising order, so that no network comes twice.
      const symmetric = form === 'a+b+c' || form === 'a|b|c';
      for (let i = 0; i < n; i++) {
        for (let j = symmetric ? i : 0; j < n; j++) this.#last(form, symmetric ? j : i, i, j);
      }
    }
  }

  /** All networks with these first resistors: `i` and `j` are places in the stock, `from` the first allowed last. */
  #last(form: Form, from: number, i: number, j: number): void {
    const v = this.#values;
    const n = v.length;
    const split = this.#split(wantedLast(form, this.target, v[i] ?? NaN, v[j] ?? NaN), from);
    for (let k = split - 1; k >= from; k--) if (!this.#offer(form, i, j, k)) break;
    for (let k = split; k < n; k++) if (!this.#offer(form, i, j, k)) break;
  }

  /** False when this one, and so any beyond it, is too far. */
  #offer(form: Form, i: number, j: number, k: number): boolean {
    const v = this.#values;
    const R = networkOf(form, v[i] ?? NaN, v[j] ?? NaN, v[k]!);
    const gap = Math.abs(R - this.target);
    const side = R <= this.target ? this.below : this.above;
    if (!(gap < side.worst)) return false;
    if (this.#enough(i, j, k)) {
      const parts = [v[i], v[j], v[k]].filter((R) => R !== undefined);
      side.add(gap, this.target, { network: { form, parts: inLetters(form, parts) }, R });
    }
    return true;
  }

  #enough(i: number, j: number, k: number): boolean {
    const counts = this.#counts;
    if (!counts) return true;
    const used = (at: number) => Number(at === i) + Number(at === j) + Number(at === k);
    return [i, j, k].every((at) => at < 0 || used(at) <= counts[at]!);
  }

  /** First place, not before `from`, whose value exceeds `R`. */
  #split(R: number, from: number): number {
    let low = from;
    let high = this.#values.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (this.#values[middle]! <= R) low = middle + 1;
      else high = middle;
    }
    return low;
  }
}

/**
 * Here the first resistor is `a`; the second one of three is the one that stands alone (`c` of
 * `(a+b)|c`), and the last, solved for, is `a`'s partner. For equal roles any order will do.
 */
const networkOf = (form: Form, first: number, second: number, last: number): number =>
  form === '(a+b)|c' || form === '(a|b)+c'
    ? resistanceOf(form, first, last, second)
    : second === second
      ? resistanceOf(form, first, second, last)
      : first === first
        ? resistanceOf(form, first, last, NaN)
        : last;

const inLetters = (form: Form, parts: readonly number[]): readonly number[] =>
  form === '(a+b)|c' || form === '(a|b)+c' ? [parts[0]!, parts[2]!, parts[1]!] : parts;

/** Last resistor that makes the target exactly; Infinity where even the largest stays below it. */
function wantedLast(form: Form, target: number, first: number, second: number): number {
  switch (form) {
    case 'a':
      return target;
    case 'a+b':
      return target - first;
    case 'a|b':
      return besides(target, first);
    case 'a+b+c':
      return target - first - second;
    case 'a|b|c':
      return besides(target, (first * second) / (first + second));
    case '(a+b)|c':
      return besides(target, second) - first;
    case '(a|b)+c':
      return target > second ? besides(target - second, first) : -Infinity;
  }
}

/** What makes `target` beside `R`. */
const besides = (target: number, R: number): number =>
  target < R ? (target * R) / (R - target) : Infinity;

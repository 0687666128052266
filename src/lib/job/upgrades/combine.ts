/** Combinations of moves within a budget, tried one by one. */
import { compatible, together, type Move } from './moves';
import { MOST_PARTS } from '../file/parts';

/** One set of moves that was solved. */
export interface Tried {
  /** Places in the list of moves, rising. */
  readonly moves: readonly number[];
  readonly cost: number;
  /** Null where the mass of a part is not known. */
  readonly mass: number | null;
  /** What it leads to, K. */
  readonly T: number;
}

export interface Combinations {
  /** All that were solved and gave an answer; the empty set is the loop as found. */
  readonly tried: readonly Tried[];
  /** More sets fit the budget than were tried: beyond, only the best was built on. */
  readonly capped: boolean;
}

/** Sets tried one and all; a drive for each takes some seconds (ours). */
export const MOST_SETS = 200;

/** Where a search stands, for the one who waits. */
export interface Progress {
  readonly done: number;
  readonly of: number;
}

/**
 * Every set of moves that go together and cost no more than the budget, smallest sets first, up to
 * {@link MOST_SETS}. Where there are more, the best so far is built on: the move that brings most is
 * added, again and again, until none brings anything. Moves without a known cost are left out.
 *
 * @param budget - Infinity: none stated
 * @param solve - temperature with these moves, K; null where it has none
 */
export function* combinations(
  moves: readonly Move[],
  budget: number,
  solve: (moves: readonly number[]) => number | null,
): Generator<Progress, Combinations> {
  const fits = (set: readonly number[], more: number) =>
    !set.includes(more) &&
    costOf(moves, set) + moves[more]!.cost! <= budget &&
    set.every((one) => compatible(moves[one]!, moves[more]!)) &&
    partsOf(moves, [...set, more]) <= MOST_PARTS;
  const priced = moves.flatMap(({ cost }, i) => (cost === null ? [] : [i]));

  const sets: (readonly number[])[] = [[]];
  let capped = false;
  for (let i = 0; i < sets.length && !capped; i++) {
    for (const more of priced) {
      if (more <= (sets[i]!.at(-1) ?? -1) || !fits(sets[i]!, more)) continue;
      if (sets.length > MOST_SETS) {
        capped = true;
        break;
      }
      sets.push([...sets[i]!, more]);
    }
  }

  const tried: Tried[] = [];
  const known = new Set<string>();
  const attempt = (set: readonly number[]): Tried | null => {
    known.add(set.join());
    const T = solve(set);
    if (T === null) return null;
    const found = { moves: set, cost: costOf(moves, set), mass: massOf(moves, set), T };
    tried.push(found);
    return found;
  };
  for (const [done, set] of sets.entries()) {
    yield { done, of: sets.length };
    attempt(set);
  }
  let best = capped ? bestOf(tried) : null;
  while (best) {
    const from: Tried = best;
    const larger = priced
      .filter((more) => fits(from.moves, more))
      .map((more) => [...from.moves, more].sort((a, b) => a - b))
      .filter((set) => !known.has(set.join()));
    for (const set of larger) {
      yield { done: known.size, of: known.size + larger.length };
      attempt(set);
    }
    const next: Tried | null = bestOf(tried);
    best = next === from ? null : next;
  }
  return { tried, capped };
}

/** Lowest temperature; of equals the cheaper. */
export const bestOf = (tried: readonly Tried[]): Tried | null =>
  tried.reduce<Tried | null>(
    (best, one) =>
      !best || one.T < best.T || (one.T === best.T && one.cost < best.cost) ? one : best,
    null,
  );

const costOf = (moves: readonly Move[], set: readonly number[]) =>
  set.reduce((sum, i) => sum + moves[i]!.cost!, 0);

const massOf = (moves: readonly Move[], set: readonly number[]) =>
  set.reduce<number | null>((sum, i) => {
    const { mass } = moves[i]!;
    return sum === null || mass === null ? null : sum + mass;
  }, 0);

const partsOf = (moves: readonly Move[], set: readonly number[]) =>
  together(set.map((i) => moves[i]!)).parts?.length ?? 0;

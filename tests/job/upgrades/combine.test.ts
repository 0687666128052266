/** Moves out of candidates, and combinations of them within a budget. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { combinations, MOST_SETS, type Combinations } from '$lib/job/upgrades/combine';
import { demoJob } from '$lib/job/demo';
import { evaluate } from '$lib/job/evaluate';
import { compatible, movesOf, together, type Move } from '$lib/job/upgrades/moves';
import { MOST_ASIDE } from '$lib/job/file/schema';
import { takeUpMoves } from '$lib/job/upgrades/upgradesEdits';
import type { Job } from '$lib/job/types';

const move = (id: string, paths: readonly string[], cost: number | null): Move => ({
  id,
  name: id,
  changes: Object.fromEntries(paths.map((path) => [path, { is: id }])),
  parts: [],
  cost,
  mass: null,
});

/** Each move takes off as many degrees as it says; sums, so that the best is known beforehand. */
function run(moves: readonly Move[], gains: readonly number[], budget: number): Combinations {
  const work = combinations(
    moves,
    budget,
    (set) => 400 - set.reduce((sum, i) => sum + gains[i]!, 0),
  );
  for (;;) {
    const step = work.next();
    if (step.done) return step.value;
  }
}

const arbitraryMoves = fc.array(
  fc.record({
    paths: fc.uniqueArray(fc.constantFrom('a', 'b', 'c', 'd', 'e'), { minLength: 1, maxLength: 2 }),
    cost: fc.option(fc.integer({ min: 0, max: 50 })),
    gain: fc.integer({ min: -5, max: 20 }),
  }),
  { maxLength: 7 },
);

describe('combinations', () => {
  it('are all that go together and are paid for, and no other', () => {
    fc.assert(
      fc.property(arbitraryMoves, fc.integer({ min: 0, max: 120 }), (list, budget) => {
        const moves = list.map(({ paths, cost }, i) => move(`${i}`, paths, cost));
        const { tried, capped } = run(
          moves,
          list.map(({ gain }) => gain),
          budget,
        );
        expect(capped).toBe(false);
        // Every subset, by counting in binary.
        const all = Array.from({ length: 2 ** moves.length }, (_, bits) =>
          moves.flatMap((_, i) => (bits & (1 << i) ? [i] : [])),
        ).filter(
          (set) =>
            set.every((i) => moves[i]!.cost !== null) &&
            set.reduce((sum, i) => sum + moves[i]!.cost!, 0) <= budget &&
            set.every((a) => set.every((b) => a === b || compatible(moves[a]!, moves[b]!))),
        );
        const keys = (sets: readonly (readonly number[])[]) => sets.map((set) => set.join()).sort();
        expect(keys(tried.map((one) => one.moves))).toEqual(keys(all));
      }),
      { numRuns: 60 },
    );
  });
  it('that are too many are capped, and the best is built on to its end', () => {
    const moves = Array.from({ length: 14 }, (_, i) => move(`${i}`, [`p${i}`], 1));
    const { tried, capped } = run(
      moves,
      moves.map((_, i) => i + 1),
      Infinity,
    );
    expect(capped).toBe(true);
    expect(tried.length).toBeGreaterThan(MOST_SETS);
    // Gains add up here, so building on finds the best of all 16,384.
    expect(Math.min(...tried.map(({ T }) => T))).toBe(400 - (14 * 15) / 2);
  });
  it('leave out what has no answer', () => {
    const work = combinations([move('a', ['a'], 1)], 9, (set) => (set.length > 0 ? null : 300));
    let step = work.next();
    while (!step.done) step = work.next();
    expect(step.value.tried.map(({ moves }) => moves)).toEqual([[]]);
  });
});

describe('moves of the demonstration job', () => {
  const job = demoJob();
  const moves = movesOf(job);
  it('have names and ids of their own, and every whole candidate is one', () => {
    expect(new Set(moves.map(({ id }) => id)).size).toBe(moves.length);
    expect(new Set(moves.map(({ name }) => name)).size).toBe(moves.length);
    for (const { name } of [job.candidate!, ...job.aside]) {
      expect(moves.map((m) => m.name)).toContain(name);
    }
  });
  it('out of a candidate change only their kind, and cost what its rows say', () => {
    const air = moves.find(({ name }) => name === 'Ducts and seals alone')!;
    expect(Object.keys(air.changes).every((path) => path.startsWith('airPath.'))).toBe(true);
    expect(air.cost).toBe(85);
  });
  it('that are the same change stand once', () => {
    const hoses = moves.filter(({ changes }) =>
      Object.keys(changes).every((path) => path.startsWith('hose.')),
    );
    expect(hoses.map(({ name }) => name)).toEqual(['3/4 in hose all round']);
  });
});

describe('taking up a combination', () => {
  const job = demoJob();
  const moves = movesOf(job).filter(({ name }) => /pump feed$|hose all round/.test(name));
  it('merges changes and parts, and puts the one in hand aside', () => {
    expect(moves).toHaveLength(2);
    const next = takeUpMoves(job, moves);
    expect(next.aside).toEqual([...job.aside, job.candidate]);
    expect(Object.keys(next.candidate!.changes)).toHaveLength(
      moves.reduce((sum, { changes }) => sum + Object.keys(changes).length, 0),
    );
    expect(next.candidate!.parts).toEqual(together(moves).parts);
    expect(evaluate(next).candidate!.problem).toBeUndefined();
  });
  it('twice gives two names', () => {
    const next = takeUpMoves(takeUpMoves(job, moves), moves);
    expect(next.aside.map(({ name }) => name)).not.toContain(next.candidate!.name);
  });
  it('does nothing where there is no room aside', () => {
    const full: Job = { ...job, aside: Array.from({ length: MOST_ASIDE }, () => job.aside[0]!) };
    expect(takeUpMoves(full, moves)).toBe(full);
  });
});

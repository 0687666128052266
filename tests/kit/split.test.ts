/** Where a list of parts is cut into two columns. */
import { describe, expect, it } from 'vitest';
import { splitAt } from '../../src/lib/kit/split';

describe('two columns', () => {
  it.each([
    [[100, 100], 1],
    [[300, 100, 100, 100], 1],
    [[100, 100, 100, 300], 3],
    [[200, 150, 150, 100], 2],
    [[400], 1],
    [[], 0],
  ])('%j is cut after %d', (heights, cut) => {
    expect(splitAt(heights)).toBe(cut);
  });

  it('never leaves the taller column taller than any other cut would', () => {
    const heights = [310, 220, 95, 640, 120, 330, 80];
    const taller = (cut: number) => {
      const sum = (list: readonly number[]) => list.reduce((a, b) => a + b, 0);
      return Math.max(sum(heights.slice(0, cut)), sum(heights.slice(cut)));
    };
    const all = heights.map((_, i) => taller(i + 1));
    expect(taller(splitAt(heights))).toBe(Math.min(...all));
  });
});

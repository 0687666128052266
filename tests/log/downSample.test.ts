import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { plotRows } from '$lib/log/downSample';
import { evenTimes, filled, meanAt } from '$lib/log/resample';
import { seededRandom } from '$lib/solver/numerics/random';

describe('rows for a plot', () => {
  it('keep the least and the greatest of every pixel, whatever the rate', () => {
    fc.assert(
      fc.property(
        fc.array(
          fc.record({
            dt: fc.double({ min: 0.01, max: 5, noNaN: true }),
            x: fc.double({ min: -1e3, max: 1e3, noNaN: true }),
          }),
          { minLength: 2, maxLength: 300 },
        ),
        fc.integer({ min: 1, max: 40 }),
        (rows, pixels) => {
          let time = 0;
          const t = Float64Array.from(rows, ({ dt }) => (time += dt));
          const x = Float64Array.from(rows, (row) => row.x);
          const [from, to] = [t[0]!, t.at(-1)! + 1e-6];
          const kept = new Set(plotRows(t, x, { from, to, pixels }));
          const width = (to - from) / pixels;
          for (let p = 0; p < pixels; p++) {
            const inside = rows
              .map((_, k) => k)
              .filter((k) => Math.floor((t[k]! - from) / width) === p);
            if (inside.length === 0) continue;
            const shown = inside.filter((k) => kept.has(k));
            const all = inside.map((k) => x[k]!);
            const seen = shown.map((k) => x[k]!);
            expect(Math.max(...seen)).toBe(Math.max(...all));
            expect(Math.min(...seen)).toBe(Math.min(...all));
            expect(shown.length).toBeLessThanOrEqual(4);
          }
        },
      ),
    );
  });

  it('a single spike in a million rows survives on 800 pixels, and the work is short', () => {
    const n = 1_000_000;
    const t = Float64Array.from({ length: n }, (_, k) => k / 100);
    const x = new Float64Array(n).fill(300);
    x[654_321] = 400;
    const rows = plotRows(t, x, { from: 0, to: t[n - 1]!, pixels: 800 });
    expect(rows.includes(654_321)).toBe(true);
    expect(rows.length).toBeLessThan(3300);
  });

  it('a gap wider than a pixel breaks the line, a narrow one does not', () => {
    const t = evenTimes(0, 100, 0.1);
    const x = t.map((s) => (s > 40 && s < 60 ? NaN : 1));
    const rows = plotRows(t, x, { from: 0, to: 100, pixels: 50 });
    expect(Array.from(rows).some((k) => Number.isNaN(x[k]!))).toBe(true);
    const narrow = t.map((_, k) => (k % 2 ? NaN : 1));
    const kept = plotRows(t, narrow, { from: 0, to: 100, pixels: 50 });
    expect(Array.from(kept).some((k) => Number.isNaN(narrow[k]!))).toBe(false);
  });

  it('a leap of time wider than a pixel parts the line, a narrow one does not', () => {
    // A row a second but for one missing minute after row 49 and two seconds after row 79.
    const t = Float64Array.from(
      { length: 120 },
      (_, k) => k + (k >= 50 ? 60 : 0) + (k >= 80 ? 2 : 0),
    );
    const gaps = Int32Array.of(50, 80);
    const rows = Array.from(plotRows(t, t, { from: 0, to: 180, pixels: 40, gaps }));
    expect(rows.filter((row) => row < 0)).toEqual([-50]);
    expect(rows.indexOf(-50)).toBe(rows.indexOf(49) + 1);
    expect(rows[rows.indexOf(-50) + 1]).toBe(50);
    // Zoomed into the leap only its two sides are left, with nothing drawn between them.
    const inside = plotRows(t, t, { from: 70, to: 90, pixels: 40, gaps });
    expect(Array.from(inside).slice(0, 3)).toEqual([49, -50, 50]);
  });

  it('one row beyond each edge is kept, so the line runs on', () => {
    const t = evenTimes(0, 100, 1);
    const rows = Array.from(plotRows(t, t, { from: 20.5, to: 30.5, pixels: 5 }));
    expect(rows[0]).toBe(20);
    expect(rows.at(-1)).toBeGreaterThanOrEqual(31);
  });
});

describe('one pace', () => {
  it('means of ten readings carry a tenth of the variance', () => {
    const random = seededRandom(2);
    const t = evenTimes(0, 2000, 0.1);
    const x = t.map(() => random.normal());
    const means = meanAt(t, x, evenTimes(0, 2000, 1), 1);
    const variance = means.reduce((sum, m) => sum + m * m, 0) / means.length;
    expect(variance).toBeGreaterThan(0.085);
    expect(variance).toBeLessThan(0.115);
  });

  it('a straight line keeps its values, gaps stay gaps, marked readings are left out', () => {
    const t = evenTimes(0, 20, 0.25);
    const x = t.map((s) => (s > 8 && s < 12 ? NaN : 3 * s));
    x[20] = 1e6;
    const means = meanAt(t, x, evenTimes(0, 20, 1), 1, (row) => row === 20);
    expect(means[10]).toBeNaN();
    expect(means[3]!).toBeCloseTo(3 * 2.875, 9); // 2.5, 2.75, 3, 3.25
    expect(means[5]!).toBeLessThan(20);
  });

  it('what drives a model is filled by straight lines', () => {
    const t = Float64Array.of(0, 1, 2, 4, 5);
    expect(Array.from(filled(Float64Array.of(NaN, 1, NaN, 4, NaN), t))).toEqual([1, 1, 2, 4, 4]);
  });
});

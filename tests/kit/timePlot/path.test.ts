import { describe, expect, it } from 'vitest';
import { crossPath, curvePath } from '$lib/kit/timePlot/path';
import { scale } from '$lib/kit/timePlot/scale';
import { DOUBT } from '$lib/kit/timePlot/types';

const curve = (points: readonly (readonly [t: number, x: number])[], doubt?: number[]) => ({
  id: 'c',
  name: 'c',
  t: Float64Array.from(points, ([t]) => t),
  x: Float64Array.from(points, ([, x]) => x),
  doubt: doubt && Uint8Array.from(doubt),
});
/** One second a pixel, one unit a pixel, upside down from 100. */
const sx = scale(0, 100, 0, 100);
const sy = (x: number) => 100 - x;

describe('a curve as paths', () => {
  it('is a line where readings stand apart, parted at a gap', () => {
    const { line, band } = curvePath(
      curve([
        [0, 0],
        [10, 20],
        [20, NaN],
        [30, 5],
        [40, 6],
      ]),
      sx,
      sy,
    );
    expect(line).toBe('M0,100L10,80M30,95L40,94');
    expect(band).toBe('');
  });

  it('is a band where readings share a column of pixels: from the least to the greatest, as thick as the line', () => {
    // Two columns of two pixels with three readings each; 0.8 px is half the line.
    const noisy = curve([
      [0, 10],
      [0.6, 30],
      [1.2, 20],
      [2, 20],
      [2.6, 40],
      [3.2, 15],
    ]);
    const { line, band } = curvePath(noisy, sx, sy);
    expect(line).toBe('');
    expect(band).toBe('M0,69.2H2L2,59.2H4L4,85.8H2L2,90.8H0Z');
  });

  it('a step between two columns stays joined', () => {
    const step = curve([
      [0, 10],
      [1, 10],
      [2, 50],
      [3, 50],
    ]);
    // Both reach to the middle of the step, 30.
    expect(curvePath(step, sx, sy).band).toBe('M0,69.2H2L2,49.2H4L4,70.8H2L2,90.8H0Z');
  });

  it('a band, a lone reading and a band are joined by lines', () => {
    const mixed = curve([
      [0, 10],
      [1, 12],
      [11, 40],
      [20, 10],
      [21, 12],
    ]);
    const { line, band } = curvePath(mixed, sx, sy);
    expect(line).toBe('M1,88L11,60L20,90');
    expect(band.match(/Z/g)).toHaveLength(2);
  });

  it('the band is cut as the stroke is dashed', () => {
    const flat = curve(Array.from({ length: 40 }, (_, k) => [k / 2, 10 + (k % 2)] as const));
    // Four pixels drawn, four left out, over twenty pixels.
    const { band } = curvePath(flat, sx, sy, '4 4');
    expect(band.match(/M(\d+),/g)).toEqual(['M0,', 'M8,', 'M16,']);
  });

  it('every reading is inside what is drawn', () => {
    const points = Array.from(
      { length: 300 },
      (_, k) => [k / 3, 50 + 40 * Math.sin(k * k)] as const,
    );
    const { band } = curvePath(curve(points), sx, sy);
    const ys = [...band.matchAll(/[\d.]+,([\d.]+)/g)].map((match) => Number(match[1]));
    const highest = Math.min(...points.map(([, x]) => sy(x)));
    const lowest = Math.max(...points.map(([, x]) => sy(x)));
    expect(Math.min(...ys)).toBeLessThanOrEqual(highest);
    expect(Math.max(...ys)).toBeGreaterThanOrEqual(lowest);
  });
});

describe('crosses', () => {
  it('stand at doubtful readings, at the edge where those are off the plot, one where several fall together', () => {
    const { wild } = DOUBT;
    const text = crossPath(
      curve(
        [
          [10, 50],
          [11, 51],
          [50, 500],
          [80, 20],
        ],
        [wild, wild, wild, 0],
      ),
      sx,
      sy,
      [0, 100],
    );
    expect(text.match(/M/g)).toHaveLength(4);
    expect(text).toContain('M46,0l8,8');
  });
});

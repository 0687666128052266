import { describe, expect, it } from 'vitest';
import { crossPath } from '$lib/kit/timePlot/path';
import {
  clockText,
  extentOf,
  nearestTo,
  scale,
  timeTicks,
  valueTicks,
} from '$lib/kit/timePlot/scale';
import { DOUBT, type TimeCurve } from '$lib/kit/timePlot/types';
import { moved, zoomed } from '$lib/kit/timePlot/zoom';

const curve = (t: number[], x: number[], doubt?: number[]): TimeCurve => ({
  id: 'a',
  name: 'A',
  t: Float64Array.from(t),
  x: Float64Array.from(x),
  ...(doubt && { doubt: Uint8Array.from(doubt) }),
});

describe('scales', () => {
  it('go there and back', () => {
    const s = scale(10, 20, 50, 250);
    expect(s.at(15)).toBe(150);
    expect(s.back(s.at(12.5))).toBe(12.5);
  });
  it('ticks are whole minutes where minutes are what fits', () => {
    expect(timeTicks({ from: 0, to: 600 }, 10)).toEqual([
      0, 60, 120, 180, 240, 300, 360, 420, 480, 540, 600,
    ]);
    expect(timeTicks({ from: 0.1, to: 0.5 }, 4)).toEqual([0.1, 0.2, 0.3, 0.4, 0.5]);
  });
  it('values tick by one, two or five', () => {
    expect(valueTicks(0, 9, 4)).toEqual([0, 5]);
    expect(valueTicks(-1, 1, 4)).toEqual([-1, -0.5, 0, 0.5, 1]);
    expect(valueTicks(3, 3, 4)).toEqual([]);
  });
  it('time is told as a clock does', () => {
    expect(clockText(59.96)).toBe('1:00');
    expect(clockText(59.96, true)).toBe('1:00.0');
    expect(clockText(3725)).toBe('1:02:05');
  });
});

describe('curves', () => {
  it('a wild reading does not press the others flat', () => {
    const wild = curve([0, 1, 2], [10, 500, 12], [0, DOUBT.wild, 0]);
    const [low, high] = extentOf([wild], { from: 0, to: 2 });
    expect(low).toBeGreaterThan(9);
    expect(high).toBeLessThan(13);
    // It is marked all the same, inside the plot.
    const sy = scale(low, high, 100, 0);
    const [y] = /,(-?[\d.]+)l/
      .exec(crossPath(wild, scale(0, 2, 0, 100), sy.at, [0, 100]))!
      .slice(1);
    expect(Number(y)).toBeGreaterThanOrEqual(0);
  });
  it('the nearest reading is found, at the ends too', () => {
    const c = curve([0, 1, 5], [1, 2, 3]);
    expect([-1, 0.4, 0.6, 2.9, 3.1, 9].map((t) => nearestTo(c, t))).toEqual([0, 0, 1, 1, 2, 2]);
    expect(nearestTo(curve([], []), 1)).toBe(-1);
  });
});

describe('views', () => {
  it('zoom about a time and never leave the whole', () => {
    expect(zoomed({ from: 0, to: 100 }, 100, 0.5, 0)).toEqual({ from: 0, to: 50 });
    expect(zoomed({ from: 40, to: 60 }, 100, 100)).toEqual({ from: 0, to: 100 });
    const close = zoomed({ from: 40, to: 41 }, 100, 0.01, 40.5);
    expect(close.to - close.from).toBeCloseTo(0.5);
  });
  it('move and stop at the ends', () => {
    expect(moved({ from: 80, to: 100 }, 100, 0.5)).toEqual({ from: 80, to: 100 });
    expect(moved({ from: 20, to: 40 }, 100, -0.5)).toEqual({ from: 10, to: 30 });
  });
});

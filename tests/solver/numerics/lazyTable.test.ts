import { describe, expect, it } from 'vitest';
import { LazyTable } from '$lib/solver/numerics/lazyTable';

const out = new Float64Array(2);

describe('lazy table', () => {
  it('reproduces polynomials of degree four to rounding', () => {
    const f = (x: number) => 3 - x + 0.5 * x ** 2 - 0.02 * x ** 3 + 0.001 * x ** 4;
    const table = new LazyTable((x, o) => (o[0] = f(x)), 1, -5, 20, 4, 1e-12);
    for (let x = -5; x <= 20; x += 0.37) {
      table.at(x, out);
      expect(Math.abs(out[0]! - f(x))).toBeLessThan(1e-11 * 200);
    }
  });

  it('keeps the tolerance everywhere, not only where it checks', () => {
    const f = (x: number, o: Float64Array) => {
      o[0] = Math.exp(0.05 * x);
      o[1] = 1e6 / (2 + Math.tanh((x - 31) / 2)); // a sharp bend
    };
    const table = new LazyTable(f, 2, 0, 100, 12, 1e-7);
    const truth = new Float64Array(2);
    let worst = 0;
    for (let x = 0; x <= 100; x += 0.0137) {
      table.at(x, out);
      f(x, truth);
      for (const i of [0, 1]) worst = Math.max(worst, Math.abs(out[i]! / truth[i]! - 1));
    }
    expect(table.worst).toBeLessThanOrEqual(1e-7);
    // The end of a series only tells the size of what lies beyond: it may be a little larger.
    expect(worst).toBeLessThan(4e-7);
  });

  it('asks for the function only where it is used', () => {
    const table = new LazyTable((x, o) => (o[0] = Math.sin(x / 50)), 1, 0, 1000, 10, 1e-6);
    for (let x = 500; x < 509; x += 0.1) table.at(x, out);
    expect(table.calls).toBeLessThanOrEqual(9);
  });

  it('holds its end values beyond the ends', () => {
    const table = new LazyTable((x, o) => (o[0] = x), 1, 0, 10, 3, 1e-9);
    table.at(-4, out);
    expect(out[0]).toBeCloseTo(0, 12);
    table.at(99, out);
    expect(out[0]).toBeCloseTo(10, 12);
  });

  it('says how far off it is where the function jumps', () => {
    const table = new LazyTable((x, o) => (o[0] = x < 3.3 ? 1 : 2), 1, 0, 10, 10, 1e-9);
    table.at(3.3, out);
    expect(table.worst).toBeGreaterThan(0.01);
  });
});

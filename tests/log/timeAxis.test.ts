import { describe, expect, it } from 'vitest';
import { LogError } from '$lib/log/errors';
import { timeAxis } from '$lib/log/timeAxis';

const steady = (n: number, step: number, from = 0) =>
  Float64Array.from({ length: n }, (_, k) => from + k * step);
const codes = ({ notes }: ReturnType<typeof timeAxis>) => notes.map(({ code }) => code);

describe('time', () => {
  it('begins at 0 and keeps its pace', () => {
    const axis = timeAxis(steady(50, 0.1, 1234.5), 'number');
    expect(axis.t[0]).toBe(0);
    expect(axis.t[49]).toBeCloseTo(4.9, 9);
    expect(axis.step).toBeCloseTo(0.1, 9);
    expect(axis.breaks).toEqual([]);
  });

  it('tells a gap and keeps its length', () => {
    const t = steady(50, 1).map((s) => (s >= 30 ? s + 60 : s));
    const axis = timeAxis(t, 'number');
    expect(axis.breaks).toEqual([{ kind: 'gap', row: 30, by: 61 }]);
    expect(axis.t[30]! - axis.t[29]!).toBe(61);
  });

  it('goes on at its pace where the clock was set back or far ahead', () => {
    const back = timeAxis(
      steady(50, 1, 40000).map((s, k) => (k >= 20 ? s - 3600 : s)),
      'clock',
    );
    expect(back.breaks.map(({ kind }) => kind)).toEqual(['clock-back']);
    const ahead = timeAxis(
      steady(50, 1, 40000).map((s, k) => (k >= 20 ? s + 7200 : s)),
      'date',
    );
    expect(ahead.breaks.map(({ kind }) => kind)).toEqual(['clock-ahead']);
    for (const { t } of [back, ahead]) expect(t[49]).toBe(49);
    expect(back.notes[0]!.message).toMatch(/^The clock was set back once;/);
  });

  it('runs past midnight', () => {
    const axis = timeAxis(
      steady(50, 1, 86380).map((s) => s % 86400),
      'clock',
    );
    expect(codes(axis)).toEqual(['midnight']);
    expect(axis.t[49]).toBe(49);
  });

  it('spreads rows that share one time: 10 a second written in whole seconds', () => {
    const axis = timeAxis(
      steady(100, 0.1).map((s) => Math.floor(s + 1e-9)),
      'number',
    );
    expect(codes(axis)).toEqual(['shared-times']);
    axis.t.forEach((s, k) => expect(s).toBeCloseTo(0.1 * k, 6));
    for (let k = 1; k < 100; k++) expect(axis.t[k]!).toBeGreaterThan(axis.t[k - 1]!);
  });

  it('leaves out rows without a time', () => {
    const axis = timeAxis(
      steady(20, 1).map((s, k) => (k === 7 ? NaN : s)),
      'number',
    );
    expect(axis.rows.includes(7)).toBe(false);
    expect(axis.t[7]).toBe(8);
    expect(codes(axis)).toEqual(['rows-without-time']);
    expect(axis.notes[0]!.message).toBe('1 row has no time and is left out.');
  });
});

describe('no time', () => {
  const code = (values: Float64Array) => {
    try {
      timeAxis(values, 'number');
    } catch (error) {
      return (error as LogError).code;
    }
    return null;
  };
  it.each([
    ['running backwards', 'time-backwards', steady(50, -1)],
    ['back and forth', 'time-backwards', steady(50, 1).map((s, k) => (k % 3 ? s : 0))],
    ['standing', 'no-time', steady(50, 0)],
    ['empty', 'no-time', steady(50, NaN)],
  ])('%s: %s', (_name, expected, values) => expect(code(values)).toBe(expected));
});

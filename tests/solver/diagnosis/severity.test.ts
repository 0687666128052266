import { describe, expect, it } from 'vitest';
import { faultGrid } from '$lib/solver/diagnosis/grid';
import { rank } from '$lib/solver/diagnosis/rank';
import { plusMinusOf, plusMinusRead, severityCurve } from '$lib/solver/diagnosis/severity';
import { exampleLoop } from '../loop/example';
import { CONDITIONS } from './simulate';

const grid = faultGrid(exampleLoop, CONDITIONS);
const causes = rank(grid, [], CONDITIONS).causes;
const of = (id: string) => causes.find(({ fault }) => fault?.id === id)!;

describe('how bad a fault is', { timeout: 30_000 }, () => {
  it('a ± is two standard deviations', () => {
    expect(plusMinusRead({ sigma: 0.35 })).toBe(0.7);
    expect(plusMinusOf({ ...of('supply-drop'), severity: { mean: 0.3, sigma: 0.05 } })).toBe(0.1);
  });

  it('is nothing where a fault has no degrees', () => {
    expect(plusMinusOf(of('no-supply'))).toBe(0);
    expect(severityCurve(of('no-supply'))).toHaveLength(1);
  });

  it('with nothing read every degree is as likely: a flat curve over the whole range', () => {
    const cause = of('supply-drop');
    const { from, to } = cause.fault!.severity!;
    const curve = severityCurve(cause);
    const shares = curve.map(([, share]) => share);
    expect(shares.reduce((a, b) => a + b, 0)).toBeCloseTo(1, 12);
    for (const share of shares) expect(share).toBeCloseTo(1 / curve.length, 12);
    for (const [x] of curve) expect(x > from && x < to).toBe(true);
    // A uniform law over a range has the standard deviation (to - from) / sqrt(12); by midpoints of n
    // parts it is that times sqrt(1 - 1/n²).
    const n = curve.length;
    const sigma = ((to - from) / Math.sqrt(12)) * Math.sqrt(1 - 1 / (n * n));
    expect(plusMinusOf(cause)).toBeCloseTo(2 * sigma, 10);
    expect(cause.severity!.mean).toBeCloseTo((from + to) / 2, 10);
  });

  it('a sharp reading leaves a narrow curve, its peak at what was read', () => {
    const volts = grid.find(({ fault }) => fault.id === 'supply-drop')!.shown[18]!;
    const read = {
      channel: 'volts',
      place: 'cruise',
      value: volts.duty.cruise.volts,
      sigma: 0.05,
    } as const;
    const after = rank(grid, [read], CONDITIONS).causes.find(
      ({ fault }) => fault?.id === 'supply-drop',
    )!;
    const curve = severityCurve(after);
    const peak = curve.reduce((a, b) => (b[1] > a[1] ? b : a));
    expect(peak[0]).toBe(volts.severity);
    expect(plusMinusOf(after)).toBeLessThan(0.5 * plusMinusOf(of('supply-drop')));
  });
});

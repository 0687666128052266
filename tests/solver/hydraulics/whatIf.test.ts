import { describe, expect, it } from 'vitest';
import { coolantProperties } from '../../../src/lib/solver/fluids/coolant';
import { hydraulicModel } from '../../../src/lib/solver/hydraulics/operatingPoint';
import { fittingK } from '../../../src/lib/solver/hydraulics/hose';
import {
  flowAgainstBore,
  flowAtVolts,
  flowByDash,
  pumpChoiceCurves,
  pumpChoices,
  withBore,
} from '../../../src/lib/solver/hydraulics/whatIf';
import type { Hose, Loop } from '../../../src/lib/solver/loop/types';
import { exampleLoop, fahrenheit, foot, gpm, halfAndHalf, inch, parabola } from './exampleLoop';

const liquid = coolantProperties(halfAndHalf, fahrenheit(120));
const none: Hose = {
  bore: 0.05,
  length: 0,
  roughness: 0,
  bends: 0,
  bendK: 0,
  otherK: 0,
  fittingBore: 0,
};
/** 20 ft, eight bends of K 0.75, entrance and exit; cores 3 and 1.5 psi at 8 gal/min. */
const twelve: Loop = {
  ...exampleLoop,
  hoses: {
    suction: none,
    delivery: {
      bore: 0.75 * inch,
      length: 20 * foot,
      roughness: 1.5e-6,
      bends: 8,
      bendK: 0.75,
      otherK: 1.5,
      fittingBore: 0,
    },
    transfer: none,
    back: none,
  },
  pump: { ...exampleLoop.pump, curve: parabola(16 * foot, 11 * gpm) },
};
const within = (got: number, want: number, rel: number) =>
  expect(Math.abs(got / want - 1), `${got} against ${want}`).toBeLessThanOrEqual(rel);

// Source: independent computation in Python of the trade question "what will the pump really flow?",
// the medium pump on −10, −12 and −16 hose; 2 %, as it says for results that rest on properties.
describe('every run at one bore', () => {
  it('is the flow of that hose', () => {
    const bores = [0.625, 0.75, 1].map((b) => b * inch);
    const flows = flowAgainstBore(twelve, liquid, bores, 'in-proportion');
    expect(flows.map(([bore]) => bore)).toEqual(bores);
    [5.11, 6.1, 6.98].forEach((flow, i) => within(flows[i]![1] / gpm, flow, 0.02));
  });

  it('keeps the ratio of the fittings, or the fittings themselves', () => {
    const wide = 1.5 * inch;
    const grown = withBore(exampleLoop, wide, 'in-proportion').hoses.back;
    const kept = withBore(exampleLoop, wide, 'kept').hoses.back;
    // One ratio of bores, one loss coefficient on the hose.
    within(fittingK(grown), fittingK(exampleLoop.hoses.back), 1e-12);
    expect(kept.fittingBore).toBe(exampleLoop.hoses.back.fittingBore);
    expect(fittingK(kept)).toBeGreaterThan(fittingK(grown));
  });

  it('a run without fittings stays without', () =>
    expect(withBore(twelve, inch, 'in-proportion').hoses.delivery.fittingBore).toBe(0));

  it('flow never falls as the bore grows with its fittings', () => {
    const bores = Array.from({ length: 20 }, (_, i) => (0.3 + 0.08 * i) * inch);
    const flows = flowAgainstBore(exampleLoop, liquid, bores, 'in-proportion').map(([, q]) => q);
    flows.slice(1).forEach((q, i) => expect(q).toBeGreaterThan(flows[i]!));
  });
});

// Sizes: sixteenths of bore by definition; −12 of a replaced tube is 5/8 in (from memory). Flows as above.
it('a dash size is two hoses: −12 by one convention flows as −10 by the other', () => {
  const rows = flowByDash(twelve, liquid);
  const flow = (dash: number, convention: string) =>
    rows.find((r) => r.dash === dash && r.convention === convention)!;
  within(flow(12, 'hose-bore').flow / gpm, 6.1, 0.02);
  within(flow(12, 'tube-replaced').flow / gpm, 5.11, 0.02);
  expect(flow(12, 'tube-replaced').bore).toBeCloseTo(flow(10, 'hose-bore').bore, 12);
});

// Source: as above, "two medium: series 7.62, parallel 7.03"; hence +25 % and +15 %.
describe('a second pump', () => {
  const [one, series, parallel] = pumpChoices(twelve, liquid);
  it('does not double the flow', () => {
    within(one!.flow / gpm, 6.1, 0.02);
    within(series!.flow / gpm, 7.62, 0.02);
    within(parallel!.flow / gpm, 7.03, 0.02);
    expect(one!.gain).toBe(0);
    expect(series!.gain).toBeCloseTo(0.25, 2);
    expect(parallel!.gain).toBeCloseTo(0.15, 2);
  });
  it('is counted from one pump, whatever is fitted', () => {
    const two: Loop = { ...twelve, pump: { ...twelve.pump, arrangement: 'two-in-series' } };
    expect(pumpChoices(two, liquid)).toEqual(pumpChoices(twelve, liquid));
  });
  it('stands where its head is that of the loop', () => {
    const model = hydraulicModel(twelve);
    for (const { flow, head } of pumpChoices(twelve, liquid)) {
      within(head, model.systemHead(flow, liquid), 1e-9);
    }
  });
  // Affinity of two alike: heads add in series, flows add in parallel.
  it('in series doubles the head, in parallel the free flow', () => {
    const [curve, inSeries, inParallel] = pumpChoiceCurves(twelve, liquid);
    expect(inSeries!.points[0]![1]).toBeCloseTo(2 * curve!.points[0]![1], 12);
    expect(inParallel!.points[0]![1]).toBeCloseTo(curve!.points[0]![1], 12);
    expect(inParallel!.points.at(-1)![0]).toBeCloseTo(2 * curve!.points.at(-1)![0], 12);
  });
  it('has no gain to tell where one pump moves nothing', () => {
    const dead: Loop = { ...twelve, pump: { ...twelve.pump, volts: 0 } };
    expect(pumpChoices(dead, liquid).map((c) => c.gain)).toEqual([null, null, null]);
  });
});

// Source: as above, "medium at 12/11/9 V: 5.38/4.90/3.96".
it.each([
  [12, 5.38],
  [11, 4.9],
  [9, 3.96],
])('at %d V the pump flows %d gal/min', (volts, flow) =>
  within(flowAtVolts(twelve, liquid, volts) / gpm, flow, 0.02),
);

import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { effectiveness } from '$lib/solver/cores/effectiveness';
import { InvalidInputError } from '$lib/solver/errors';
import { inletConductance } from '$lib/solver/loop/identify/shares';
import { simulator } from '$lib/solver/loop/identify/simulate';
import { PLUMBED, type Drive, type RingModel } from '$lib/solver/loop/identify/types';
import { lumpedRamp, lumpedTemperature } from '$lib/solver/loop/lumped';
import { RING, TRUE, drive } from './synthetic';

const rows = (n: number, value: number) => new Float64Array(n).fill(value);

// Source: tests/reference/values/transient-loop.json, exact stepping by scipy's matrix exponential.
describe('four masses against the reference histories', () => {
  interface ReferenceCase {
    id: string;
    op: string;
    inputs: Record<string, number> & { t: number[] };
    expected: Record<string, number[]>;
  }
  const path = join(import.meta.dirname, '../../../reference/values/transient-loop.json');
  const { cases } = JSON.parse(readFileSync(path, 'utf8')) as { cases: ReferenceCase[] };

  it.each(cases.map((c) => [c.id, c] as const))('%s', (_id, { op, inputs: q, expected }) => {
    const air = op === 'loop-4-node-air';
    // Rows at the steps of the load and at the times asked; each row's values hold to the next.
    const edges = [0, q.t_on!, q.t_off!, ...q.t].filter((t) => t <= Math.max(...q.t));
    const t = Float64Array.from([...new Set(edges)].sort((a, b) => a - b));
    const loaded = t.map((s) => (s >= q.t_on! && s < q.t_off! ? 1 : 0));
    const of: Drive = {
      t,
      between: 'held',
      ambient: rows(t.length, q.T_ambient!),
      ...(air
        ? {
            chargeAirIn: loaded.map((on) => (on ? q.T_air_hot_on! : q.T_air_hot_off!)),
            chargeAirRate: rows(t.length, q.air_capacity_rate!),
            frontAirRate: rows(t.length, q.C_min_front!),
          }
        : { heat: loaded.map((on) => on * q.Q!) }),
    };
    const model: RingModel = air
      ? { ...RING, charge: { by: 'effectiveness' }, front: { by: 'effectiveness' } }
      : RING;
    const got = simulator(
      model,
      of,
    )({
      ...TRUE,
      frontUA: q.UA_front ?? 0,
      chargeShare: q.effectiveness_charge ?? 0,
      frontShare: q.effectiveness_front ?? 0,
      capacityRate: q.liquid_capacity_rate!,
      pumpHeat: q.pump_heat!,
      chargeCapacity: q.C1!,
      reservoirCapacity: q.C2!,
      pumpCapacity: q.C3!,
      frontCapacity: q.C4!,
      chargeStart: q.T1_0!,
      reservoirStart: q.T2_0!,
      pumpStart: q.T3_0!,
      frontStart: q.T4_0!,
    });
    const check = (column: Float64Array, key: string) =>
      q.t.forEach((s, i) =>
        // Printed to ten digits.
        expect(Math.abs(column[t.indexOf(s)]! - expected[key]![i]!)).toBeLessThan(2e-7),
      );
    check(got.charge, 'T1');
    check(got.reservoir, 'T2');
    check(got.pump, 'T3');
    check(got.front, 'T4');
    if (air) check(got.chargeAirOut, 'T_charge_out');
  });
});

describe('one mass by itself, no flow', () => {
  const still = { ...TRUE, capacityRate: 0, pumpHeat: 0, frontStart: 330 };

  it('follows an ambient that changes evenly: closed form of a ramp', () => {
    const t = Float64Array.of(0, 40, 90, 200);
    const of: Drive = {
      t,
      between: 'linear',
      ambient: t.map((s) => 300 + 0.05 * s),
      heat: rows(4, 0),
    };
    const { front } = simulator(RING, of)(still);
    const mass = { C: 12000, G: 650, Q: 0, T_surroundings: 300, T0: 330 };
    t.forEach((s, k) => expect(front[k]!).toBeCloseTo(lumpedRamp(mass, { rate: 0.05, t: s }), 9));
  });

  it('holds a row’s ambient to the next row where told so', () => {
    const of: Drive = {
      t: Float64Array.of(0, 100),
      between: 'held',
      ambient: Float64Array.of(300, 350),
      heat: rows(2, 0),
    };
    const mass = { C: 12000, G: 650, Q: 0, T_surroundings: 300, T0: 330 };
    expect(simulator(RING, of)(still).front[1]!).toBeCloseTo(lumpedTemperature(mass, 100), 9);
  });
});

describe('both cores by UA', () => {
  const model: RingModel = {
    order: PLUMBED,
    charge: { by: 'UA', arrangement: 'crossflow-both-unmixed' },
    front: { by: 'UA', arrangement: 'crossflow-both-unmixed' },
  };
  const n = 40;
  const of: Drive = {
    t: Float64Array.from({ length: n }, (_, k) => 200 * k),
    between: 'held',
    ambient: rows(n, 303),
    chargeAirIn: rows(n, 400),
    chargeAirRate: rows(n, 250),
    frontAirRate: rows(n, 1800),
  };

  it('settle where ε C_min between the inlets balances on both sides', () => {
    const { charge, reservoir, pump, front, chargeAirOut } = simulator(model, of)(TRUE);
    const last = n - 1;
    const C = TRUE.capacityRate;
    const share = (UA: number, air: number) => {
      const least = Math.min(air, C);
      const Cr = least / Math.max(air, C);
      return least * effectiveness({ arrangement: 'crossflow-both-unmixed', NTU: UA / least, Cr });
    };
    const into = share(TRUE.chargeUA, 250) * (400 - pump[last]!);
    const out = share(TRUE.frontUA, 1800) * (charge[last]! - 303);
    expect(into + TRUE.pumpHeat).toBeCloseTo(out, 5);
    expect(C * (charge[last]! - pump[last]!)).toBeCloseTo(into, 5);
    expect(C * (charge[last]! - front[last]!)).toBeCloseTo(out, 5);
    expect(reservoir[last]!).toBeCloseTo(front[last]!, 8);
    expect(250 * (400 - chargeAirOut[last]!)).toBeCloseTo(into, 5);
  });
});

describe('a flow that was logged', () => {
  it('row by row is one run after another, each with its own flow', () => {
    const whole = drive(200);
    const liquidRate = whole.t.map((s) => (s < 100 ? 2800 : 900));
    const logged = simulator(RING, { ...whole, liquidRate })(TRUE);
    const first = simulator(RING, whole)(TRUE);
    const rest = (a: Float64Array) => a.slice(100);
    const second = simulator(RING, {
      ...whole,
      t: rest(whole.t),
      ambient: rest(whole.ambient),
      heat: rest(whole.heat!),
    })({
      ...TRUE,
      capacityRate: 900,
      chargeStart: first.charge[100]!,
      reservoirStart: first.reservoir[100]!,
      pumpStart: first.pump[100]!,
      frontStart: first.front[100]!,
    });
    expect(logged.charge[100]!).toBe(first.charge[100]!);
    expect(logged.charge[200]!).toBeCloseTo(second.charge[100]!, 10);
    expect(logged.front[200]!).toBeCloseTo(second.front[100]!, 10);
  });
});

describe('a core with its air mixed', () => {
  // Which stream is the smaller decides which of the two relations holds.
  it.each([
    ['air smaller', 400, 'crossflow-cmin-mixed'],
    ['liquid smaller', 4000, 'crossflow-cmax-mixed'],
  ] as const)('%s', (_name, air, arrangement) => {
    const least = Math.min(air, 2800);
    const Cr = least / Math.max(air, 2800);
    const exact = least * effectiveness({ arrangement, NTU: 900 / least, Cr });
    expect(inletConductance('crossflow-air-mixed')(900, air, 2800)).toBe(exact);
  });
});

describe('refusals', () => {
  const refused = (change: Partial<Drive>) => () => simulator(RING, { ...drive(10), ...change });
  it.each([
    ['one row', { t: Float64Array.of(0) }],
    ['time that stands', { t: Float64Array.of(...Array(11).fill(0)) }],
    ['no heat', { heat: undefined }],
    ['heat of another length', { heat: rows(5, 0) }],
    ['a gap in what drives the loop', { ambient: rows(11, NaN) }],
  ])('%s', (_name, change) => expect(refused(change)).toThrow(InvalidInputError));
});

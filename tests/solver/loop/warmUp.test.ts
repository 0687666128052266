import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { InvalidInputError } from '$lib/solver/errors';
import {
  coefficients,
  COEFFICIENTS,
  forcingOf,
  splitAtMetal,
  TABLE_RTOL,
} from '$lib/solver/loop/forcing';
import { prepareLoop } from '$lib/solver/loop/prepare';
import { steady } from '$lib/solver/loop/steady';
import { thermalMass, totalCapacity } from '$lib/solver/loop/thermalMass';
import type { Loop, Segment, TransientState, WarmUpRequest } from '$lib/solver/loop/types';
import { coldState, settledState, warmUp } from '$lib/solver/loop/warmUp';
import { arbitraryDuty, arbitraryLoop } from './arbitrary';
import { exampleLoop, speedDensityLoop, stoppedLoop } from './example';

const bothOrders = (loop: Loop): Loop[] => [loop, { ...loop, liquidOrder: 'front-first' }];

const DUTIES = ['traffic', 'cruise', 'pull'] as const;
const NODES = [
  'reservoir',
  'chargeLiquid',
  'chargeMetal',
  'frontLiquid',
  'frontMetal',
] as const satisfies (keyof TransientState)[];

const request = (
  schedule: readonly Segment[],
  start: TransientState,
  rest: Partial<WarmUpRequest> = {},
): WarmUpRequest => ({ schedule, start, chargeLimit: 345, recoveryBand: 2, ...rest });

const DRIVE: readonly Segment[] = [
  { duty: 'cruise', duration: 300 },
  { duty: 'pull', duration: 12 },
  { duty: 'cruise', duration: 120 },
  { duty: 'pull', duration: 12 },
  { duty: 'traffic', duration: 300 },
  { duty: 'cruise', duration: 600 },
];

describe('ends where the steady solution lies', () => {
  it.each(DUTIES)('the example, from cold, in %s: within 1e-3 K at every place', (duty) => {
    for (const loop of [exampleLoop, speedDensityLoop].flatMap(bothOrders)) {
      const s = steady(loop, duty);
      const w = warmUp(loop, request([{ duty, duration: 3600 * 4 }], coldState(loop)));
      expect(w.status).toBe('completed');
      expect(Math.abs(w.end.reservoir - s.temperatures.reservoir)).toBeLessThan(1e-3);
      expect(Math.abs(w.end.chargeLiquid - s.temperatures.chargeCoolerOut)).toBeLessThan(1e-3);
      expect(Math.abs(w.end.frontLiquid - s.temperatures.frontOut)).toBeLessThan(1e-3);
      expect(Math.abs(w.history.chargeOut.at(-1)! - s.chargeOut!)).toBeLessThan(1e-3);
      expect(Math.abs(w.history.heatOut.at(-1)! - s.front.heat)).toBeLessThan(1);
    }
  });

  it('random loops started settled do not move', () => {
    let tried = 0;
    fc.assert(
      fc.property(arbitraryLoop, arbitraryDuty, (loop, duty) => {
        const prepared = prepareLoop(loop);
        const { status } = steady(prepared, duty);
        fc.pre(status === 'balanced' || status === 'no-flow');
        const start = settledState(prepared, duty);
        const w = warmUp(prepared, request([{ duty, duration: 600 }], start));
        // Water standing cold or a tank at the edge of boiling may stop it at once: nothing to compare.
        fc.pre(w.status === 'completed');
        tried++;
        for (const node of NODES) expect(Math.abs(w.end[node] - start[node])).toBeLessThan(1e-3);
        expect(w.energyError).toBeLessThan(1e-6);
      }),
      { numRuns: 200, seed: 21, endOnFailure: true },
    );
    expect(tried).toBeGreaterThan(150);
  }, 120_000);

  it('the size of the reservoir moves the time it takes, not the end', () => {
    const sized = (liquidVolume: number): Loop => ({
      ...exampleLoop,
      reservoir: { ...exampleLoop.reservoir, liquidVolume, totalVolume: 0.03 },
    });
    const run = (loop: Loop, duration: number) =>
      warmUp(loop, request([{ duty: 'pull', duration }], coldState(loop))).end.reservoir;
    const [small, large] = [sized(3e-3), sized(12e-3)];
    expect(run(small, 40) - run(large, 40)).toBeGreaterThan(5);
    expect(Math.abs(run(small, 1e4) - run(large, 1e4))).toBeLessThan(1e-3);
  });

  it('heat stated outright for a segment ends at the steady state of that heat', () => {
    const heat = 9000;
    const stated: Loop = {
      ...exampleLoop,
      duties: {
        ...exampleLoop.duties,
        pull: { ...exampleLoop.duties.pull, air: { by: 'heat', heat } },
      },
    };
    const w = warmUp(
      exampleLoop,
      request([{ duty: 'pull', duration: 1e4, heat }], coldState(exampleLoop)),
    );
    const { reservoir } = steady(stated, 'pull').temperatures;
    expect(Math.abs(w.end.reservoir - reservoir)).toBeLessThan(1e-3);
    expect(w.history.chargeOut.every(Number.isNaN)).toBe(true);
    expect(w.peakCharge).toBeNull();
    expect(w.timeToLimit).toBeNull();
  });
});

describe('conservation and accuracy', () => {
  const start = settledState(exampleLoop, 'cruise');

  it.each([
    ['example', exampleLoop],
    ['speed and density', speedDensityLoop],
    ['pump stopped', stoppedLoop],
  ])('%s: heat in less heat out is stored, to 1e-6', (_name, loop) => {
    expect(warmUp(loop, request(DRIVE, settledState(loop, 'cruise'))).energyError).toBeLessThan(
      1e-6,
    );
  });

  it('heat history, added up by the trapezium rule, agrees with what is stored', () => {
    const {
      history: h,
      end,
      thermalMass: parts,
    } = warmUp(exampleLoop, request([{ duty: 'pull', duration: 300 }], coldState(exampleLoop)));
    let net = 0;
    for (let i = 1; i < h.t.length; i++) {
      const mean = h.heatIn[i]! - h.heatOut[i]! + h.heatIn[i - 1]! - h.heatOut[i - 1]!;
      net += (mean / 2) * (h.t[i]! - h.t[i - 1]!);
    }
    // All parts end within the loop's spread of temperatures, so the mean rise is bracketed.
    const rises = NODES.map((node) => end[node] - exampleLoop.site.ambientTemperature);
    const mean = net / totalCapacity(parts);
    expect(mean).toBeGreaterThan(Math.min(...rises));
    expect(mean).toBeLessThan(Math.max(...rises));
  });

  it('rtol 1e-6 is within 5 mK of rtol 1e-10', () => {
    const coarse = warmUp(exampleLoop, request(DRIVE, start));
    const fine = warmUp(exampleLoop, request(DRIVE, start, { rtol: 1e-10 }));
    for (const node of NODES) {
      expect(Math.abs(coarse.end[node] - fine.end[node])).toBeLessThan(5e-3);
      coarse.history[node].forEach((T, i) =>
        expect(Math.abs(T - fine.history[node][i]!)).toBeLessThan(5e-3),
      );
    }
    expect(Math.abs(coarse.peakCharge!.value - fine.peakCharge!.value)).toBeLessThan(5e-3);
    expect(Math.abs(coarse.peakReservoir.value - fine.peakReservoir.value)).toBeLessThan(5e-3);
    expect(Math.abs(coarse.timeToLimit! - fine.timeToLimit!)).toBeLessThan(0.01);
    expect(Math.abs(coarse.recoveryTime! - fine.recoveryTime!)).toBeLessThan(0.5);
  });

  it('the table agrees with direct values between its nodes', () => {
    const prepared = prepareLoop(speedDensityLoop);
    const { table, duty } = forcingOf(prepared)({ duty: 'pull', duration: 1 });
    const got = new Float64Array(COEFFICIENTS);
    const direct = new Float64Array(COEFFICIENTS);
    for (let T = prepared.coldest; T <= prepared.hottest; T += 0.777) {
      table.at(T, got);
      coefficients(prepared, duty, duty.vehicleSpeed, T, direct);
      direct.forEach((value, i) =>
        expect(Math.abs(got[i]! - value)).toBeLessThanOrEqual(10 * TABLE_RTOL * Math.abs(value)),
      );
    }
  });

  it('a core split at its metal keeps its conductance, and the air never leaves colder than the metal', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1e-6, max: 0.999999, noNaN: true }),
        fc.double({ min: 1, max: 2000, noNaN: true }),
        (share, airSide) => {
          const G = share * airSide;
          const { air, liquid } = splitAtMetal(G, airSide);
          expect(air).toBeGreaterThan(0);
          expect(liquid).toBeGreaterThan(0);
          expect(1 / (1 / air + 1 / liquid)).toBeCloseTo(G, 6);
          expect(air).toBeLessThanOrEqual(airSide * 1.0011);
        },
      ),
    );
  });
});

describe('what is read off', () => {
  const start = settledState(exampleLoop, 'cruise');
  const w = warmUp(exampleLoop, request(DRIVE, start));

  it('peaks are at least every point of the history and lie in it', () => {
    const { t, chargeOut, reservoir } = w.history;
    expect(w.peakCharge!.value).toBeGreaterThanOrEqual(Math.max(...chargeOut));
    expect(w.peakReservoir.value).toBeGreaterThanOrEqual(Math.max(...reservoir));
    expect(w.peakCharge!.value - Math.max(...chargeOut)).toBeLessThan(0.5);
    expect(w.peakReservoir.value - Math.max(...reservoir)).toBeLessThan(0.1);
    // The charge is hottest at the end of the second pull, the tank a while after.
    expect(w.peakCharge!.t).toBeCloseTo(444, 3);
    expect(w.peakReservoir.t).toBeGreaterThan(444);
    expect(t[0]).toBe(0);
    expect(t.at(-1)).toBe(1344);
  });

  it('both sides of every edge are in the history', () => {
    for (const edge of [300, 312, 432, 444, 744]) {
      expect([...w.history.t].filter((t) => t === edge)).toHaveLength(2);
    }
    expect(w.segmentStarts).toEqual([0, 300, 312, 432, 444, 744]);
  });

  it('the limit is passed when the history says so', () => {
    const { t, chargeOut } = w.history;
    const index = chargeOut.findIndex((T) => T > 345);
    expect(w.timeToLimit!).toBeGreaterThan(t[index - 1]!);
    expect(w.timeToLimit!).toBeLessThanOrEqual(t[index]!);
    const never = warmUp(exampleLoop, request(DRIVE, start, { chargeLimit: 500 }));
    expect(never.timeToLimit).toBeNull();
    const always = warmUp(exampleLoop, request(DRIVE, start, { chargeLimit: 250 }));
    expect(always.timeToLimit).toBe(0);
  });

  it('recovery ends where the tank comes back into the band', () => {
    const one = warmUp(
      exampleLoop,
      request(
        [
          { duty: 'cruise', duration: 60 },
          { duty: 'pull', duration: 15 },
          { duty: 'cruise', duration: 900 },
        ],
        start,
      ),
    );
    const { t, reservoir } = one.history;
    const back = 75 + one.recoveryTime!;
    const at = t.findIndex((time) => time >= back);
    expect(reservoir[at]!).toBeLessThanOrEqual(start.reservoir + 2 + 0.05);
    expect(reservoir[at - 2]!).toBeGreaterThan(start.reservoir + 2 - 0.05);
    const wide = warmUp(exampleLoop, request(DRIVE, start, { recoveryBand: 50 }));
    expect(wide.recoveryTime).toBe(0);
    const short = warmUp(exampleLoop, request(DRIVE.slice(0, 2), start));
    expect(short.recoveryTime).toBeNull();
  });
});

describe('stops where the liquid stops being one', () => {
  it('boils at the time the hottest liquid reaches the boiling point', () => {
    const sealed: Loop = { ...exampleLoop, fans: { ...exampleLoop.fans, volts: 0 } };
    const w = warmUp(
      sealed,
      request([{ duty: 'traffic', duration: 3600, heat: 20e3 }], coldState(sealed)),
    );
    expect(w.status).toBe('boils');
    expect(w.endTime).toBeLessThan(3600);
    const boiling = steady(sealed, 'cruise').margins.boilingPoint;
    expect(w.end.chargeLiquid).toBeCloseTo(boiling, 6);
    expect(w.history.t.at(-1)).toBe(w.endTime);
    // 20 kW against about 50 kJ/K and no way out but soak.
    const rise = boiling - sealed.site.ambientTemperature;
    const least = (totalCapacity(w.thermalMass) * rise) / 20e3;
    expect(w.endTime).toBeGreaterThan(0.7 * least);
    expect(w.endTime).toBeLessThan(1.2 * least);
  });

  it('freezes, at once when it starts frozen', () => {
    const water: Loop = { ...exampleLoop, coolant: { kind: 'water', massFraction: 0 } };
    const w = warmUp(water, request(DRIVE, coldState(water, 260)));
    expect(w.status).toBe('freezes');
    expect(w.endTime).toBe(0);
    expect(w.history.t).toHaveLength(1);
    expect(w.peakReservoir.value).toBe(260);
  });

  it('with the pump stopped the charge cooler boils in a long pull while the tank stays put', () => {
    const w = warmUp(
      stoppedLoop,
      request([{ duty: 'pull', duration: 3600 }], coldState(stoppedLoop)),
    );
    expect(w.status).toBe('boils');
    expect(w.end.chargeLiquid - stoppedLoop.site.ambientTemperature).toBeGreaterThan(60);
    expect(w.end.reservoir - stoppedLoop.site.ambientTemperature).toBeLessThan(2);
  });

  it('refuses a schedule or start that cannot be', () => {
    const start = coldState(exampleLoop);
    expect(() => warmUp(exampleLoop, request([], start))).toThrow(InvalidInputError);
    expect(() => warmUp(exampleLoop, request([{ duty: 'pull', duration: 0 }], start))).toThrow(
      InvalidInputError,
    );
    expect(() => warmUp(exampleLoop, request(DRIVE, { ...start, reservoir: NaN }))).toThrow(
      InvalidInputError,
    );
  });
});

describe('thermal mass', () => {
  it('parts add up, liquid by density times specific heat times volume', () => {
    const parts = thermalMass(exampleLoop, 320);
    const liquid = parts.reduce((sum, p) => sum + p.liquidVolume, 0);
    const { reservoir, chargeCooler, frontExchanger, hoses } = exampleLoop;
    // Volume of a cylinder.
    const inHoses = Object.values(hoses).reduce(
      (sum, { bore, length }) => sum + Math.PI * (bore / 2) ** 2 * length,
      0,
    );
    expect(liquid).toBeCloseTo(
      reservoir.liquidVolume + chargeCooler.liquidVolume + frontExchanger.liquidVolume + inHoses,
      12,
    );
    const metal = parts.filter((p) => p.liquidVolume === 0).reduce((sum, p) => sum + p.capacity, 0);
    expect(metal).toBe(
      reservoir.metalCapacity + chargeCooler.metalCapacity + frontExchanger.metalCapacity,
    );
  });
});

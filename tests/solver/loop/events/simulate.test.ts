import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { prepareLoop } from '$lib/solver/loop/prepare';
import { simulate } from '$lib/solver/loop/events/simulate';
import type { EventRequest } from '$lib/solver/loop/events/types';
import { settledState, coldState, warmUp } from '$lib/solver/loop/warmUp';
import type { Segment } from '$lib/solver/loop/types';
import { arbitraryLoop } from '../arbitrary';
import { exampleLoop, speedDensityLoop, stoppedLoop } from '../example';
import { arbitraryDrive } from './arbitrary';

const NODES = ['reservoir', 'chargeLiquid', 'chargeMetal', 'frontLiquid', 'frontMetal'] as const;

const DRIVE: readonly Segment[] = [
  { duty: 'cruise', duration: 300 },
  { duty: 'pull', duration: 12 },
  { duty: 'traffic', duration: 300 },
  { duty: 'pull', duration: 12 },
  { duty: 'cruise', duration: 300 },
];

describe('without features it is the warm-up', () => {
  it.each([
    ['example', exampleLoop],
    ['speed and density', speedDensityLoop],
    ['pump stopped', stoppedLoop],
  ])('%s: every temperature, heat and peak within 1e-6 of it', (_name, loop) => {
    const start = coldState(loop);
    const w = warmUp(loop, { schedule: DRIVE, start, chargeLimit: 400, recoveryBand: 2 });
    const s = simulate(loop, { schedule: DRIVE, start });
    expect(s.status).toBe(w.status);
    for (const node of NODES) expect(Math.abs(s.end[node] / w.end[node] - 1)).toBeLessThan(1e-6);
    expect(Math.abs(s.ledger.heatIn / w.heatIn - 1)).toBeLessThan(1e-6);
    expect(Math.abs(s.ledger.heatOut / w.heatOut - 1)).toBeLessThan(1e-6);
    expect(Math.abs(s.peakCharge!.value / w.peakCharge!.value - 1)).toBeLessThan(1e-6);
    expect(Math.abs(s.peakReservoir.value / w.peakReservoir.value - 1)).toBeLessThan(1e-6);
    expect(s.events.map(({ t }) => t)).toEqual([...w.segmentStarts]);
  });

  it('random loops, random schedules: the same end, the same status', () => {
    let tried = 0;
    fc.assert(
      fc.property(arbitraryLoop, arbitraryDrive, (loop, drive) => {
        const { schedule, start } = drive(loop);
        const prepared = prepareLoop(loop);
        const w = warmUp(prepared, { schedule, start, chargeLimit: 400, recoveryBand: 2 });
        const s = simulate(prepared, { schedule, start });
        expect(s.status).toBe(w.status);
        expect(Math.abs(s.endTime - w.endTime)).toBeLessThan(1e-2 + 1e-4 * w.endTime);
        if (w.status !== 'completed') return;
        tried++;
        for (const node of NODES) {
          expect(Math.abs(s.end[node] / w.end[node] - 1)).toBeLessThan(1e-6);
        }
      }),
      { numRuns: 60, seed: 7, endOnFailure: true },
    );
    expect(tried).toBeGreaterThan(20);
  }, 120_000);
});

describe('heat', () => {
  it('closes to 1e-6, latent heat counted, for random loops with any features together', () => {
    const seen = new Set<string>();
    fc.assert(
      fc.property(arbitraryLoop, arbitraryDrive, (loop, drive) => {
        const s = simulate(loop, drive(loop));
        expect(s.ledger.relative).toBeLessThan(1e-6);
        s.events.forEach(({ kind }) => seen.add(kind));
        seen.add(s.status);
        // Times never fall, and every history is a number where it must be.
        s.history.t.forEach((t, i) => expect(t).toBeGreaterThanOrEqual(s.history.t[i - 1] ?? 0));
        for (const node of NODES) expect(s.history[node].every(Number.isFinite)).toBe(true);
      }),
      { numRuns: 250, seed: 11, endOnFailure: true },
    );
    // The search is worth something only if it met what it is about.
    for (const kind of [
      'breaker-trips',
      'breaker-closes',
      'prime-lost',
      'pump-primed',
      'fans-on',
      'fans-off',
      'ice-gone',
      'boiling-begins',
      'completed',
    ]) {
      expect(seen).toContain(kind);
    }
  }, 240_000);

  it('by parts adds up to what went in', () => {
    const request: EventRequest = {
      schedule: DRIVE,
      start: coldState(exampleLoop),
      hoseDelay: { cells: 2 },
      boiling: true,
    };
    const { ledger: l } = simulate(exampleLoop, request);
    expect(l.hoses).toBeGreaterThan(0);
    const sum = l.heatOut + l.sensible + l.hoses + l.melting + l.steam;
    expect(Math.abs(sum / l.heatIn - 1)).toBeLessThan(1e-6);
  });
});

describe('tolerance', () => {
  it('moments at rtol 1e-6 lie within a millisecond of those at 1e-10', () => {
    const request: EventRequest = {
      schedule: DRIVE,
      start: coldState(exampleLoop),
      cavitation: 'counted',
      boiling: true,
      breaker: {
        breaker: {
          rating: 8,
          referenceTemperature: 298.15,
          lossPerKelvin: 0.003,
          timeConstant: 60,
          reset: 'automatic',
          resetState: 0.6,
        },
      },
      thermostat: { sensor: 'frontOut', onAt: 311, offAt: 309 },
      underhood: { timeConstant: 200, liquidGain: 0.3, inletShare: 0.4 },
      hoseDelay: { cells: 2 },
    };
    const coarse = simulate(exampleLoop, request);
    const fine = simulate(exampleLoop, { ...request, rtol: 1e-10 });
    expect(coarse.events.map(({ kind }) => kind)).toEqual(fine.events.map(({ kind }) => kind));
    expect(coarse.events.some(({ kind }) => kind === 'fans-on')).toBe(true);
    expect(coarse.trips).toBeGreaterThan(5);
    coarse.events.forEach(({ t }, i) => expect(Math.abs(t - fine.events[i]!.t)).toBeLessThan(1e-3));
    for (const node of NODES) {
      expect(Math.abs(coarse.end[node] - fine.end[node])).toBeLessThan(5e-3);
    }
  });

  it('settled loops do not move, hoses followed or not', () => {
    for (const cells of [0, 1, 3]) {
      const start = settledState(exampleLoop, 'cruise');
      const s = simulate(exampleLoop, {
        schedule: [{ duty: 'cruise', duration: 1200 }],
        start,
        ...(cells > 0 ? { hoseDelay: { cells } } : {}),
      });
      for (const node of NODES) expect(Math.abs(s.end[node] - start[node])).toBeLessThan(2e-3);
    }
  });
});

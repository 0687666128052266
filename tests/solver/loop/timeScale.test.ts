import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { lumpedTemperature, timeConstant } from '$lib/solver/loop/lumped';
import { goRound } from '$lib/solver/loop/balance';
import { prepareLoop } from '$lib/solver/loop/prepare';
import { roundAt } from '$lib/solver/loop/roundAt';
import { steady } from '$lib/solver/loop/steady';
import {
  approachInTime,
  restoringSum,
  integrationGap,
  peakRise,
  timeConstantFormula,
} from '$lib/solver/loop/timeFormulas';
import { restoring } from '$lib/solver/loop/timeScale';
import { exampleLoop, stoppedLoop } from './example';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

describe('the lines compute what the solver computes', () => {
  it('time constant and approach in time', () => {
    fc.assert(
      fc.property(
        between(1e3, 1e6),
        between(1, 1e3),
        between(-2e4, 2e4),
        between(280, 380),
        between(0, 1e4),
        (C, G, Q, T0, t) => {
          const T_surroundings = 305;
          const tau = timeConstantFormula.value({ C, G });
          expect(tau).toBeCloseTo(timeConstant({ C, G }), 9);
          const T_end = T_surroundings + Q / G;
          expect(approachInTime.value({ T_end, T_0: T0, t, tau })).toBeCloseTo(
            lumpedTemperature({ C, G, Q, T_surroundings, T0 }, t),
            6,
          );
        },
      ),
    );
  });
  it('differences keep their sign', () => {
    expect(peakRise.value({ T_peak: 320.5, T_before: 300 })).toBe(20.5);
    expect(integrationGap.value({ T_int: 300, T_closed: 301.5 })).toBe(-1.5);
  });
});

describe('what brings a loop back', () => {
  const prepared = prepareLoop(exampleLoop);

  // From the balance itself: the slope of the residual is that sum, less what a hotter place hands on to
  // the next within one round, which makes the slope the smaller of the two.
  it.each(['traffic', 'cruise', 'pull'] as const)('bounds the slope of the balance: %s', (id) => {
    const T = steady(prepared, id).temperatures.pumpIn;
    const G = restoring(prepared, id, T)!;
    const sum = restoringSum.value({
      G_f: G.front,
      G_c: G.charge,
      G_e: G.engine,
      G_h: G.hose,
      G_t: G.reservoir,
    });
    const duty = prepared.loop.duties[id];
    const { round } = roundAt(prepared, duty, prepared.airAt(duty.vehicleSpeed), T);
    const slope = goRound(round, T).residual - goRound(round, T + 1).residual;
    expect(slope).toBeGreaterThan(0);
    expect(slope).toBeLessThanOrEqual(sum);
    // Each place takes at most its share G/C of the change before it.
    const parts = Object.values(G) as number[];
    expect(slope).toBeGreaterThan(sum * parts.reduce((p, g) => p * (1 - g / (round.C + g)), 1));
  });

  it('charge heat stated outright does not answer to the liquid', () => {
    const cruise = { ...exampleLoop.duties.cruise, air: { by: 'heat', heat: 500 } as const };
    const stated = { ...exampleLoop, duties: { ...exampleLoop.duties, cruise } };
    expect(restoring(stated, 'cruise', 315)!.charge).toBe(0);
  });

  it('does not exist where the liquid stands still', () => {
    expect(restoring(stoppedLoop, 'cruise', 315)).toBeNull();
  });
});

/** The loop with other cores over a share of the front exchanger's face. */
import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { airCp } from '../../../src/lib/solver/air/air';
import { frontExchange } from '../../../src/lib/solver/loop/front';
import { frontChanged } from '../../../src/lib/solver/loop/frontWhatIf';
import { prepareLoop } from '../../../src/lib/solver/loop/prepare';
import { coldState, settledState } from '../../../src/lib/solver/loop/states';
import { steady } from '../../../src/lib/solver/loop/steady';
import type { AirPath, Loop } from '../../../src/lib/solver/loop/types';
import { warmUp } from '../../../src/lib/solver/loop/warmUp';
import { exampleLoop } from './example';

const close = (got: number, want: number, rel: number) =>
  expect(Math.abs(got - want), `${got} against ${want}`).toBeLessThanOrEqual(rel * Math.abs(want));
const withAir = (airPath: Partial<AirPath>): Loop => ({
  ...exampleLoop,
  airPath: { ...exampleLoop.airPath, ...airPath },
});

describe('a front exchanger partly covered', () => {
  it('the limits are the model as it was, bit by bit', () => {
    const bare = withAir({ stackLoss: { points: [], exponent: 2 }, stackHeat: 0 });
    for (const duty of ['traffic', 'cruise', 'pull'] as const) {
      expect(steady(withAir({ stackShare: 1 }), duty)).toEqual(steady(exampleLoop, duty));
      expect(steady(withAir({ stackShare: 0 }), duty)).toEqual(steady(bare, duty));
    }
  });

  it('nears its limits without a step', () => {
    const T = (stackShare: number) =>
      steady(withAir({ stackShare }), 'traffic').temperatures.pumpIn;
    expect(Math.abs(T(1 - 1e-9) - T(1))).toBeLessThan(1e-6);
    const cold = (stackShare: number) =>
      steady(withAir({ stackShare, stackHeat: 0 }), 'traffic').temperatures.pumpIn;
    expect(Math.abs(cold(1e-7) - cold(0))).toBeLessThan(1e-4);
  });

  it('says so where the heat stated would make a sliver of air impossibly hot', () => {
    const s = steady(withAir({ stackShare: 0.02 }), 'traffic');
    expect(s.notes.map(({ code }) => code)).toContain('air.stack-rise-unlikely');
  });

  it('energy: parts add up to the whole, air and liquid agree, the loop closes', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.05, max: 0.95, noNaN: true }),
        fc.double({ min: 0, max: 5e3, noNaN: true }),
        fc.constantFrom('in-front' as const, 'behind' as const),
        fc.constantFrom('traffic' as const, 'cruise' as const),
        (stackShare, stackHeat, stackPlace, duty) => {
          const s = steady(withAir({ stackShare, stackHeat, stackPlace }), duty);
          expect(s.relativeResidual).toBeLessThan(1e-9);
          const { front } = s;
          expect(front.zones).toHaveLength(4);
          close(
            front.zones.reduce((sum, z) => sum + z.share, 0),
            1,
            1e-12,
          );
          const heat = front.zones.reduce((sum, z) => sum + z.heat, 0);
          expect(Math.abs(heat - front.heat)).toBeLessThan(1e-6 + 1e-9 * Math.abs(front.heat));
          const liquid = front.C_liquid * (front.liquidIn - front.liquidOut);
          expect(Math.abs(liquid - front.heat)).toBeLessThan(1e-6 * Math.abs(front.heat) + 1e-3);
          const air = front.C_air * (front.airOut - front.airIn);
          expect(Math.abs(air - front.heat)).toBeLessThan(1e-6 * Math.abs(front.heat) + 1e-3);
        },
      ),
      { numRuns: 40 },
    );
  });

  it('runs cooler the less is covered by the same cores giving the same heat', () => {
    const T = [1, 0.8, 0.6, 0.4, 0.2, 0].map(
      (stackShare) => steady(withAir({ stackShare }), 'traffic').temperatures.pumpIn,
    );
    for (let i = 1; i < T.length; i++) expect(T[i]).toBeLessThan(T[i - 1]!);
  });

  it('a condenser behind costs the same air and not its heat', () => {
    const front = steady(withAir({}), 'cruise');
    const behind = steady(withAir({ stackPlace: 'behind' }), 'cruise');
    expect(behind.air.meanFaceVelocity).toBe(front.air.meanFaceVelocity);
    expect(behind.temperatures.pumpIn).toBeLessThan(front.temperatures.pumpIn);
  });

  /**
   * Worked by hand: counterflow core with much liquid beside little air, so that each part's heat is
   * C_air (1 - exp(-UA/C_air)) (T_liquid - T_part) to first order; both parts alike but for their air.
   * Checked is the sum over the parts against heat and mean fresh air of the whole.
   */
  it('heat of the whole is that of the parts, each with its own air', () => {
    const prepared = prepareLoop(withAir({ stackShare: 0.5, stackHeat: 4e3, recirculation: 0 }));
    const air = prepared.airAt(15);
    const exchange = frontExchange(prepared, air, 1e-3, prepared.liquidAt(340));
    const T = 340;
    const byParts = exchange.zones.reduce(
      (sum, { core, freshAir }) =>
        sum + core.effectiveness * Math.min(core.C_air, core.C_liquid) * (T - freshAir),
      0,
    );
    close(exchange.conductance * (T - exchange.freshAir), byParts, 1e-12);
    const [covered, clear] = exchange.zones;
    const m = air.zones[0]!.parts![0].airMassFlow + air.zones[1]!.parts![0].airMassFlow;
    const cp = airCp(exampleLoop.site.ambientTemperature);
    close(covered!.freshAir - exampleLoop.site.ambientTemperature, 4e3 / (m * cp), 1e-12);
    expect(clear!.freshAir).toBe(exampleLoop.site.ambientTemperature);
  });

  it('what-ifs scale both parts', () => {
    const prepared = prepareLoop(withAir({ stackShare: 0.5 }));
    const s = steady(prepared, 'cruise');
    const now = frontChanged(prepared, s);
    close(now.conductance * (s.front.liquidIn - now.freshAir), s.front.heat, 1e-9);
    expect(frontChanged(prepared, s, { air: 1.1 }).conductance).toBeGreaterThan(now.conductance);
  });

  it('followed in time it stays where the balance lies', () => {
    const prepared = prepareLoop(withAir({ stackShare: 0.5 }));
    const s = steady(prepared, 'cruise');
    const start = settledState(prepared, 'cruise', s);
    const request = {
      chargeLimit: 340,
      recoveryBand: 2,
      schedule: [{ duty: 'cruise', duration: 1800 }],
    } as const;
    const stays = warmUp(prepared, { ...request, start });
    expect(Math.abs(stays.end.reservoir - s.temperatures.reservoir)).toBeLessThan(1e-3);
    expect(stays.energyError).toBeLessThan(1e-6);
    const comes = warmUp(prepared, {
      ...request,
      schedule: [{ duty: 'cruise', duration: 14400 }],
      start: coldState(prepared),
    });
    expect(Math.abs(comes.end.reservoir - s.temperatures.reservoir)).toBeLessThan(1e-3);
    expect(Math.abs(comes.history.heatOut.at(-1)! - s.front.heat)).toBeLessThan(1);
  });

  it('standing liquid rests between the airs of its parts', () => {
    const loop = withAir({ stackShare: 0.5 });
    const s = steady({ ...loop, pump: { ...loop.pump, volts: 0 } }, 'cruise');
    expect(s.status).toBe('no-flow');
    const ambient = loop.site.ambientTemperature;
    expect(s.temperatures.frontIn).toBeGreaterThan(ambient);
    expect(s.temperatures.frontIn).toBeLessThan(
      ambient + Math.max(...s.air.zones.map((z) => z.parts![0].rise)),
    );
  });
});

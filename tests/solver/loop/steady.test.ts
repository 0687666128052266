import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { prepareLoop } from '$lib/solver/loop/prepare';
import { steady } from '$lib/solver/loop/steady';
import type { Loop, SteadySolution } from '$lib/solver/loop/types';
import { arbitraryDuty, arbitraryLoop } from './arbitrary';
import { exampleLoop, speedDensityLoop, stoppedLoop } from './example';

const DUTIES = ['traffic', 'cruise', 'pull'] as const;
const LOOPS = {
  exampleLoop,
  speedDensityLoop,
  frontFirst: { ...exampleLoop, liquidOrder: 'front-first' } satisfies Loop,
  frontFirstByDensity: { ...speedDensityLoop, liquidOrder: 'front-first' } satisfies Loop,
};

const numbersIn = (value: unknown): number[] =>
  typeof value === 'number'
    ? [value]
    : value && typeof value === 'object'
      ? Object.values(value).flatMap(numbersIn)
      : [];

const sum = (ledger: SteadySolution['ledger']) => Object.values(ledger).reduce((a, b) => a + b, 0);

describe('conservation (first law)', () => {
  it.each(DUTIES)('the example balances in %s, and the ledger sums to its residual', (duty) => {
    for (const loop of Object.values(LOOPS)) {
      const s = steady(loop, duty);
      expect(s.status).toBe('balanced');
      expect(s.relativeResidual).toBeLessThanOrEqual(1e-9);
      expect(sum(s.ledger)).toBeCloseTo(s.residual, 12);
      expect(s.ledger.charge).toBeGreaterThan(0);
    }
  });

  it('each heat is what the liquid gains between its two places', () => {
    const s = steady(exampleLoop, 'pull');
    const { temperatures: T, ledger, liquid, operating } = s;
    const C = liquid.density * liquid.specificHeat * operating.flow;
    expect(C * (T.chargeCoolerIn - T.pumpIn)).toBeCloseTo(ledger.pump, 6);
    const cooler = ledger.charge + ledger.engineSoak;
    expect(C * (T.chargeCoolerOut - T.chargeCoolerIn)).toBeCloseTo(cooler, 6);
    expect(C * (T.frontIn - T.chargeCoolerOut)).toBeCloseTo(ledger.hoseSoak, 6);
    expect(C * (T.frontOut - T.frontIn)).toBeCloseTo(ledger.frontExchanger, 6);
    const through = 1 - exampleLoop.reservoir.shortCircuit;
    expect(through * C * (T.reservoir - T.frontOut)).toBeCloseTo(ledger.reservoirSoak, 6);
    const mixed = (1 - through) * T.frontOut + through * T.reservoir;
    expect(mixed).toBeCloseTo(T.pumpIn, 9);
  });

  it('each heat obeys its own law at the solution', () => {
    const s = steady(exampleLoop, 'traffic');
    const { soak, site, duties } = exampleLoop;
    const bay = site.ambientTemperature + duties.traffic.bayRise;
    const { temperatures: T, ledger } = s;
    const engine = soak.engineConductance * (soak.engineTemperature - T.chargeCoolerOut);
    expect(ledger.engineSoak).toBeCloseTo(engine, 6);
    expect(ledger.hoseSoak).toBeCloseTo(soak.hoseConductance * (bay - T.frontIn), 6);
    expect(ledger.reservoirSoak).toBeCloseTo(soak.reservoirConductance * (bay - T.reservoir), 6);
    const cooler = s.chargeCooler!;
    const most = Math.min(cooler.C_air, cooler.C_liquid) * (cooler.airIn - cooler.liquidIn);
    expect(cooler.heat).toBeCloseTo(cooler.effectiveness * most, 6);
    expect(cooler.C_air * (cooler.airIn - s.chargeOut!)).toBeCloseTo(cooler.heat, 6);
  });

  it('recirculated air: mean inlet is the mixture of fresh and outlet air, zone heats add up', () => {
    const oneZone: Loop = { ...exampleLoop, fans: { ...exampleLoop.fans, coverage: 1 } };
    const { front, air } = steady(oneZone, 'traffic');
    const fresh = exampleLoop.site.ambientTemperature + air.stackRise;
    const r = air.recirculation;
    expect(r).toBeGreaterThan(0.1);
    expect(front.airIn).toBeCloseTo((1 - r) * fresh + r * front.airOut, 9);
    expect(front.C_air * (front.airOut - front.airIn)).toBeCloseTo(front.heat, 6);
    const zone = front.zones[0]!;
    const most = Math.min(zone.C_air, zone.C_liquid) * (front.liquidIn - front.airIn);
    expect(front.heat).toBeCloseTo(zone.effectiveness * most, 6);
    const both = steady(exampleLoop, 'pull').front;
    expect(both.zones.reduce((total, z) => total + z.heat, 0)).toBeCloseTo(both.heat, 8);
  });

  it('by speed and density, the air flow agrees with the temperature the cooler leaves it at', () => {
    const s = steady(speedDensityLoop, 'pull');
    const { displacement, rotation, volumetricEfficiency } = speedDensityLoop.duties.pull
      .air as Extract<Loop['duties']['pull']['air'], { by: 'speed-density' }>;
    // R of dry air 287.05 J/(kg K), ISO 2533.
    const density = s.charge!.manifoldPressure / (287.05 * s.chargeOut!);
    const expected = (volumetricEfficiency * displacement * rotation * density) / 2;
    expect(Math.abs(s.charge!.massFlow / expected - 1)).toBeLessThan(2e-5); // last digit of R
  });
});

describe('any valid loop ends in one of the outcomes', () => {
  it('with finite numbers and, when balanced, a closed ledger', () => {
    const seen: Record<string, number> = {};
    fc.assert(
      fc.property(arbitraryLoop, arbitraryDuty, (loop, duty) => {
        const s = steady(loop, duty);
        seen[s.status] = (seen[s.status] ?? 0) + 1;
        expect(['balanced', 'boils', 'freezes', 'no-flow']).toContain(s.status);
        const { air, ...rest } = s;
        for (const n of numbersIn({ ...rest, notes: [] })) expect(Number.isFinite(n)).toBe(true);
        for (const n of numbersIn({ ...air, notes: [] })) expect(Number.isFinite(n)).toBe(true);
        const scale = Math.max(1, ...Object.values(s.ledger).map(Math.abs));
        expect(Math.abs(sum(s.ledger) - s.residual)).toBeLessThan(1e-9 * scale);
        if (s.status === 'balanced') {
          expect(s.relativeResidual).toBeLessThanOrEqual(1e-9);
          expect(s.margins.boiling).toBeGreaterThanOrEqual(0);
          expect(s.margins.freezing).toBeGreaterThanOrEqual(0);
        }
        if (s.status === 'freezes') expect(s.residual).toBeLessThan(0);
      }),
      { numRuns: 600, seed: 7, endOnFailure: true },
    );
    // The sample must reach more than the easy outcome, or it shows little.
    expect(seen.balanced).toBeGreaterThan(100);
    expect(seen.boils).toBeGreaterThan(5);
    expect(seen['no-flow']).toBeGreaterThan(5);
  }, 120_000);

  it('boils without any way out for the heat, and says how much is left', () => {
    const sealed: Loop = {
      ...exampleLoop,
      fans: { ...exampleLoop.fans, volts: 0 },
      soak: { ...exampleLoop.soak, hoseConductance: 0, reservoirConductance: 0 },
      duties: {
        ...exampleLoop.duties,
        traffic: { ...exampleLoop.duties.traffic, air: { by: 'heat', heat: 4000 } },
      },
    };
    const s = steady(sealed, 'traffic');
    expect(s.status).toBe('boils');
    expect(s.liquid.temperature).toBeCloseTo(s.margins.boilingPoint, 9);
    expect(s.residual).toBeGreaterThan(3500);
    expect(s.charge).toBeNull();
    expect(s.chargeOut).toBeNull();
    expect(s.notes.map(({ code }) => code)).toContain('loop.boils');
  });

  it('boils at the hottest place although the heats would balance', () => {
    const trickle: Loop = {
      ...exampleLoop,
      hoses: {
        ...exampleLoop.hoses,
        delivery: { ...exampleLoop.hoses.delivery, fittingBore: 0.0012 },
      },
    };
    const s = steady(trickle, 'pull');
    expect(s.status).toBe('boils');
    expect(s.relativeResidual).toBeLessThanOrEqual(1e-9);
    expect(s.margins.boiling).toBeLessThan(0);
  });

  it('freezes with water below freezing and little heat', () => {
    const arctic: Loop = {
      ...exampleLoop,
      coolant: { kind: 'water', massFraction: 0 },
      site: { ...exampleLoop.site, ambientTemperature: 253.15 },
      soak: { ...exampleLoop.soak, engineConductance: 0 },
    };
    const s = steady(arctic, 'cruise');
    expect(s.status).toBe('freezes');
    expect(s.liquid.temperature).toBe(273.15);
    expect(s.residual).toBeLessThan(0);
  });

  it('without circulation the charge stays hot and the tank does not know (trade: touch the tank)', () => {
    const cool: Loop = { ...stoppedLoop, soak: { ...stoppedLoop.soak, engineConductance: 0 } };
    const s = steady(cool, 'pull');
    expect(s.status).toBe('no-flow');
    expect(s.chargeOut! - s.charge!.compressorOutlet).toBeGreaterThan(-10);
    const bay = cool.site.ambientTemperature + cool.duties.pull.bayRise;
    expect(s.temperatures.reservoir).toBeCloseTo(bay, 9);
    expect(s.operating.flow).toBe(0);
  });

  it('a prepared loop gives the same answer as the loop', () => {
    const prepared = prepareLoop(exampleLoop);
    for (const duty of DUTIES) expect(steady(prepared, duty)).toEqual(steady(exampleLoop, duty));
  });
});

describe('directions (from the physics)', () => {
  /** Loops that settle before and after a change, and by how much the tank moved. */
  const moved = (loop: Loop, duty: (typeof DUTIES)[number], change: (loop: Loop) => Loop) => {
    const before = steady(loop, duty);
    const after = steady(change(loop), duty);
    return { before, after, by: after.temperatures.pumpIn - before.temperatures.pumpIn };
  };
  /** Both balance, and the front exchanger takes heat out: then better is colder. */
  const rejects = ({ before, after }: ReturnType<typeof moved>) =>
    before.status === 'balanced' &&
    after.status === 'balanced' &&
    before.ledger.frontExchanger < -1 &&
    after.ledger.frontExchanger < -1;

  it('more fan volts are never hotter at standstill', () => {
    fc.assert(
      fc.property(arbitraryLoop, fc.integer({ min: 8, max: 12 }), (loop, volts) => {
        const with_ = (v: number) => (l: Loop) => ({
          ...l,
          fans: { ...l.fans, count: 2, volts: v },
        });
        const m = moved(with_(volts)(loop), 'traffic', with_(volts + 1.5));
        fc.pre(rejects(m));
        expect(m.by).toBeLessThanOrEqual(1e-7);
      }),
      { numRuns: 300, seed: 11, endOnFailure: true },
    );
  }, 120_000);

  it('a cleaner front exchanger is never hotter', () => {
    fc.assert(
      fc.property(arbitraryLoop, arbitraryDuty, (loop, duty) => {
        const with_ = (cleanliness: number) => (l: Loop) => ({
          ...l,
          frontExchanger: { ...l.frontExchanger, cleanliness },
        });
        const m = moved(with_(0.6)(loop), duty, with_(1));
        fc.pre(rejects(m));
        expect(m.by).toBeLessThanOrEqual(1e-7);
      }),
      { numRuns: 300, seed: 12, endOnFailure: true },
    );
  }, 120_000);

  it('the size of the reservoir does not move the steady state at all', () => {
    const larger = (l: Loop) => ({ ...l, reservoir: { ...l.reservoir, liquidVolume: 0.02 } });
    for (const duty of DUTIES) expect(moved(exampleLoop, duty, larger).by).toBe(0);
  });

  it('a hotter day makes a hotter tank', () => {
    const hotter = (l: Loop): Loop => ({
      ...l,
      site: { ...l.site, ambientTemperature: l.site.ambientTemperature + 10 },
    });
    for (const duty of DUTIES) expect(moved(exampleLoop, duty, hotter).by).toBeGreaterThan(5);
  });

  it('at cruise the charge leaves within a few kelvin of the liquid (common practice: 95 to 99 %)', () => {
    const s = steady(exampleLoop, 'cruise');
    expect(s.chargeCooler!.effectiveness).toBeGreaterThan(0.95);
  });
});

/**
 * The other order of the cores in the liquid: front exchanger first, charge cooler second. Checked by
 * heat balances set up anew as linear equations and solved by mathjs, and by what the first law says.
 */
import fc from 'fast-check';
import { lusolve } from 'mathjs';
import { describe, expect, it } from 'vitest';
import { goRound, type Round } from '$lib/solver/loop/balance';
import { simulate } from '$lib/solver/loop/events/simulate';
import { coresInOrder } from '$lib/solver/loop/order';
import { prepareLoop } from '$lib/solver/loop/prepare';
import { steady } from '$lib/solver/loop/steady';
import { nodeCapacities, thermalMass, totalCapacity } from '$lib/solver/loop/thermalMass';
import type { Loop } from '$lib/solver/loop/types';
import { coldState, settledState, warmUp } from '$lib/solver/loop/warmUp';
import { exampleLoop } from './example';

const frontFirst: Loop = { ...exampleLoop, liquidOrder: 'front-first' };
const DUTIES = ['traffic', 'cruise', 'pull'] as const;

const within = (low: number, high: number) => fc.double({ min: low, max: high, noNaN: true });
const arbitraryRound: fc.Arbitrary<Round> = fc.record({
  C: within(200, 5000),
  pumpHeat: within(0, 300),
  chargeConductance: within(0, 400),
  chargeAirIn: within(290, 480),
  statedHeat: fc.constant(null),
  engineConductance: within(0, 20),
  engineTemperature: within(330, 390),
  hoseConductance: within(0, 20),
  reservoirConductance: within(0, 20),
  bayAir: within(290, 380),
  frontFirst: fc.constant(true),
  frontConductance: within(50, 1500),
  freshAir: within(260, 320),
  shortCircuit: within(0, 0.9),
});

/** Seven balances in seven temperatures, each place's own; order of flow, the reservoir last. */
function byLinearEquations(r: Round) {
  const { C, hoseConductance: G_h, engineConductance: G_e, reservoirConductance: G_r } = r;
  const through = (1 - r.shortCircuit) * C;
  //   outlet, delivered, front out, cooler in, behind core, cooler out, reservoir
  const A = [
    [-C, C, 0, 0, 0, 0, 0],
    [0, r.frontConductance - C, C, 0, 0, 0, 0],
    [0, 0, -C, C + G_h, 0, 0, 0],
    [0, 0, 0, r.chargeConductance - C, C, 0, 0],
    [0, 0, 0, 0, -C, C + G_e, 0],
    [0, 0, 0, 0, 0, -through, through + G_r],
    [1, 0, 0, 0, 0, -r.shortCircuit, r.shortCircuit - 1],
  ];
  const b = [
    r.pumpHeat,
    r.frontConductance * r.freshAir,
    G_h * r.bayAir,
    r.chargeConductance * r.chargeAirIn,
    G_e * r.engineTemperature,
    G_r * r.bayAir,
    0,
  ];
  const x = (lusolve(A, b) as number[][]).map(([value]) => value!);
  const [pumpIn, frontIn, frontOut, chargeCoolerIn, , chargeCoolerOut, reservoir] = x;
  return {
    ...{ pumpIn, frontIn, frontOut, chargeCoolerIn, chargeCoolerOut, reservoir },
    returning: chargeCoolerOut,
  };
}

describe('once round, front exchanger first', () => {
  it('is where seven heat balances meet that mathjs solves as linear equations', () => {
    fc.assert(
      fc.property(arbitraryRound, (r) => {
        const expected = byLinearEquations(r);
        const { temperatures, residual, heats } = goRound(r, expected.pumpIn!);
        const turnover = Object.values(heats).reduce((sum, q) => sum + Math.abs(q), 0);
        expect(Math.abs(residual)).toBeLessThan(1e-9 * Math.max(turnover, r.C));
        for (const place of Object.keys(temperatures) as (keyof typeof temperatures)[]) {
          expect(Math.abs(temperatures[place] - expected[place]!)).toBeLessThan(1e-8);
        }
      }),
      { numRuns: 300, seed: 3 },
    );
  });
  it('each heat is what the liquid gains between its two places', () => {
    const s = steady(frontFirst, 'pull');
    const { temperatures: T, ledger, liquid, operating } = s;
    const C = liquid.density * liquid.specificHeat * operating.flow;
    expect(C * (T.frontIn - T.pumpIn)).toBeCloseTo(ledger.pump, 6);
    expect(C * (T.frontOut - T.frontIn)).toBeCloseTo(ledger.frontExchanger, 6);
    expect(C * (T.chargeCoolerIn - T.frontOut)).toBeCloseTo(ledger.hoseSoak, 6);
    const cooler = ledger.charge + ledger.engineSoak;
    expect(C * (T.chargeCoolerOut - T.chargeCoolerIn)).toBeCloseTo(cooler, 6);
    expect(T.returning).toBe(T.chargeCoolerOut);
    const { shortCircuit } = exampleLoop.reservoir;
    expect((1 - shortCircuit) * C * (T.reservoir - T.returning)).toBeCloseTo(
      ledger.reservoirSoak,
      6,
    );
  });
});

describe('what the order moves, and what it does not (first law)', () => {
  it('with no other heat than the charge, the settled charge does not know the order; the tank does', () => {
    fc.assert(
      fc.property(arbitraryRound, (r) => {
        const bare = { ...r, pumpHeat: 0, engineConductance: 0, hoseConductance: 0 };
        const second = byLinearEquations({ ...bare, reservoirConductance: 0 });
        // The cooler first: its inlet is the front exchanger's outlet, by way of an idle reservoir.
        const first = goRound(
          { ...bare, reservoirConductance: 0, frontFirst: false },
          second.frontOut!,
        );
        expect(Math.abs(first.residual)).toBeLessThan(1e-6 * r.C);
        expect(first.temperatures.chargeCoolerIn).toBeCloseTo(second.chargeCoolerIn!, 8);
        expect(first.temperatures.reservoir).toBeCloseTo(second.frontOut!, 8);
        expect(second.reservoir).toBeCloseTo(second.chargeCoolerOut!, 8);
      }),
      { numRuns: 200, seed: 4 },
    );
  });
  it.each(DUTIES)('in %s the tank holds what leaves the cooler, so it is the hotter', (duty) => {
    const [now, other] = [steady(exampleLoop, duty), steady(frontFirst, duty)];
    expect(now.status).toBe('balanced');
    expect(other.status).toBe('balanced');
    expect(other.temperatures.reservoir).toBeGreaterThan(now.temperatures.reservoir);
    // What pump and tank take up is thrown off before it meets the charge.
    expect(other.chargeOut!).toBeLessThan(now.chargeOut!);
  });
});

describe('in time, front exchanger first', () => {
  it('holds the same heat per kelvin, the hoses counted with the cores they lead to', () => {
    const sum = Object.values(nodeCapacities(frontFirst)).reduce((a, b) => a + b, 0);
    expect(sum).toBeCloseTo(totalCapacity(thermalMass(frontFirst)), 6);
    const { hoses } = exampleLoop;
    const far = { ...hoses, delivery: { ...hoses.delivery, length: 3 * hoses.transfer.length } };
    const [a, b] = [exampleLoop, frontFirst].map((loop) => nodeCapacities({ ...loop, hoses: far }));
    expect(b!.frontLiquid).toBeGreaterThan(a!.frontLiquid);
    expect(b!.chargeLiquid).toBeLessThan(a!.chargeLiquid);
  });
  it.each(DUTIES)('with hoses followed cell by cell it ends where %s settles', (duty) => {
    const prepared = prepareLoop(frontFirst);
    const s = steady(prepared, duty);
    const run = simulate(prepared, {
      schedule: [{ duty, duration: 3600 * 4 }],
      start: coldState(prepared),
      hoseDelay: { cells: 3 },
    });
    expect(run.status).toBe('completed');
    const end = {
      reservoir: s.temperatures.reservoir,
      chargeLiquid: s.temperatures.chargeCoolerOut,
      frontLiquid: s.temperatures.frontOut,
    };
    for (const node of Object.keys(end) as (keyof typeof end)[]) {
      expect(Math.abs(run.end[node] - end[node])).toBeLessThan(2e-3);
    }
    expect(
      Math.abs(run.history.chargeCoolerIn.at(-1)! - s.temperatures.chargeCoolerIn),
    ).toBeLessThan(2e-3);
    expect(Math.abs(run.history.returning.at(-1)! - s.temperatures.returning)).toBeLessThan(2e-3);
  });
  it('a pull from the settled loop: the tank gets its heat undiminished, soon after', () => {
    const drive = [
      { duty: 'cruise', duration: 1 },
      { duty: 'pull', duration: 15 },
      { duty: 'cruise', duration: 120 },
    ] as const;
    const rise = (loop: Loop) => {
      const start = settledState(loop, 'cruise');
      const w = warmUp(loop, { schedule: drive, start, chargeLimit: 400, recoveryBand: 1 });
      return w.peakReservoir.value - start.reservoir;
    };
    expect(rise(frontFirst)).toBeGreaterThan(rise(exampleLoop));
  });
});

describe('parts by name', () => {
  it('stand in order of flow, in the list of heads as well', () => {
    expect(coresInOrder(frontFirst)).toEqual(['frontExchanger', 'chargeCooler']);
    const { shares } = steady(frontFirst, 'cruise').operating;
    const [first, second] = ['frontExchanger', 'chargeCooler'];
    expect(shares.map(({ part }) => part)).toEqual([
      'suction',
      'delivery',
      first,
      'transfer',
      second,
      'back',
    ]);
    const before = steady(exampleLoop, 'cruise').operating.shares;
    expect(before.map(({ part }) => part)).toEqual([
      'suction',
      'delivery',
      second,
      'transfer',
      first,
      'back',
    ]);
  });
});

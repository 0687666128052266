/**
 * The balance with knobs and feedbacks: held to the steady solver, to the first law, and to what any
 * loop must do (more fan is never hotter, and so on). No outside table exists for a whole loop.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { balanceAt, runawayModel } from '$lib/solver/loop/runaway/balanceAt';
import { edgeOf } from '$lib/solver/loop/runaway/branches';
import { continueCrossings } from '$lib/solver/loop/runaway/continueCrossings';
import { crossings } from '$lib/solver/loop/runaway/crossings';
import { KNOBS, KNOB_RANGE, NEUTRAL, type Feedbacks } from '$lib/solver/loop/runaway/types';
import { OutOfRangeError } from '$lib/solver/errors';
import { prepareLoop } from '$lib/solver/loop/prepare';
import { steady } from '$lib/solver/loop/steady';
import type { Loop } from '$lib/solver/loop/types';
import { arbitraryDuty, arbitraryLoop } from '../arbitrary';
import { exampleLoop } from '../example';

const OFF: Feedbacks = { suction: false, breaker: false, underhood: null };
const counted = (loop: Loop): Loop => ({ ...loop, pump: { ...loop.pump, cavitation: 'counted' } });
const DUTIES = ['traffic', 'cruise', 'pull'] as const;

/** Vented, short of suction head and short of front exchanger: multiple crossings live here. */
const marginal: Loop = {
  ...counted(exampleLoop),
  frontExchanger: { ...exampleLoop.frontExchanger, cleanliness: 0.01 },
  soak: { ...exampleLoop.soak, engineConductance: 32, engineTemperature: 376 },
  airPath: { ...exampleLoop.airPath, recirculation: 0.4 },
  pump: { ...exampleLoop.pump, cavitation: 'counted', npshRequired: 3 },
};

describe('with neutral knobs', () => {
  it('the crossing reached from cold is the steady solution, within 1e-6 K', () => {
    for (const loop of [exampleLoop, counted(exampleLoop), marginal]) {
      const prepared = prepareLoop(loop);
      for (const id of DUTIES) {
        const s = steady(prepared, id);
        const suction = loop.pump.cavitation === 'counted';
        const { fromCold } = crossings(
          balanceAt(prepared, loop.duties[id], {
            knobs: NEUTRAL,
            cap: 'as-found',
            feedbacks: { ...OFF, suction },
          }),
        );
        expect(s.residual).toBeLessThan(1e-3);
        expect(Math.abs(fromCold!.T - s.temperatures.pumpIn), `${id}`).toBeLessThan(1e-6);
        expect(fromCold!.leaving).toBeCloseTo(s.front.heat, 4);
        expect(fromCold!.drop).toBeCloseTo(s.temperatures.frontIn - s.temperatures.frontOut, 6);
        if (s.chargeOut !== null) expect(fromCold!.chargeOut).toBeCloseTo(s.chargeOut, 5);
      }
    }
  });

  it('so it is for any loop that settles; else there is none', () => {
    fc.assert(
      fc.property(arbitraryLoop, arbitraryDuty, (loop, id) => {
        const prepared = prepareLoop(loop);
        const s = steady(prepared, id);
        const what = { knobs: NEUTRAL, cap: 'as-found', feedbacks: OFF } as const;
        const { fromCold, all } = crossings(balanceAt(prepared, loop.duties[id], what));
        if (s.notes.some(({ code }) => code === 'balance-loose')) return;
        const meets = Math.abs(s.residual) < 1e-3 && s.status !== 'no-flow';
        if (!meets)
          return void expect(s.status === 'no-flow' ? all : fromCold === null).toEqual(
            s.status === 'no-flow' ? [] : true,
          );
        expect(all.map(({ T }) => Math.abs(T - s.temperatures.pumpIn) < 1e-6)).toContain(true);
      }),
      { numRuns: 60 },
    );
  }, 60_000);
});

describe('crossings', () => {
  it('alternate between stable and unstable, each with both heats equal', () => {
    const found = crossings(
      balanceAt(prepareLoop(marginal), marginal.duties.traffic, {
        knobs: { ...NEUTRAL, ambientShift: 10 },
        cap: 'as-found',
        feedbacks: {
          suction: true,
          breaker: false,
          underhood: { liquidGain: 0.5, inletShare: 0.5 },
        },
      }),
    );
    found.all.forEach((c, i) => {
      expect(c.stable).toBe(i % 2 === 0);
      expect(Math.abs(c.left)).toBeLessThan(1e-6 * Math.max(1, Math.abs(c.leaving)));
      expect(c.stable).toBe(c.slopeOut > c.slopeIn);
    });
  });

  it('heats are the ledger’s sum, and leaving is G times liquid above ambient', () => {
    const balance = balanceAt(prepareLoop(exampleLoop), exampleLoop.duties.cruise, {
      knobs: { flow: 0.6, fan: 1.2, ambientShift: 7, load: 1.5 },
      cap: 'as-found',
      feedbacks: OFF,
    });
    const at = balance.at(340)!;
    const { frontExchanger, ...rest } = at.heats;
    expect(at.leaving).toBe(-frontExchanger);
    expect(at.entering).toBeCloseTo(
      Object.values(rest).reduce((a, b) => a + b, 0),
      8,
    );
    expect(at.conductance * (at.temperatures.frontIn - balance.ambient)).toBeCloseTo(at.leaving, 8);
  });
});

describe('knobs do what they say', () => {
  const prepared = prepareLoop(exampleLoop);
  const settlesAt = (id: (typeof DUTIES)[number], knobs: Partial<typeof NEUTRAL>) =>
    crossings(
      runawayModel(prepared, exampleLoop.duties[id], { cap: 'as-found', feedbacks: OFF }).with({
        ...NEUTRAL,
        ...knobs,
      }),
    ).fromCold?.T ?? Infinity;
  const inRange = ([low, high]: readonly [number, number]) =>
    fc.tuple(
      fc.double({ min: low, max: high, noNaN: true }),
      fc.double({ min: low, max: high, noNaN: true }),
    );

  it('a colder day is never hotter', () => {
    fc.assert(
      fc.property(inRange(KNOB_RANGE.ambientShift), fc.constantFrom(...DUTIES), ([a, b], id) => {
        expect(settlesAt(id, { ambientShift: Math.min(a, b) })).toBeLessThanOrEqual(
          settlesAt(id, { ambientShift: Math.max(a, b) }) + 1e-9,
        );
      }),
      { numRuns: 30 },
    );
  });

  // In air that hardly moves the stated heat of a condenser in front makes a fan of nearly nothing worse than none.
  it('more fan is never hotter at standstill, nothing hot standing in front', () => {
    const bare = {
      ...exampleLoop,
      airPath: { ...exampleLoop.airPath, stackHeat: 0 },
    };
    const model = runawayModel(prepareLoop(bare), bare.duties.traffic, {
      cap: 'as-found',
      feedbacks: OFF,
    });
    const at = (fan: number) => crossings(model.with({ ...NEUTRAL, fan })).fromCold?.T ?? Infinity;
    fc.assert(
      fc.property(inRange(KNOB_RANGE.fan), ([a, b]) => {
        expect(at(Math.max(a, b))).toBeLessThanOrEqual(at(Math.min(a, b)) + 1e-9);
      }),
      { numRuns: 30 },
    );
  });

  it('more stated heat is never cooler', () => {
    const duty = { ...exampleLoop.duties.cruise, air: { by: 'heat', heat: 3000 } } as const;
    const model = runawayModel(prepared, duty, { cap: 'as-found', feedbacks: OFF });
    const T = [0.2, 0.5, 1, 1.5].map(
      (load) => crossings(model.with({ ...NEUTRAL, load })).fromCold!.T,
    );
    expect(T).toEqual(T.toSorted((a, b) => a - b));
  });

  it('the flow knob multiplies the flow and leaves the drop times flow equal to heat', () => {
    const model = runawayModel(prepared, exampleLoop.duties.cruise, {
      cap: 'as-found',
      feedbacks: OFF,
    });
    const [full, half] = [1, 0.5].map((flow) => model.with({ ...NEUTRAL, flow }).at(330)!);
    expect(half!.flow / full!.flow).toBeCloseTo(0.5, 12);
    expect(half!.drop).toBeGreaterThan(full!.drop);
  });

  it('refuses what no slider reaches', () => {
    const model = runawayModel(prepared, exampleLoop.duties.cruise, {
      cap: 'as-found',
      feedbacks: OFF,
    });
    for (const knob of KNOBS) {
      for (const value of [KNOB_RANGE[knob][1] + 1, NaN]) {
        expect(() => model.with({ ...NEUTRAL, [knob]: value })).toThrow(OutOfRangeError);
      }
    }
  });
});

describe('feedbacks', () => {
  it('a warmer bay raises the settling temperature and flattens the slope that holds it', () => {
    const prepared = prepareLoop(exampleLoop);
    const at = (liquidGain: number) =>
      crossings(
        balanceAt(prepared, exampleLoop.duties.traffic, {
          knobs: NEUTRAL,
          cap: 'as-found',
          feedbacks: { ...OFF, underhood: { liquidGain, inletShare: 0.5 } },
        }),
      ).fromCold!;
    expect(at(0).T).toBeCloseTo(steady(prepared, 'traffic').temperatures.pumpIn, 6);
    expect(at(0.4).T).toBeGreaterThan(at(0).T);
    const hold = (c: ReturnType<typeof at>) => c.slopeOut - c.slopeIn;
    expect(hold(at(0.4))).toBeLessThan(hold(at(0)));
  });

  it('suction counted never moves more liquid than ignored', () => {
    const prepared = prepareLoop(exampleLoop);
    const of = (suction: boolean) =>
      balanceAt(prepared, exampleLoop.duties.traffic, {
        knobs: NEUTRAL,
        cap: 'open',
        feedbacks: { ...OFF, suction },
      });
    const [on, off] = [of(true), of(false)];
    for (let T = 300; T < on.hottest; T += 5) {
      expect(on.at(T)!.flow).toBeLessThanOrEqual(off.at(T)!.flow * (1 + 1e-9));
    }
    // Within a kelvin or two of boiling at the pump hardly anything is moved.
    expect(on.at(on.hottest - 0.5)!.flow).toBeLessThan(0.5 * off.at(on.hottest - 0.5)!.flow);
  });
});

describe('continuation of the crossings', () => {
  const feedbacks: Feedbacks = {
    suction: true,
    breaker: false,
    underhood: { liquidGain: 0.5, inletShare: 0.5 },
  };
  const model = runawayModel(prepareLoop(marginal), marginal.duties.traffic, {
    cap: 'as-found',
    feedbacks,
  });

  it('every point is a crossing, and stability changes at the folds only', () => {
    const branches = continueCrossings(model, NEUTRAL, 'ambientShift');
    expect(branches.length).toBeGreaterThan(0);
    for (const { points } of branches) {
      for (const { knob, T } of points) {
        const at = model.with({ ...NEUTRAL, ambientShift: knob }).at(T)!;
        // A table of flows within 1e-4 stands behind the branch.
        expect(Math.abs(at.left)).toBeLessThan(1e-2);
      }
    }
    const folds = branches.flatMap((b) => b.folds);
    expect(folds.length, 'this loop has a fold').toBeGreaterThan(0);
    for (const fold of folds) {
      const count = (shift: number) =>
        crossings(model.with({ ...NEUTRAL, ambientShift: shift }), 0.05).all.filter(
          ({ T }) => Math.abs(T - fold.T) < 4,
        ).length;
      const [below, above] = [count(fold.knob - 0.05), count(fold.knob + 0.05)];
      expect(Math.abs(below - above), `a pair is born or dies at ${fold.knob}`).toBe(2);
    }
  });

  it('the edge found on the branch is where the crossing from cold is lost', () => {
    const range = KNOB_RANGE.ambientShift;
    const branches = continueCrossings(model, NEUTRAL, 'ambientShift');
    const start = crossings(model.with({ ...NEUTRAL, ambientShift: range[0] })).fromCold!;
    const edge = edgeOf(branches, { knob: range[0], T: start.T }, 1, range)!;
    const { T } = crossings(model.with({ ...NEUTRAL, ambientShift: edge.knob - 0.1 })).fromCold!;
    const beyond = crossings(model.with({ ...NEUTRAL, ambientShift: edge.knob + 0.1 })).fromCold;
    if (edge.why === 'fold') expect(beyond === null || beyond.T - T > 0.3).toBe(true);
    else expect(beyond === null || beyond.boilingMargin < 0).toBe(true);
  });
});

import { describe, expect, it } from 'vitest';
import { InvalidInputError, OutOfRangeError } from '$lib/solver/errors';
import { breakerBehaviour, tripTime, type ThermalBreaker } from '$lib/solver/feed/breaker';
import { heatOfVaporisation } from '$lib/solver/fluids/vaporisation';
import { bands, eventPoints, happenings, teeth } from '$lib/solver/loop/events/plots';
import { simulate } from '$lib/solver/loop/events/simulate';
import { simulateIceWithAmbient } from '$lib/solver/loop/events/iceReference';
import type { EventKind, EventRequest, EventSolution } from '$lib/solver/loop/events/types';
import { hoseVolume } from '$lib/solver/hydraulics/hose';
import { prepareLoop } from '$lib/solver/loop/prepare';
import { nodeCapacities } from '$lib/solver/loop/thermalMass';
import { coldState, settledState } from '$lib/solver/loop/warmUp';
import type { Loop } from '$lib/solver/loop/types';
import { exampleLoop, stoppedLoop } from '../example';

const C = (celsius: number) => celsius + 273.15;
const times = ({ events }: EventSolution, kind: EventKind) =>
  events.filter((e) => e.kind === kind).map(({ t }) => t);
const cruise = (duration: number) => [{ duty: 'cruise' as const, duration }];
const settled = settledState(exampleLoop, 'cruise');
/** Value of a column as the time is reached, from before it. */
const at = (
  { history: h }: EventSolution,
  column: 'reservoir' | 'frontLiquid' | 'flow',
  t: number,
) => h[column][h.t.findIndex((time) => Math.abs(time - t) < 1e-12)]!;

const breaker: ThermalBreaker = {
  rating: 8,
  referenceTemperature: 298.15,
  lossPerKelvin: 0.003,
  timeConstant: 60,
  reset: 'automatic',
  resetState: 0.5,
};

describe('breaker', () => {
  const current = 9.4;
  const { ambientTemperature } = exampleLoop.site;

  // Closed form: feed/breaker, itself held to IEC 60255-149's curve.
  it('trips and closes as the closed form says, each moment to a millisecond', () => {
    const s = simulate(exampleLoop, {
      schedule: [...cruise(700), { duty: 'pull', duration: 12 }, ...cruise(800)],
      start: settled,
      breaker: { breaker, current, place: 'outside' },
    });
    const cycle = breakerBehaviour(breaker, current, ambientTemperature);
    if (cycle.kind !== 'cycles') return expect.fail('the breaker was to cycle');
    const trips = times(s, 'breaker-trips');
    const closes = times(s, 'breaker-closes');
    expect(trips.length).toBe(Math.floor((1512 - cycle.opensAfter) / cycle.period) + 1);
    trips.forEach((t, i) =>
      expect(Math.abs(t - cycle.opensAfter - i * cycle.period)).toBeLessThan(1e-3),
    );
    closes.forEach((t, i) =>
      expect(Math.abs(t - cycle.opensAfter - cycle.off - i * cycle.period)).toBeLessThan(1e-3),
    );
    const on = bands(s.history, 'pumpOn').reduce((sum, b) => sum + b.until - b.from, 0);
    expect(Math.abs(on - s.flowTime)).toBeLessThan(1e-6);
  });

  // Trade: square edges, repeating; reservoir flat, intake a sawtooth that climbs in seconds under load
  // (common practice).
  it('makes a sawtooth of the charge temperature and leaves the reservoir flat', () => {
    const s = simulate(exampleLoop, {
      schedule: [{ duty: 'pull', duration: 900 }],
      start: settledState(exampleLoop, 'pull'),
      breaker: { breaker, current, place: 'outside' },
    });
    const h = s.history;
    const peaks = teeth(h);
    expect(peaks.length).toBe(s.trips);
    expect(s.trips).toBeGreaterThan(4);
    times(s, 'breaker-trips').forEach((t, i) => {
      const trough = h.chargeOut[h.t.indexOf(t)]!;
      expect(peaks[i]![1]).toBeGreaterThan(trough + 20);
      // It climbs all the while the liquid stands, and within five seconds can be seen.
      const standing = eventPoints(h, 'chargeOut').filter(
        ([time], k) => time > t && time < (peaks[i]![0] ?? 0) && h.flow[k] === 0,
      );
      standing.slice(1).forEach(([, T], k) => expect(T).toBeGreaterThan(standing[k]![1]));
      const soon = standing.find(([time]) => time >= t + 5);
      if (soon) expect(soon[1]).toBeGreaterThan(trough + 3);
    });
    const run = Math.max(...h.reservoir) - Math.min(...h.reservoir);
    const swing = Math.max(...h.chargeOut) - Math.min(...h.chargeOut);
    expect(run).toBeLessThan(swing / 4);
  });

  it('in a warm bay trips sooner, as its derated rating says', () => {
    const hot: Loop = {
      ...exampleLoop,
      duties: { ...exampleLoop.duties, cruise: { ...exampleLoop.duties.cruise, bayRise: 45 } },
    };
    const s = simulate(hot, {
      schedule: cruise(300),
      start: settled,
      breaker: { breaker, current, place: 'bay' },
    });
    const trip = tripTime(breaker, current, ambientTemperature + 45);
    if (!trip.trips) return expect.fail('the breaker was to trip');
    expect(Math.abs(times(s, 'breaker-trips')[0]! - trip.time)).toBeLessThan(1e-3);
  });

  it('a manual one stays open until pushed, and refuses while hot', () => {
    const s = simulate(exampleLoop, {
      schedule: cruise(600),
      start: settled,
      breaker: {
        breaker: { ...breaker, reset: 'manual' },
        current,
        place: 'outside',
        pushedAt: [300, 900],
      },
    });
    const trip = times(s, 'breaker-trips')[0]!;
    expect(times(s, 'breaker-closes')).toEqual([300]);
    const refused = simulate(exampleLoop, {
      schedule: cruise(600),
      start: settled,
      breaker: {
        breaker: { ...breaker, reset: 'manual' },
        current,
        place: 'outside',
        pushedAt: [trip + 2],
      },
    });
    expect(times(refused, 'breaker-push-refused')).toEqual([trip + 2]);
    expect(times(refused, 'breaker-closes')).toEqual([]);
  });

  // Type 2 of SAE J553: held open until its current is switched off.
  it('a modified one closes only once it is cool and switched off', () => {
    const s = simulate(exampleLoop, {
      schedule: cruise(900),
      start: settled,
      breaker: { breaker: { ...breaker, reset: 'modified' }, current, place: 'outside' },
      pumpOff: [{ from: 500, until: 560 }],
    });
    expect(times(s, 'breaker-closes')[0]).toBe(500);
    expect(s.events.map(({ kind }) => kind).slice(0, 5)).toEqual([
      'segment',
      'breaker-trips',
      'pump-switched-off',
      'breaker-closes',
      'pump-switched-on',
    ]);
  });

  it('draws the current of the pump described where none is told', () => {
    // By hand: 130 W at 13.5 V brushed, 13 V at the plug: 130 (13/13.5)^3 / 13 A.
    const amps = (130 * (13 / 13.5) ** 3) / 13;
    const s = simulate(exampleLoop, {
      schedule: cruise(400),
      start: settled,
      breaker: { breaker, place: 'outside' },
    });
    expect(s.events.find(({ kind }) => kind === 'breaker-trips')!.value).toBeCloseTo(amps, 9);
  });
});

describe('pump off', () => {
  // Trade: a stopped pump leaves the tank temperature flat while intake air climbs (computed; common practice).
  it('leaves the reservoir flat while the charge climbs', () => {
    const s = simulate(exampleLoop, {
      schedule: [...cruise(60), { duty: 'pull', duration: 40 }],
      start: settled,
      pumpOff: [{ from: 30, until: 1e4 }],
    });
    expect(Math.abs(s.end.reservoir - settled.reservoir)).toBeLessThan(1);
    expect(s.peakCharge!.value - s.history.chargeOut[0]!).toBeGreaterThan(50);
    expect(s.history.flow.at(-1)).toBe(0);
    expect(s.flowTime).toBe(30);
  });

  it('an air-bound pump turns without moving anything until it has rested long enough', () => {
    const request: EventRequest = {
      schedule: cruise(900),
      start: settled,
      airBound: { at: 100, restToPrime: 60 },
      pumpOff: [
        { from: 200, until: 240 },
        { from: 400, until: 500 },
      ],
    };
    const s = simulate(exampleLoop, request);
    expect(happenings(s).map(({ t, kind }) => [t, kind])).toEqual([
      [100, 'prime-lost'],
      [200, 'pump-switched-off'],
      [240, 'pump-switched-on'], // 40 s were too short
      [400, 'pump-switched-off'],
      [460, 'pump-primed'],
      [500, 'pump-switched-on'],
    ]);
    expect(s.flowTime).toBe(100 + 400);
    expect(bands(s.history, 'pumpOn')).toEqual([
      { from: 0, until: 200 },
      { from: 240, until: 400 },
      { from: 500, until: 900 },
    ]);
  });

  it('air-bound, it draws less: a breaker that would trip holds', () => {
    const held = simulate(exampleLoop, {
      schedule: cruise(900),
      start: settled,
      airBound: { at: 0, restToPrime: 60, currentShare: 0.5 },
      breaker: { breaker, current: 9.4, place: 'outside' },
    });
    expect(held.trips).toBe(0);
  });
});

describe('fans', () => {
  it('go on and off at their edges, with the gap between', () => {
    const idle = settledState(exampleLoop, 'traffic').reservoir;
    const offAt = idle + 2;
    const onAt = idle + 6;
    const s = simulate(exampleLoop, {
      schedule: [{ duty: 'traffic', duration: 3600 }],
      start: coldState(exampleLoop),
      thermostat: { sensor: 'reservoir', onAt, offAt },
    });
    const turns = happenings(s);
    expect(turns.length).toBeGreaterThan(4);
    turns.forEach(({ kind, t }, i) => {
      expect(kind).toBe(i % 2 === 0 ? 'fans-on' : 'fans-off');
      expect(Math.abs(at(s, 'reservoir', t) - (i % 2 === 0 ? onAt : offAt))).toBeLessThan(1e-5);
    });
    expect(s.fanTime).toBeGreaterThan(0);
    expect(s.fanTime).toBeLessThan(3600);
  });
});

describe('ice', () => {
  const water: Loop = {
    ...exampleLoop,
    coolant: { kind: 'water', massFraction: 0 },
    reservoir: { ...exampleLoop.reservoir, totalVolume: 0.012, metalCapacity: 0, shortCircuit: 0 },
  };
  const cold = coldState(water, C(8));

  it('standing by itself melts as the reference tank does', () => {
    const loop: Loop = { ...water, pump: { ...water.pump, volts: 0 } };
    const start = coldState(loop, 273.15);
    const mass = 1.2;
    const G = 40;
    const warm: Loop = { ...loop, soak: { ...loop.soak, reservoirConductance: G } };
    const { rho, cp } = prepareLoop(warm).liquidAt(273.15);
    const bay = warm.site.ambientTemperature + warm.duties.traffic.bayRise;
    const t = [100, 200, 400, 600];
    const alone = simulateIceWithAmbient({
      ice_mass: mass,
      water_mass: rho * (warm.reservoir.liquidVolume + hoseVolume(warm.hoses.back)),
      power: 0,
      UA: G,
      T_ambient: bay,
      cp_water: cp,
      latent_heat: 333.55e3,
      t,
    });
    const s = simulate(warm, {
      schedule: [{ duty: 'traffic', duration: 600 }],
      start,
      ice: { mass },
    });
    expect(Math.abs(times(s, 'ice-gone')[0]! - alone.t_melt_end!)).toBeLessThan(1e-3);
    expect(Math.abs(s.end.reservoir - alone.T.at(-1)!)).toBeLessThan(1e-3);
    const i = s.history.t.findIndex((time) => time === 100);
    expect(Math.abs(s.history.iceMass[i]! - alone.ice_mass[0]!)).toBeLessThan(1e-6);
  });

  it('holds the reservoir at the ice point in a pull, and the ledger knows the melting', () => {
    const s = simulate(water, {
      schedule: [
        { duty: 'cruise', duration: 120 },
        { duty: 'pull', duration: 12 },
        { duty: 'traffic', duration: 600 },
      ],
      start: cold,
      ice: { mass: 3, temperature: 263.15 },
    });
    const gone = times(s, 'ice-gone')[0]!;
    expect(gone).toBeGreaterThan(0);
    s.history.t.forEach((t, i) => {
      if (t < gone) expect(s.history.reservoir[i]).toBe(273.15);
    });
    expect(s.iceLeft).toBe(0);
    expect(s.ledger.melting).toBeCloseTo(333.55e3 * s.history.iceMass[0]!, 3);
    expect(s.ledger.relative).toBeLessThan(1e-6);
    // Ice from -10 °C first makes the water cold: by hand from the reservoir's capacity.
    const C_tank = nodeCapacities(water, cold.reservoir).reservoir;
    const left = (3 * (333.55e3 + 2090 * 10) - C_tank * 8) / 333.55e3;
    expect(s.history.iceMass[0]).toBeCloseTo(left, 6);
  });

  it('forms again where the loop is colder than ice', () => {
    const winter: Loop = {
      ...water,
      pump: { ...water.pump, volts: 0 },
      site: { ...water.site, ambientTemperature: 253 },
      soak: { ...water.soak, reservoirConductance: 200 },
      duties: { ...water.duties, cruise: { ...water.duties.cruise, bayRise: 0 } },
    };
    const start = coldState(winter, C(4));
    const s = simulate(winter, { schedule: cruise(600), start, ice: { mass: 0.05 } });
    expect(times(s, 'ice-forms').length).toBe(1);
    expect(s.iceLeft).toBeGreaterThan(0.05);
    expect(s.ledger.melting).toBeLessThan(0);
    expect(s.ledger.relative).toBeLessThan(1e-6);
  });

  it('is refused in a glycol mixture, where it does not fit, and where it freezes everything', () => {
    const ice = (loop: Loop, mass: number, temperature = 273.15) =>
      simulate(loop, {
        schedule: cruise(1),
        start: coldState(loop, C(5)),
        ice: { mass, temperature },
      });
    expect(() => ice(exampleLoop, 0.5)).toThrow(InvalidInputError);
    expect(() => ice(water, 7)).toThrow(InvalidInputError);
    const deep: Loop = { ...water, reservoir: { ...water.reservoir, liquidVolume: 2e-4 } };
    expect(() => ice(deep, 10, 210)).toThrow(InvalidInputError);
    expect(() => ice(water, 1, 280)).toThrow(OutOfRangeError);
  });
});

describe('boiling', () => {
  const heat = 15e3;
  const dry = { engineConductance: 0, hoseConductance: 0, reservoirConductance: 0 };
  const still: Loop = { ...stoppedLoop, soak: { ...stoppedLoop.soak, ...dry } };

  // By hand: once the standing liquid boils and its metal is steady, all heat makes steam of liquid that
  // comes from the reservoir: m' = Q / (L + c (T_b - T_tank)).
  it('standing: steam comes at the rate the heat allows, at the boiling point', () => {
    const start = coldState(still);
    const slow = 5e3;
    const schedule = [{ duty: 'cruise' as const, duration: 1500, heat: slow }];
    const s = simulate(still, { schedule, start, boiling: true });
    const prepared = prepareLoop(still);
    const T_b = prepared.boilingPoint;
    expect(s.status).toBe('completed');
    expect(s.end.chargeLiquid).toBeCloseTo(T_b, 6);
    const { t, vapourLost } = s.history;
    const i = t.findIndex((time) => time >= 1200);
    const rate = (vapourLost.at(-1)! - vapourLost[i]!) / (t.at(-1)! - t[i]!);
    const { cp } = prepared.liquidAt(start.reservoir);
    const each = heatOfVaporisation(T_b) + cp * (T_b - start.reservoir);
    expect(Math.abs((rate * each) / slow - 1)).toBeLessThan(1e-4);
    expect(s.end.reservoir).toBeCloseTo(start.reservoir, 6);
    expect(s.ledger.relative).toBeLessThan(1e-6);
  });

  it('without being followed ends the run where it begins', () => {
    const request = {
      schedule: [{ duty: 'cruise' as const, duration: 300, heat }],
      start: coldState(still),
    };
    const ends = simulate(still, request);
    const goesOn = simulate(still, { ...request, boiling: true });
    expect(ends.status).toBe('boils');
    expect(Math.abs(ends.endTime - times(goesOn, 'boiling-begins')[0]!)).toBeLessThan(1e-3);
  });

  it('stops when cold liquid comes again', () => {
    const s = simulate(exampleLoop, {
      schedule: [{ duty: 'cruise', duration: 400, heat: 12e3 }, ...cruise(100)],
      start: coldState(exampleLoop),
      pumpOff: [{ from: 20, until: 300 }],
      boiling: true,
    });
    const [begins] = times(s, 'boiling-begins');
    expect(begins).toBeGreaterThan(20);
    // The metal is still hot: some seconds of cold liquid take that away.
    const ends = times(s, 'boiling-ends').at(-1)!;
    expect(ends).toBeGreaterThan(300);
    expect(ends).toBeLessThan(310);
    expect(s.vapourLost).toBeGreaterThan(0);
    const last = s.history.vapourLost.at(-1)!;
    const i = s.history.t.findIndex((t) => t > ends);
    expect(s.history.vapourLost[i]).toBeCloseTo(last, 9);
  });

  it('boils the reservoir down, heat closed, until the pump would draw air', () => {
    const small: Loop = {
      ...exampleLoop,
      reservoir: { ...exampleLoop.reservoir, liquidVolume: 1e-3 },
    };
    const s = simulate(small, {
      schedule: [{ duty: 'traffic', duration: 3600, heat: 60e3 }],
      start: coldState(small),
      boiling: true,
    });
    expect(s.status).toBe('boiled-dry');
    const { rho } = prepareLoop(small).liquidAt(small.site.ambientTemperature);
    expect(s.vapourLost / (0.9 * rho * 1e-3)).toBeCloseTo(1, 6);
    expect(s.ledger.steam).toBeGreaterThan(0);
    expect(s.ledger.relative).toBeLessThan(1e-6);
    expect(s.notes.map(({ code }) => code)).toContain('drive.glycol-stronger');
  });

  it('a pressure cap lifts before the liquid boils, and only once', () => {
    const capped: Loop = {
      ...exampleLoop,
      reservoir: { ...exampleLoop.reservoir, capGauge: 50e3 },
    };
    const s = simulate(capped, {
      schedule: [{ duty: 'traffic', duration: 3600, heat: 30e3 }],
      start: coldState(capped),
      boiling: true,
    });
    const lifts = times(s, 'cap-lifts');
    expect(lifts.length).toBe(1);
    expect(lifts[0]).toBeLessThan(times(s, 'boiling-begins')[0]!);
  });
});

describe('feedback', () => {
  it('the bay follows the liquid and warms the charge: hotter the greater the gain', () => {
    const run = (liquidGain: number) =>
      simulate(exampleLoop, {
        schedule: [{ duty: 'traffic', duration: 7200 }],
        start: coldState(exampleLoop),
        underhood: { timeConstant: 120, liquidGain, inletShare: 0.5 },
      });
    const [none, some, much] = [0, 0.3, 0.6].map(run);
    expect(some!.end.reservoir).toBeGreaterThan(none!.end.reservoir + 0.1);
    expect(much!.end.reservoir).toBeGreaterThan(some!.end.reservoir + 0.1);
    // By hand, settled: bay = ambient + duty's rise + gain (reservoir - ambient).
    const { ambientTemperature } = exampleLoop.site;
    const bay = ambientTemperature + 45 + 0.6 * (much!.end.reservoir - ambientTemperature);
    expect(much!.history.bayAir.at(-1)!).toBeCloseTo(bay, 2);
    // Without gain and in one duty it is the loop without the feature.
    const plain = simulate(exampleLoop, {
      schedule: [{ duty: 'traffic', duration: 7200 }],
      start: coldState(exampleLoop),
    });
    expect(Math.abs(none!.end.reservoir - plain.end.reservoir)).toBeLessThan(1e-3);
  });

  // Closed form: first-order lag of the bay between two duties.
  it('without gain the bay lags its duty by its time constant', () => {
    const s = simulate(exampleLoop, {
      schedule: [{ duty: 'traffic', duration: 200 }, ...cruise(300)],
      start: settled,
      underhood: { timeConstant: 90, liquidGain: 0, inletShare: 1 },
    });
    const { ambientTemperature } = exampleLoop.site;
    eventPoints(s.history, 'bayAir').forEach(([t, T]) => {
      const rise = t <= 200 ? 45 : 30 + 15 * Math.exp(-(t - 200) / 90);
      expect(Math.abs(T - ambientTemperature - rise)).toBeLessThan(2e-3);
    });
  });

  it('cavitation counted: the flow is that of the hydraulic model at each temperature, and falls when hot', () => {
    const thirsty: Loop = { ...exampleLoop, pump: { ...exampleLoop.pump, npshRequired: 4.5 } };
    const request: EventRequest = {
      schedule: [{ duty: 'traffic', duration: 900, heat: 16e3 }],
      start: coldState(thirsty),
      cavitation: 'counted',
    };
    const s = simulate(thirsty, request);
    const counted = prepareLoop({ ...thirsty, pump: { ...thirsty.pump, cavitation: 'counted' } });
    let lost = 0;
    s.history.t.forEach((_t, i) => {
      if (i % 40 !== 0) return;
      const T = s.history.pumpIn[i]!;
      const { flow } = counted.flowAt(T);
      expect(Math.abs(s.history.flow[i]! - flow)).toBeLessThan(1e-4 * 5e-4);
      lost = Math.max(lost, 1 - flow / prepareLoop(thirsty).flowAt(T).flow);
    });
    expect(lost).toBeGreaterThan(0.05);
    const healthy = simulate(thirsty, { ...request, cavitation: 'ignored' });
    expect(s.history.flow.at(-1)).toBeLessThan(healthy.history.flow.at(-1)!);
  });

  // By hand: while a temperature climbs at a steady rate, what comes out of a run lags by rate times delay.
  it('hoses: what arrives lags by the time through the run', () => {
    const s = simulate(exampleLoop, {
      schedule: [{ duty: 'pull', duration: 120, heat: 25e3 }],
      start: coldState(exampleLoop),
      hoseDelay: { cells: 4 },
      rtol: 1e-8,
    });
    const h = s.history;
    const i = h.t.findIndex((t) => t >= 60);
    const slope = (h.frontLiquid[i + 10]! - h.frontLiquid[i - 10]!) / (h.t[i + 10]! - h.t[i - 10]!);
    const delay = hoseVolume(exampleLoop.hoses.back) / h.flow[i]!;
    const lag = (h.frontLiquid[i]! - h.returning[i]!) / slope;
    expect(delay).toBeGreaterThan(0.5);
    expect(Math.abs(lag / delay - 1)).toBeLessThan(0.05);
    expect(s.ledger.relative).toBeLessThan(1e-6);
  });
});

describe('what contradicts itself is refused', () => {
  const good: EventRequest = { schedule: cruise(10), start: settled };
  const bad: [string, Partial<EventRequest>][] = [
    ['no segment', { schedule: [] }],
    ['a segment without time', { schedule: cruise(0) }],
    ['a start that is no number', { start: { ...settled, reservoir: NaN } }],
    ['a pump off for no time', { pumpOff: [{ from: 5, until: 5 }] }],
    ['prime lost before the start', { airBound: { at: -1, restToPrime: 5 } }],
    [
      'fans that go on below where they go off',
      { thermostat: { sensor: 'reservoir', onAt: 310, offAt: 311 } },
    ],
    ['a breaker of no rating', { breaker: { breaker: { ...breaker, rating: 0 } } }],
    [
      'a breaker with a reset it cannot have',
      { breaker: { breaker: { ...breaker, resetState: 1.5 } } },
    ],
    ['a bay without lag', { underhood: { timeConstant: 0, liquidGain: 0, inletShare: 0 } }],
    ['half a cell', { hoseDelay: { cells: 1.5 } }],
    ['liquid above its boiling point', { boiling: true, start: { ...settled, frontLiquid: 420 } }],
  ];
  it.each(bad)('%s', (_name, change) => {
    let thrown: unknown = null;
    try {
      simulate(exampleLoop, { ...good, ...change });
    } catch (error) {
      thrown = error;
    }
    expect(thrown instanceof InvalidInputError || thrown instanceof OutOfRangeError).toBe(true);
  });
});

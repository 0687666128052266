/**
 * What a technician knows each fault by. These facts of the trade are common practice, no source;
 * the numbers in them (shares of amps, speeds) are the trade's, not ours.
 */
import { describe, expect, it } from 'vitest';
import { FAULTS, faultOf } from '$lib/solver/diagnosis/faults';
import { predictor, underConditions } from '$lib/solver/diagnosis/predict';
import type { FaultId, SettledDuty } from '$lib/solver/diagnosis/types';
import type { Loop } from '$lib/solver/loop/types';
import { exampleLoop } from '../loop/example';

const predict = predictor(exampleLoop);
const healthy = {
  traffic: at('as-described', 0, 'traffic'),
  cruise: at('as-described', 0, 'cruise'),
};

/** A fault at a share of its range, 0 slight to 1 worst. */
function at(id: FaultId, share: number, duty: SettledDuty, predictIn = predict) {
  const fault = faultOf(id);
  const { from, to } = fault.severity ?? { from: 0, to: 0 };
  return predictIn.at(fault, from + share * (to - from), duty);
}
const MPH = 0.44704;
const inSpeed = (
  mph: number,
  ambient = exampleLoop.site.ambientTemperature,
  loop: Loop = exampleLoop,
) => predictor(underConditions(loop, { ambient, ambientSigma: 0, speed: { traffic: mph * MPH } }));

describe('signs of the faults', () => {
  it('knows twelve causes or more, each with a name of its own', () => {
    expect(FAULTS.length).toBeGreaterThanOrEqual(13);
    expect(new Set(FAULTS.map((f) => f.id)).size).toBe(FAULTS.length);
    expect(new Set(FAULTS.map((f) => f.name)).size).toBe(FAULTS.length);
  });

  it('stopped pump: the tank no hotter than the bay while the intake climbs', () => {
    const s = at('no-supply', 0, 'cruise');
    const bay = exampleLoop.site.ambientTemperature + exampleLoop.duties.cruise.bayRise;
    expect(s.reservoir).toBeLessThanOrEqual(bay + 1e-9);
    expect(s.charge).toBeGreaterThan(healthy.cruise.charge + 20);
    expect([s.flow, s.volts, s.amps, s.pumpRise]).toEqual([0, 0, 0, 0]);
  });

  it('volts lost: volts, amps and flow low in step', () => {
    const s = at('supply-drop', 0.6, 'cruise');
    expect(s.volts).toBeLessThan(healthy.cruise.volts - 1);
    expect(s.flow / healthy.cruise.flow).toBeCloseTo(s.volts / healthy.cruise.volts, 1);
    expect(s.amps).toBeLessThan(healthy.cruise.amps);
  });

  it('cycling breaker: mean volts and mean amps fall by one share, unlike a lost volt', () => {
    const s = at('breaker-cycling', 0.5, 'cruise');
    expect(s.amps / healthy.cruise.amps).toBeCloseTo(s.volts / healthy.cruise.volts, 10);
    expect(s.flow).toBeLessThan(0.7 * healthy.cruise.flow);
  });

  it('rubbing pump: amps above 120 % of normal, flow low', () => {
    const s = at('pump-rubbing', 0.3, 'cruise');
    expect(s.amps).toBeGreaterThan(1.2 * healthy.cruise.amps);
    expect(s.flow).toBeLessThan(healthy.cruise.flow);
  });

  it('air in the pump: volts normal, amps 30 to 60 % low, flow near nothing, no pressure', () => {
    const s = at('air-bound', 1, 'cruise');
    expect(s.volts).toBe(healthy.cruise.volts);
    expect(s.amps).toBeLessThan(0.7 * healthy.cruise.amps);
    expect(s.amps).toBeGreaterThan(0.4 * healthy.cruise.amps);
    expect(s.flow).toBeLessThan(0.1 * healthy.cruise.flow);
    expect(s.pumpRise).toBeLessThan(0.1 * healthy.cruise.pumpRise);
  });

  it.each(['hose-collapsed', 'core-blocked-inside'] as const)(
    '%s: amps below normal and high pressure at the outlet, where air gives low',
    (id) => {
      const s = at(id, 0.9, 'cruise');
      expect(s.volts).toBe(healthy.cruise.volts);
      expect(s.amps).toBeLessThan(healthy.cruise.amps);
      expect(s.pumpRise).toBeGreaterThan(1.1 * healthy.cruise.pumpRise);
      expect(s.flow).toBeLessThan(0.7 * healthy.cruise.flow);
      expect(s.frontIn - s.frontOut).toBeGreaterThan(
        1.3 * (healthy.cruise.frontIn - healthy.cruise.frontOut),
      );
    },
  );

  it('cavitation: flow falls only when hot, from a tank of 180 to 200 °F on', () => {
    // Fans off and much heat from the engine, until the tank is that hot; in the frost it stays cold.
    const soaked = {
      ...exampleLoop,
      fans: { ...exampleLoop.fans, volts: 0 },
      soak: { ...exampleLoop.soak, engineConductance: 120 },
    };
    const here = inSpeed(5, 318, soaked);
    const [well, short] = [
      at('as-described', 0, 'traffic', here),
      at('cavitation', 1, 'traffic', here),
    ];
    expect(well.reservoir).toBeGreaterThan(273.15 + (180 - 32) / 1.8);
    expect(short.flow).toBeLessThan(0.8 * well.flow);
    expect(short.amps).toBeLessThan(0.95 * well.amps);
    const frost = inSpeed(5, 263);
    const cold = at('as-described', 0, 'traffic', frost).flow;
    expect(at('cavitation', 1, 'traffic', frost).flow).toBeGreaterThan(0.99 * cold);
  });

  it('dead fan: hot standing, fine at speed, hardly a drop at idle', () => {
    const idle = at('fan-dead', 1, 'traffic');
    expect(idle.reservoir - healthy.traffic.reservoir).toBeGreaterThan(15);
    expect(at('fan-dead', 1, 'cruise').reservoir - healthy.cruise.reservoir).toBeLessThan(3);
  });

  it('reversed fan: worst at 20 to 40 mph, good at 60, where a dead fan is worst standing', () => {
    // The whole face behind the shroud, so that no open part of it hides where fan and ram cancel.
    const shrouded = { ...exampleLoop, fans: { ...exampleLoop.fans, coverage: 1 } };
    const over = (id: FaultId, mph: number) => {
      const here = inSpeed(mph, undefined, shrouded);
      const well = at('as-described', 0, 'traffic', here).reservoir;
      return at(id, 0.4, 'traffic', here).reservoir - well;
    };
    const middle = Math.max(...[20, 25, 30, 35, 40].map((mph) => over('fan-reversed', mph)));
    expect(middle).toBeGreaterThan(over('fan-reversed', 0));
    expect(middle).toBeGreaterThan(over('fan-reversed', 60) + 5);
    expect(over('fan-dead', 0)).toBeGreaterThan(over('fan-dead', 30));
  });

  it('reversed fan, part of the face open: no better at 30 mph than standing, where a dead fan recovers', () => {
    const over = (id: FaultId, mph: number) => {
      const here = inSpeed(mph);
      return (
        at(id, 0.4, 'traffic', here).reservoir - at('as-described', 0, 'traffic', here).reservoir
      );
    };
    expect(over('fan-reversed', 30)).toBeGreaterThan(0.85 * over('fan-reversed', 0));
    expect(over('fan-dead', 30)).toBeLessThan(0.5 * over('fan-dead', 0));
  });

  it('fan that misses its core: hot standing and warm air at the face, well at speed', () => {
    const s = at('fan-misplaced', 0.7, 'traffic');
    expect(s.reservoir).toBeGreaterThan(healthy.traffic.reservoir + 5);
    expect(s.faceAir).toBeGreaterThan(healthy.traffic.faceAir + 2);
    const over = at('fan-misplaced', 0.7, 'cruise').reservoir - healthy.cruise.reservoir;
    expect(over).toBeLessThan(0.5 * (s.reservoir - healthy.traffic.reservoir));
  });

  it.each(['core-blocked-outside', 'exchanger-small'] as const)('%s: up at all speeds', (id) => {
    for (const duty of ['traffic', 'cruise'] as const) {
      const s = at(id, 0.6, duty);
      expect(s.reservoir).toBeGreaterThan(healthy[duty].reservoir + 1);
      expect(s.flow).toBeCloseTo(healthy[duty].flow, 4);
    }
  });

  it('hot air at the face: the face reads above ambient and the tank follows', () => {
    for (const duty of ['traffic', 'cruise'] as const) {
      const s = at('hot-face-air', 0.6, duty);
      expect(s.faceAir).toBeGreaterThan(healthy[duty].faceAir);
      expect(s.reservoir).toBeGreaterThan(healthy[duty].reservoir);
    }
  });

  it('short circuit: settled readings as before, a small effective volume', () => {
    const s = at('short-circuit', 0.5, 'cruise');
    expect(Math.abs(s.reservoir - healthy.cruise.reservoir)).toBeLessThan(1);
    expect(predict.once(faultOf('short-circuit'), 0.8).volume).toBeCloseTo(0.2, 10);
  });

  it('fouled charge cooler: the intake above the liquid, the tank no hotter', () => {
    const s = at('charge-cooler-fouled', 0.9, 'cruise');
    expect(s.charge - s.reservoir).toBeGreaterThan(
      healthy.cruise.charge - healthy.cruise.reservoir + 3,
    );
    expect(s.reservoir).toBeLessThan(healthy.cruise.reservoir + 0.5);
  });

  it.each([
    ['reservoir-probe', 'reservoir'],
    ['front-probe', 'frontOut'],
    ['charge-probe', 'charge'],
    ['flow-meter', 'flow'],
  ] as const)('%s: only its own channel moves', (id, channel) => {
    const s = at(id, 0.9, 'cruise');
    for (const key of Object.keys(s) as (keyof typeof s)[]) {
      if (key === channel) expect(s[key]).not.toBeCloseTo(healthy.cruise[key], 4);
      else expect(s[key], key).toBe(healthy.cruise[key]);
    }
  });
});

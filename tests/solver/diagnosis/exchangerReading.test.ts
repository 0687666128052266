import { describe, expect, it } from 'vitest';
import { exchangerReading } from '$lib/solver/diagnosis/exchangerReading';
import type { Channel, Place, Reading } from '$lib/solver/diagnosis/types';
import type { Loop } from '$lib/solver/loop/types';
import { exampleLoop } from '../loop/example';

const water: Loop = { ...exampleLoop, coolant: { kind: 'water', massFraction: 0 } };
const NONE = { ambientSigma: 0.5, speed: {} };
const read = (channel: Channel, place: Place, value: number): Reading => ({
  channel,
  place,
  value,
  sigma: 1,
});
const inOut = (place: Place, T_in: number, T_out: number) => [
  read('frontIn', place, T_in),
  read('frontOut', place, T_out),
];
const ambient = exampleLoop.site.ambientTemperature;

describe('the exchanger as read', () => {
  it('needs both ends, in one duty', () => {
    expect(exchangerReading(water, [], NONE)).toBeNull();
    expect(exchangerReading(water, [read('frontIn', 'traffic', 340)], NONE)).toBeNull();
    const apart = [read('frontIn', 'traffic', 340), read('frontOut', 'cruise', 330)];
    expect(exchangerReading(water, apart, NONE)).toBeNull();
  });

  it('takes traffic before cruise, and cruise where only that was read', () => {
    const both = [...inOut('cruise', 330, 320), ...inOut('traffic', 350, 345)];
    expect(exchangerReading(water, both, NONE)).toMatchObject({ duty: 'traffic', liquidIn: 350 });
    expect(exchangerReading(water, inOut('cruise', 330, 320), NONE)?.duty).toBe('cruise');
  });

  it('passes over a duty whose liquid enters no hotter than the air', () => {
    const cold = [...inOut('traffic', ambient, ambient - 2), ...inOut('cruise', 330, 320)];
    expect(exchangerReading(water, cold, NONE)?.duty).toBe('cruise');
    expect(exchangerReading(water, inOut('traffic', ambient, ambient), NONE)).toBeNull();
  });

  it('counts the ambient of the readings, not that of the job', () => {
    const hot = { ...NONE, ambient: 345 };
    expect(exchangerReading(water, inOut('traffic', 340, 330), hot)).toBeNull();
    expect(exchangerReading(water, inOut('traffic', 350, 347), hot)?.ambient).toBe(345);
  });

  it('has the properties of the liquid at the mean of in and out', () => {
    // Water at 320 K, saturated liquid: 989.39 kg/m³ and 4.180 kJ/(kg K); Incropera & DeWitt, table A.6
    // (v_f 1.011e-3 m³/kg, c_p 4.180), from memory: to the digits printed there.
    const { density, specificHeat } = exchangerReading(water, inOut('traffic', 325, 315), NONE)!;
    expect(Math.abs(1 / density - 1.011e-3)).toBeLessThan(0.0005e-3 + 1e-9);
    expect(Math.abs(specificHeat - 4180)).toBeLessThan(2);
  });

  it('believes the bucket before the meter, and does without either', () => {
    const ends = inOut('traffic', 340, 330);
    const flow = (...more: Reading[]) => exchangerReading(water, [...ends, ...more], NONE)!.flow;
    expect(flow()).toBeUndefined();
    expect(flow(read('flow', 'traffic', 2e-4))).toBe(2e-4);
    expect(flow(read('flow', 'traffic', 2e-4), read('bucket', 'traffic', 1e-4))).toBe(1e-4);
    expect(flow(read('flow', 'cruise', 2e-4))).toBeUndefined();
  });

  it('refuses a mean that no coolant has', () => {
    expect(() => exchangerReading(water, inOut('traffic', 900, 880), NONE)).toThrow();
  });
});

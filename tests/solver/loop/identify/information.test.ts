import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { leastDeviations } from '$lib/solver/loop/identify/information';
import type {
  ChannelName,
  Drive,
  ParameterName,
  Parameters,
  RingModel,
} from '$lib/solver/loop/identify/types';
import { RING, TRUE } from './synthetic';

const folder = join(import.meta.dirname, '../../../reference/values');

interface ReferenceCase {
  id: string;
  inputs: Record<string, number> & {
    log: string;
    model: string;
    logged: string[];
    free: string[];
    noise_sd: Record<string, number>;
  };
  expected: Record<string, number>;
}

const PARAMETER: Record<string, ParameterName> = {
  UA_front: 'frontUA',
  liquid_capacity_rate: 'capacityRate',
  effectiveness_charge: 'chargeShare',
  effectiveness_front: 'frontShare',
  pump_heat: 'pumpHeat',
  C1: 'chargeCapacity',
  C2: 'reservoirCapacity',
  C3: 'pumpCapacity',
  C4: 'frontCapacity',
  T1_0: 'chargeStart',
  T2_0: 'reservoirStart',
  T3_0: 'pumpStart',
  T4_0: 'frontStart',
};
const CHANNEL: Record<string, ChannelName> = {
  T2: 'reservoir',
  T3: 'pump',
  T4: 'front',
  T_air_out: 'chargeAirOut',
};

// Source: tests/reference/values/parameter-estimation.json, standard deviations of the Cramér-Rao bound at
// the true parameters, worked out with scipy.
describe('Cramér-Rao bound', () => {
  const text = readFileSync(join(folder, 'parameter-estimation.json'), 'utf8');
  const { cases } = JSON.parse(text) as { cases: ReferenceCase[] };

  it.each(cases.map((c) => [c.id, c] as const))('%s', (_id, { inputs, expected }) => {
    const [head, ...rows] = readFileSync(join(folder, inputs.log), 'utf8').trim().split(/\r?\n/);
    const names = head!.split(',');
    const column = (name: string) =>
      Float64Array.from(rows, (row) => Number(row.split(',')[names.indexOf(name)]));
    const t = column('t');
    const constant = (value: number) => new Float64Array(t.length).fill(value);
    const air = inputs.model === 'loop-4-node-air';
    const model: RingModel = air
      ? { ...RING, charge: { by: 'effectiveness' }, front: { by: 'effectiveness' } }
      : RING;
    const drive: Drive = {
      t,
      between: 'held',
      ambient: column('T_ambient'),
      ...(air
        ? {
            chargeAirIn: column('T_air_in'),
            chargeAirRate: constant(inputs.air_capacity_rate!),
            frontAirRate: constant(inputs.C_min_front!),
          }
        : { heat: column('Q') }),
    };
    const at: Record<ParameterName, number> = { ...TRUE };
    for (const [theirs, ours] of Object.entries(PARAMETER)) {
      const value = expected[theirs] ?? inputs[theirs];
      if (value !== undefined) at[ours] = value;
    }
    const noise = Object.fromEntries(inputs.logged.map((n) => [CHANNEL[n]!, inputs.noise_sd[n]!]));
    const free = inputs.free.map((name) => PARAMETER[name]!);
    const found = leastDeviations({ model, drive, noise }, at as Parameters, free);
    // Derivatives by differences on both sides.
    inputs.free.forEach((name, j) =>
      expect(Math.abs(found[j]! / expected[`sd_${name}`]! - 1)).toBeLessThan(1e-5),
    );
  });
});

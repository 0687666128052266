/** Topic parameter-estimation: the logs lie beside the cases. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { identify } from '$lib/solver/loop/identify/identify';
import type {
  ChannelName,
  Channels,
  Drive,
  Order,
  ParameterName,
  Parameters,
  RingModel,
} from '$lib/solver/loop/identify/types';
import type { Given } from '../given';
import { referenceFolder, type Adapter } from '../harness';

/** The reference's ring: charge cooler, reservoir, pump and hoses, front exchanger. */
const ORDER: Order = ['charge', 'reservoir', 'pump', 'front'];

const MODELS: Record<string, RingModel> = {
  'loop-4-node': { order: ORDER, charge: { by: 'heat' }, front: { by: 'outlet' } },
  'loop-4-node-air': {
    order: ORDER,
    charge: { by: 'effectiveness' },
    front: { by: 'effectiveness' },
  },
};

/** Names of the reference and ours. */
const NAMES: Record<string, ParameterName> = {
  C1: 'chargeCapacity',
  C2: 'reservoirCapacity',
  C3: 'pumpCapacity',
  C4: 'frontCapacity',
  T1_0: 'chargeStart',
  T2_0: 'reservoirStart',
  T3_0: 'pumpStart',
  T4_0: 'frontStart',
  UA_front: 'frontUA',
  liquid_capacity_rate: 'capacityRate',
  effectiveness_charge: 'chargeShare',
  effectiveness_front: 'frontShare',
  pump_heat: 'pumpHeat',
};
const CHANNELS: Record<string, ChannelName> = {
  T1: 'charge',
  T2: 'reservoir',
  T3: 'pump',
  T4: 'front',
  T_air_out: 'chargeAirOut',
};
/** Held where the model does not use them. */
const UNUSED = {
  frontUA: 1,
  chargeUA: 1,
  frontShare: 0,
  chargeShare: 0,
  flowScale: 1,
  heatScale: 1,
  soakHeat: 0,
};

function columns(file: string): Record<string, Float64Array> {
  const [head, ...rows] = readFileSync(join(referenceFolder(), file), 'utf8').trim().split(/\r?\n/);
  const cells = rows.map((row) => row.split(',').map(Number));
  return Object.fromEntries(
    head!.split(',').map((name, j) => [name, Float64Array.from(cells, (row) => row[j]!)]),
  );
}

export const parameterEstimationAdapters: Record<string, Adapter> = {
  'fit-loop': (given: Given) => {
    const log = columns(given.text('log'));
    const model = given.oneOf('model', MODELS);
    const logged = given.texts('logged');
    const noiseGiven = given.record('noise_sd');
    const start = given.record('start');
    const free = given.texts('free');
    const t = log.t!;
    const constant = (key: string) => new Float64Array(t.length).fill(given.number(key));
    const air = model.charge.by !== 'heat';
    const drive: Drive = {
      t,
      between: 'held',
      ambient: log.T_ambient!,
      ...(air
        ? {
            chargeAirIn: log.T_air_in!,
            chargeAirRate: constant('air_capacity_rate'),
            frontAirRate: constant('C_min_front'),
          }
        : { heat: log.Q! }),
    };
    const known = Object.fromEntries(
      Object.entries(NAMES).flatMap(([theirs, ours]) => {
        if (start[theirs] !== undefined) return [[ours, start[theirs]]];
        return given.has(theirs) ? [[ours, given.number(theirs)]] : [];
      }),
    );
    const channels: Channels = Object.fromEntries(
      logged.map((name) => [CHANNELS[name]!, log[name]!]),
    );
    const { estimates } = identify({
      model,
      drive,
      channels,
      from: { ...UNUSED, ...known } as Parameters,
      free: free.map((name) => NAMES[name]!),
      noise: Object.fromEntries(logged.map((name) => [CHANNELS[name]!, noiseGiven[name]!])),
    });
    const found: Record<string, number> = {};
    free.forEach((name, j) => {
      const { value, deviation } = estimates.parameters[j]!;
      found[name] = value;
      found[`sd_${name}`] = deviation;
    });
    found.mass_flow = found.liquid_capacity_rate! / given.number('cp_liquid');
    return found;
  },
};

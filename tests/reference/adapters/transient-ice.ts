/** Topic transient-ice. */
import { mixIceAndWater } from '$lib/solver/fluids/ice';
import {
  simulateIceConstantPower,
  simulateIceWithAmbient,
  type IceHistory,
} from '$lib/solver/loop/events/iceReference';
import type { Given } from '../given';
import type { Adapter } from '../harness';
import type { Fields } from '../schema';

const read = <K extends string>(given: Given, names: readonly K[]) =>
  Object.fromEntries(names.map((name) => [name, given.number(name)])) as Record<K, number>;

const COMMON = ['ice_mass', 'water_mass', 'cp_water', 'latent_heat'] as const;

/** A moment that does not come is left out, and the case then misses it. */
const fields = ({ t_melt_start, t_melt_end, T, ice_mass }: IceHistory): Fields => ({
  ...(t_melt_start === null ? {} : { t_melt_start }),
  ...(t_melt_end === null ? {} : { t_melt_end }),
  T: [...T],
  ice_mass: [...ice_mass],
});

export const transientIceAdapters: Record<string, Adapter> = {
  'ice-constant-power': (given) =>
    fields(
      simulateIceConstantPower({
        ...read(given, [...COMMON, 'cp_ice', 'T0', 'power', 'C_other']),
        t: given.numbers('t'),
      }),
    ),
  'ice-with-ambient': (given) =>
    fields(
      simulateIceWithAmbient({
        ...read(given, [...COMMON, 'power', 'UA', 'T_ambient']),
        t: given.numbers('t'),
      }),
    ),
  'ice-added-to-water': (given) => ({
    ...mixIceAndWater(read(given, [...COMMON, 'cp_ice', 'T_ice', 'T_water'])),
  }),
};

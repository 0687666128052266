import { dutyFromUA, lmtd, lmtdCorrection12, uaFromRating } from '$lib/solver/cores/lmtd';
import type { Given } from '../given';
import type { Adapter } from '../harness';
import { arrangementOf } from './effectiveness-ntu';

const fourTemperatures = (given: Given) => ({
  T_hot_in: given.number('T_hot_in'),
  T_hot_out: given.number('T_hot_out'),
  T_cold_in: given.number('T_cold_in'),
  T_cold_out: given.number('T_cold_out'),
});

const capacityRates = (given: Given) => ({
  C_hot: given.number('C_hot'),
  C_cold: given.number('C_cold'),
});

export const lmtdAdapters: Record<string, Adapter> = {
  lmtd: (given) => ({
    lmtd: lmtd(
      given.oneOf('arrangement', { counterflow: 'counterflow', parallel: 'parallel' } as const),
      fourTemperatures(given),
    ),
  }),
  duty: (given) => {
    const { heat, ...rest } = dutyFromUA({
      arrangement: arrangementOf(given),
      UA: given.number('UA'),
      ...capacityRates(given),
      T_hot_in: given.number('T_hot_in'),
      T_cold_in: given.number('T_cold_in'),
    });
    return { Q: heat, ...rest };
  },
  'rating-to-ua': (given) => {
    const arrangement = arrangementOf(given);
    const inlets = {
      T_hot_in: given.number('T_hot_in'),
      T_hot_out: given.number('T_hot_out'),
      T_cold_in: given.number('T_cold_in'),
    };
    const { heat, ...rest } = uaFromRating({ arrangement, ...capacityRates(given), ...inlets });
    const rating = { Q: heat, ...rest };
    // A log-mean difference of its own belongs to these two arrangements only.
    if (arrangement !== 'counterflow' && arrangement !== 'parallel') return rating;
    return { ...rating, lmtd: lmtd(arrangement, { ...inlets, T_cold_out: rest.T_cold_out }) };
  },
  'lmtd-correction-1-2': (given) => ({ F: lmtdCorrection12(fourTemperatures(given)) }),
};

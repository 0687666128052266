import { effectiveness, ntuFromEffectiveness } from '$lib/solver/cores/effectiveness';
import { EFFECTIVENESS_LAW } from '$lib/solver/cores/laws';
import type { ExchangerArrangement } from '$lib/solver/cores/arrangement';
import type { Given } from '../given';
import type { Adapter } from '../harness';

/** The reference names the arrangements as the solver does. */
const ARRANGEMENTS = Object.fromEntries(
  (Object.keys(EFFECTIVENESS_LAW) as ExchangerArrangement[]).map((name) => [name, name]),
);

export const arrangementOf = (given: Given): ExchangerArrangement =>
  given.oneOf('arrangement', ARRANGEMENTS);

export const effectivenessNtuAdapters: Record<string, Adapter> = {
  effectiveness: (given) => ({
    effectiveness: effectiveness({
      arrangement: arrangementOf(given),
      NTU: given.number('NTU'),
      Cr: given.number('Cr'),
    }),
  }),
  'ntu-from-effectiveness': (given) => ({
    NTU: ntuFromEffectiveness({
      arrangement: arrangementOf(given),
      effectiveness: given.number('effectiveness'),
      Cr: given.number('Cr'),
    }),
  }),
};

/** Lines from conductance and streams to the share of the possible heat: one for crossflow, else step by step. */
import { exchangerArrangement } from '$lib/solver/cores/arrangement';
import {
  crossflowOfPart,
  crossflowOfRates,
  type Smaller,
} from '$lib/solver/cores/crossflowFormulas';
import { effectivenessFormula } from '$lib/solver/cores/effectivenessFormulas';
import { capacityRatio, transferUnits } from '$lib/solver/cores/formulas';
import type { Note } from '$lib/solver/errors';
import { formulaLine, type FormulaLine } from '$lib/solver/formula';
import { zoneLiquidRate } from '$lib/solver/loop/frontFormulas';
import type { Arrangement, CoreState } from '$lib/solver/loop/types';

/** Words and ids of the lines. */
export type Naming = (
  key: 'liquid-rate' | 'ntu' | 'ratio' | 'effectiveness',
  says: string,
) => {
  readonly id: string;
  readonly statement: string;
};

export interface Whole {
  readonly state: CoreState;
  readonly arrangement: Arrangement;
  readonly why?: string;
  readonly notes?: readonly Note[];
}

/** A part of a core: `C_l` of all the liquid, of which it has the share `x`. */
export interface Part {
  readonly x: number;
  readonly C_l: number;
}

export const smallerOf = ({ C_air, C_liquid }: CoreState): Smaller =>
  C_air <= C_liquid ? 'air' : 'liquid';

export function shareLines(
  of: Naming,
  { state, arrangement, ...words }: Whole,
  part?: Part,
): FormulaLine[] {
  const { UA, C_air: C_a, C_liquid, NTU, Cr } = state;
  const smaller = smallerOf(state);
  const relation = exchangerArrangement(arrangement, smaller === 'air');
  const last = { ...of('effectiveness', 'share of the possible heat that it carries'), ...words };
  // Where one stream keeps its temperature the series has nothing to add up.
  if (relation === 'crossflow-both-unmixed' && NTU > 0 && Cr > 0) {
    return [
      part
        ? formulaLine(crossflowOfPart(smaller), { UA, C_a, ...part }, last)
        : formulaLine(crossflowOfRates(smaller), { UA, C_a, C_l: C_liquid }, last),
    ];
  }
  const C_min = Math.min(C_a, C_liquid);
  const C_max = Math.max(C_a, C_liquid);
  return [
    ...(part
      ? [
          formulaLine(
            zoneLiquidRate,
            { ...part },
            {
              ...of('liquid-rate', 'heat its liquid carries per degree'),
              why: 'Its part of the flow: where the air is strong the liquid may run out first.',
            },
          ),
        ]
      : []),
    formulaLine(
      transferUnits,
      { UA, C_min },
      {
        ...of('ntu', 'transfer units'),
        why: 'Size against stream: beyond about three, more core brings little.',
      },
    ),
    formulaLine(
      capacityRatio,
      { C_min, C_max },
      {
        ...of('ratio', 'ratio of the two streams'),
        why: 'The more alike the streams, the larger a core must be for the same share.',
      },
    ),
    formulaLine(effectivenessFormula(relation, state), { NTU, Cr }, last),
  ];
}

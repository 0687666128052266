/** Lines the sheets show for effectiveness and its inverse, one per arrangement. */
import { defineFormula, type Formula, type NamedFunction } from '../formula';
import { SOURCES } from '../sources';
import type { ExchangerArrangement } from './arrangement';
import { effectiveness, ntuFromEffectiveness } from './effectiveness';
import { capacityRatio, ratedUA } from './formulas';

const eps = { tex: '\\varepsilon', quantity: 'ratio', name: 'effectiveness' } as const;
const NTU = { tex: 'NTU', quantity: 'ratio', name: 'number of transfer units' } as const;
const { C_min, C_max } = capacityRatio.terms;
const Cr = { tex: 'C_r', quantity: 'ratio', name: 'capacity ratio' } as const;

/** A relation with its terms; `id` is the arrangement. */
const relation = (id: string, expr: string, source = SOURCES.kaysLondon): Formula =>
  defineFormula({ id: `cores.effectiveness.${id}`, expr, gives: eps, terms: { NTU, Cr }, source });

/** The exact series of crossflow, both streams unmixed. */
export const CROSSFLOW: NamedFunction = {
  tex: '\\varepsilon_{\\times}',
  says: 'ε = (1 / (Cr·NTU)) · Σ P(n, NTU)·P(n, Cr·NTU), n = 0, 1, 2, …; P(n, x) = 1 − exp(−x)·(1 + x + x²/2! + … + xⁿ/n!). Add terms until they no longer count.',
  call: (NTU, Cr) => effectiveness({ arrangement: 'crossflow-both-unmixed', NTU: NTU!, Cr: Cr! }),
};

const RELATION: Readonly<Record<ExchangerArrangement, Formula>> = {
  counterflow: relation(
    'counterflow',
    '(1 - exp(-NTU * (1 - Cr))) / (1 - Cr * exp(-NTU * (1 - Cr)))',
  ),
  parallel: relation('parallel', '(1 - exp(-NTU * (1 + Cr))) / (1 + Cr)'),
  'crossflow-both-unmixed': defineFormula({
    id: 'cores.effectiveness.crossflow-both-unmixed',
    expr: 'crossflow(NTU, Cr)',
    gives: eps,
    terms: { NTU, Cr },
    functions: { crossflow: CROSSFLOW },
    source: SOURCES.crossflowSeries,
  }),
  'crossflow-both-unmixed-approximate': relation(
    'crossflow-both-unmixed-approximate',
    '1 - exp(NTU^0.22 / Cr * (exp(-Cr * NTU^0.78) - 1))',
  ),
  'crossflow-cmin-mixed': relation('crossflow-cmin-mixed', '1 - exp(-(1 - exp(-Cr * NTU)) / Cr)'),
  'crossflow-cmax-mixed': relation('crossflow-cmax-mixed', '(1 - exp(-Cr * (1 - exp(-NTU)))) / Cr'),
  'crossflow-both-mixed': relation(
    'crossflow-both-mixed',
    '1 / (1 / (1 - exp(-NTU)) + Cr / (1 - exp(-Cr * NTU)) - 1 / NTU)',
  ),
  'shell-and-tube-1-2': relation(
    'shell-and-tube-1-2',
    '2 / (1 + Cr + sqrt(1 + Cr^2) * (1 + exp(-NTU * sqrt(1 + Cr^2))) / (1 - exp(-NTU * sqrt(1 + Cr^2))))',
  ),
};

/** What every arrangement becomes when one stream keeps its temperature, or none moves. */
const ONE_STREAM = relation('one-stream', '1 - exp(-NTU)');
/** Counterflow of equal streams, where the general form reads 0/0. */
const BALANCED = relation('counterflow-balanced', 'NTU / (1 + NTU)');
/** Closer to equal than this, the general form has lost more digits than the special one leaves out. */
const BALANCED_WITHIN = 1e-8;

/** The relation to print for these streams: the arrangement's own, or its limit where that reads 0/0. */
export function effectivenessFormula(
  arrangement: ExchangerArrangement,
  at: { readonly NTU: number; readonly Cr: number },
): Formula {
  if (at.Cr === 0 || at.NTU === 0) return ONE_STREAM;
  if (arrangement === 'counterflow' && 1 - at.Cr < BALANCED_WITHIN) return BALANCED;
  return RELATION[arrangement];
}

const inverse = (arrangement: ExchangerArrangement): Formula =>
  defineFormula({
    id: `cores.rated-conductance.${arrangement}`,
    expr: 'C_min * ntu(eps, C_min / C_max)',
    gives: ratedUA,
    terms: { eps, C_min, C_max },
    functions: {
      ntu: {
        tex: 'NTU',
        says: 'The NTU at which the effectiveness relation of this arrangement gives ε at this ratio of the streams; try values until it does.',
        call: (eps, Cr) => ntuFromEffectiveness({ arrangement, effectiveness: eps!, Cr: Cr! }),
      },
    },
    source: RELATION[arrangement].source,
  });

const INVERSE = Object.fromEntries(
  Object.keys(RELATION).map((key) => [key, inverse(key as ExchangerArrangement)]),
) as Record<ExchangerArrangement, Formula>;

/** Conductance at the rating: the relation solved for NTU, by the same function that the solver calls. */
export const ratedConductance = (arrangement: ExchangerArrangement): Formula =>
  INVERSE[arrangement];

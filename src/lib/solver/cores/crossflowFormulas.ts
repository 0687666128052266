/** Crossflow in one line: the series takes its two arguments as the fractions they are. */
import { defineFormula, type Formula } from '../formula';
import { SOURCES } from '../sources';
import { CROSSFLOW } from './effectivenessFormulas';
import { transferUnits } from './formulas';

/** Which stream has the smaller capacity rate. */
export type Smaller = 'air' | 'liquid';

const conductance = (tex: string, name: string) =>
  ({ tex, quantity: 'conductance', name }) as const;
const C_a = conductance('C_a', 'capacity rate of the air');
const C_l = conductance('C_l', 'capacity rate of the liquid');
const x = { tex: 'x', quantity: 'ratio', name: 'share of the core, and of its liquid' } as const;
const gives = {
  tex: '\\varepsilon',
  quantity: 'ratio',
  name: 'effectiveness, at NTU and ratio of the streams in brackets',
} as const;

const line = (id: string, expr: string, terms: Formula['terms']): Formula =>
  defineFormula({
    id: `cores.effectiveness.${id}`,
    expr,
    gives,
    terms: { UA: transferUnits.terms.UA, ...terms },
    functions: { crossflow: CROSSFLOW },
    source: SOURCES.crossflowSeries,
  });

const WHOLE = {
  air: line('crossflow-air-smaller', 'crossflow(UA / C_a, C_a / C_l)', { C_a, C_l }),
  liquid: line('crossflow-liquid-smaller', 'crossflow(UA / C_l, C_l / C_a)', { C_a, C_l }),
};
const PART = {
  air: line('crossflow-part-air-smaller', 'crossflow(UA / C_a, C_a / (x * C_l))', { C_a, C_l, x }),
  liquid: line('crossflow-part-liquid-smaller', 'crossflow(UA / (x * C_l), x * C_l / C_a)', {
    C_a,
    C_l,
    x,
  }),
};

/** Effectiveness of a whole core. */
export const crossflowOfRates = (smaller: Smaller): Formula => WHOLE[smaller];

/** Effectiveness of a part of a core, `UA` and `C_a` those of the part, `C_l` of all the liquid. */
export const crossflowOfPart = (smaller: Smaller): Formula => PART[smaller];

/** Formulas of the suction side, as the sheets show them. */
import { defineFormula, type Term } from '../formula';
import type { PumpModel } from '../hydraulics/pump';
import { pumpSetHead } from '../hydraulics/pumpFormulas';
import { FLOW, G, RHO } from '../hydraulics/terms';
import { SOURCES } from '../sources';
import { FALL_EXPONENT, LOST_AT_NPSH3, SUPPRESSION_RATIO } from './headLeft';

/** Head that keeps the liquid from boiling at the pump inlet. Datum: pump centreline. */
export const npshAvailableFormula = defineFormula({
  id: 'suction.npsh-available',
  expr: '(p_ambient + p_tank_gauge - p_vapour) / (rho * g) + z - h_suction',
  gives: { tex: '\\mathrm{NPSH_A}', quantity: 'head', name: 'suction head available' },
  terms: {
    p_ambient: { tex: 'p_a', quantity: 'pressure', name: 'pressure of the surrounding air' },
    p_tank_gauge: { tex: 'p_t', quantity: 'gaugePressure', name: 'reservoir above that' },
    p_vapour: {
      tex: 'p_v',
      quantity: 'pressure',
      name: 'vapour pressure at the inlet temperature',
    },
    rho: RHO,
    g: G,
    z: { tex: 'z', quantity: 'head', name: 'liquid level above the pump' },
    h_suction: { tex: 'h_s', quantity: 'head', name: 'head lost in the suction hose' },
  },
  source: SOURCES.iso9906,
});

/** What is left of it above the pump's need. */
export const suctionMarginFormula = defineFormula({
  id: 'suction.margin',
  expr: 'NPSH_A - NPSH_R',
  gives: { tex: 'm_s', quantity: 'head', name: 'suction margin' },
  terms: {
    NPSH_A: { tex: '\\mathrm{NPSH_A}', quantity: 'head', name: 'suction head available' },
    NPSH_R: { tex: '\\mathrm{NPSH_R}', quantity: 'head', name: 'suction head the pump needs' },
  },
  source: SOURCES.iso9906,
});

const AVAILABLE: Term = {
  tex: '\\mathrm{NPSH_A}',
  quantity: 'head',
  name: 'suction head available',
};
const REQUIRED: Term = {
  tex: '\\mathrm{NPSH_R}',
  quantity: 'head',
  name: 'suction head the pump needs (NPSH3)',
};

/** Liquid above the impeller's eye: `levelAboveEye`. */
export const levelAboveEyeFormula = defineFormula({
  id: 'suction.level-above-eye',
  expr: 'z_i + s * d',
  gives: { tex: 'z', quantity: 'length', name: 'liquid level above the impeller’s eye' },
  terms: {
    z_i: { tex: 'z_i', quantity: 'length', name: 'liquid level above the inlet port' },
    s: {
      tex: 's_i',
      quantity: 'count',
      name: '1 where the inlet faces up, 0 level, −1 where it faces down',
    },
    d: { tex: 'd_i', quantity: 'dimension', name: 'from the inlet port to the impeller’s eye' },
  },
  source: SOURCES.iso9906,
});

/** Total pressure that arrives at the eye: `inletPressure`. */
export const inletPressureFormula = defineFormula({
  id: 'suction.inlet-pressure',
  expr: 'p_ambient + p_tank_gauge + rho * g * (z - h_suction)',
  gives: { tex: 'p_i', quantity: 'pressure', name: 'pressure at the pump’s inlet' },
  terms: {
    p_ambient: { tex: 'p_a', quantity: 'pressure', name: 'pressure of the surrounding air' },
    p_tank_gauge: { tex: 'p_t', quantity: 'gaugePressure', name: 'reservoir above that' },
    rho: RHO,
    g: G,
    z: { tex: 'z', quantity: 'length', name: 'liquid level above the impeller’s eye' },
    h_suction: { tex: 'h_s', quantity: 'head', name: 'head lost in the suction hose' },
  },
  source: SOURCES.energyBalance,
});

/** What the pump needs where its maker gives points. One formula per pump, as it reads its points. */
export const requiredFromPoints = (at: (flow: number) => number) =>
  defineFormula({
    id: 'suction.required-from-points',
    expr: 'N(Q)',
    gives: REQUIRED,
    terms: { Q: FLOW },
    functions: {
      N: {
        tex: '\\mathrm{NPSH3}',
        says: 'suction head required at the flow in brackets: read from the pump’s points at the similar flow of one pump at rated speed, times the speed ratio squared',
        takes: ['volumeFlow'],
        gives: 'head',
        call: at,
      },
    },
    source: SOURCES.iso9906,
  });

/** What the pump needs where it is an estimate. */
export const requiredEstimate = defineFormula({
  id: 'suction.required-estimate',
  expr: 'N_e',
  gives: REQUIRED,
  terms: {
    N_e: { tex: '\\mathrm{NPSH}_e', quantity: 'head', name: 'estimate for every flow' },
  },
  source: SOURCES.commonPractice,
});

/** Share of the head left: `headLeft`. */
export const headLeftFormula = defineFormula({
  id: 'suction.head-left',
  expr: '1 - x_3^(max(0, NPSH_A / NPSH_R)^n)',
  gives: { tex: 'x_h', quantity: 'percent', name: 'share of the pump’s head that is left' },
  terms: {
    x_3: {
      tex: 'x_3',
      quantity: 'ratio',
      name: 'share lost at NPSH3, by definition',
      fixed: LOST_AT_NPSH3,
    },
    NPSH_A: AVAILABLE,
    NPSH_R: REQUIRED,
    n: { tex: 'n', quantity: 'ratio', name: 'steepness, our choice', fixed: FALL_EXPONENT },
  },
  source: SOURCES.npshFall,
});

/** Head of a pump set that loses some to its suction side: left side of the balance where that is counted. */
export const starvedSetHead = (pump: Pick<PumpModel, 'rated'>) => {
  const healthy = pumpSetHead(pump);
  return defineFormula({
    ...healthy,
    id: 'suction.starved-set-head',
    expr: `x_h * ${healthy.expr}`,
    terms: {
      ...healthy.terms,
      x_h: {
        tex: 'x_h',
        quantity: 'percent',
        name: 'share of its head that the suction side leaves',
      },
    },
  });
};

/** Suction head that would keep every bubble away, on average. */
export const suppressionFormula = defineFormula({
  id: 'suction.suppression',
  expr: 'k * NPSH_R',
  gives: {
    tex: '\\mathrm{NPSH}_i',
    quantity: 'head',
    name: 'suction head that suppresses cavitation altogether',
  },
  terms: {
    k: {
      tex: 'k_i',
      quantity: 'ratio',
      name: 'average over pumps; single pumps differ widely',
      fixed: SUPPRESSION_RATIO,
    },
    NPSH_R: REQUIRED,
  },
  source: SOURCES.budris2009,
});

/** How much warmer the liquid may get before the pump starts to lose head. */
export const degreesLeft = defineFormula({
  id: 'suction.degrees-left',
  expr: 'T_1 - T',
  gives: {
    tex: '\\Delta T_s',
    quantity: 'temperatureDifference',
    name: 'liquid below the temperature of the first loss',
  },
  terms: {
    T_1: { tex: 'T_1', quantity: 'temperature', name: 'temperature of the first loss' },
    T: { tex: 'T', quantity: 'temperature', name: 'liquid leaving the reservoir' },
  },
  source: SOURCES.definition,
});

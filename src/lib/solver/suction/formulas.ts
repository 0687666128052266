/** Formulas of the suction side, as the sheets show them. */
import { defineFormula } from '../formula';
import { G, RHO } from '../hydraulics/terms';
import { SOURCES } from '../sources';

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

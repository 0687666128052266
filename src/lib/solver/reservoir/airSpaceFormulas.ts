/** Lines of the air over the liquid: what expansion takes of it and what pressure is left to build. */
import { defineFormula, type Term } from '../formula';
import { SOURCES } from '../sources';
import { OTHER_LIQUID, TANK_LIQUID } from './capacityFormulas';

const AIR_SPACE: Term = { tex: 'V_a', quantity: 'volume', name: 'air space when filled' };
const GROWTH: Term = { tex: '\\Delta V', quantity: 'volume', name: 'growth of the liquid' };
const LEFT: Term = { tex: 'V_{a2}', quantity: 'volume', name: 'air space left when hot' };

export const airSpace = defineFormula({
  id: 'reservoir.air-space',
  expr: 'V_full - V_t',
  gives: AIR_SPACE,
  terms: {
    V_full: { tex: 'V_{t,0}', quantity: 'volume', name: 'full volume of the reservoir' },
    V_t: TANK_LIQUID,
  },
  source: SOURCES.definition,
});

/** Growth of all the liquid from one density to another; its mass stays. */
export const liquidGrowth = defineFormula({
  id: 'reservoir.liquid-growth',
  expr: '(V_t + V_o) * (rho_1 / rho_2 - 1)',
  gives: GROWTH,
  terms: {
    V_t: TANK_LIQUID,
    V_o: OTHER_LIQUID,
    rho_1: { tex: '\\rho_1', quantity: 'density', name: 'density when filled' },
    rho_2: { tex: '\\rho_2', quantity: 'density', name: 'density when hot' },
  },
  source: SOURCES.definition,
});

export const airSpaceLeft = defineFormula({
  id: 'reservoir.air-space-left',
  expr: 'V_a - dV',
  gives: LEFT,
  terms: { V_a: AIR_SPACE, dV: GROWTH },
  source: SOURCES.definition,
});

/**
 * Gauge pressure over the liquid when the cap keeps everything in: the air closed in at the filling is
 * squeezed and heated, and vapour adds its own pressure.
 */
export const sealedGauge = defineFormula({
  id: 'reservoir.sealed-gauge',
  expr: '(p_a - p_v1) * V_a / V_a2 * T_2 / T_1 + p_v2 - p_a',
  gives: { tex: 'p_t', quantity: 'gaugePressure', name: 'pressure in the sealed tank, gauge' },
  terms: {
    p_a: { tex: 'p_a', quantity: 'pressure', name: 'pressure of the surrounding air' },
    p_v1: { tex: 'p_{v1}', quantity: 'pressure', name: 'vapour pressure when filled' },
    V_a: AIR_SPACE,
    V_a2: LEFT,
    T_2: { tex: 'T_2', quantity: 'absoluteTemperature', name: 'temperature when hot' },
    T_1: { tex: 'T_1', quantity: 'absoluteTemperature', name: 'temperature when filled' },
    p_v2: { tex: 'p_{v2}', quantity: 'pressure', name: 'vapour pressure when hot' },
  },
  source: SOURCES.idealGasMixture,
});

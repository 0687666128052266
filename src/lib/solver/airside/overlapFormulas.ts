/** Formulas of a face that other cores cover in part, as the sheets show them. */
import { defineFormula, type Term } from '../formula';
import { SOURCES } from '../sources';
import { FACE, RHO, U } from './terms';

const COVERED_SHARE: Term = {
  tex: '\\varphi',
  quantity: 'percent',
  name: 'share of the face that other cores cover',
};
const COVERED_U: Term = { ...U, tex: 'u_c', name: 'face velocity where covered' };
const CLEAR_U: Term = { ...U, tex: 'u_u', name: 'face velocity where clear' };
const COVERED_MASS = {
  tex: '\\dot m_c',
  quantity: 'airMassFlow',
  name: 'air through the covered share',
} as const satisfies Term;
const COVERED_RISE = {
  tex: '\\Delta T_c',
  quantity: 'temperatureDifference',
  name: 'rise of the covered air by other cores',
} as const satisfies Term;
const HEAT: Term = { tex: '\\dot Q_s', quantity: 'heat', name: 'heat of the other cores' };
const CP: Term = { tex: 'c_p', quantity: 'specificHeat', name: 'specific heat of air' };
const BACK: Term = { tex: 'r', quantity: 'ratio', name: 'share of hot air that comes round again' };

/** Loss on the clear path: the core alone. */
export const clearPathLoss = defineFormula({
  id: 'airside.clear-path-loss',
  expr: 'dp_core',
  gives: { tex: 'p_{clear}', quantity: 'airPressure', name: 'pressure lost where clear' },
  terms: {
    dp_core: { tex: '\\Delta p_{core}', quantity: 'airPressure', name: 'lost in the core' },
  },
  source: SOURCES.definition,
});

/** Velocity over both paths. */
export const overlapVelocity = defineFormula({
  id: 'airside.overlap-velocity',
  expr: 'phi * u_c + (1 - phi) * u_u',
  gives: U,
  terms: { phi: COVERED_SHARE, u_c: COVERED_U, u_u: CLEAR_U },
  source: SOURCES.definition,
});

/** Velocity of the covered paths over shrouded and open face. */
export const coveredFaceVelocity = defineFormula({
  id: 'airside.covered-face-velocity',
  expr: 'u_cs * x + u_co * (1 - x)',
  gives: COVERED_U,
  terms: {
    u_cs: { ...U, tex: 'u_{c,s}', name: 'face velocity where covered, behind the shroud' },
    u_co: { ...U, tex: 'u_{c,o}', name: 'face velocity where covered, open face' },
    x: { tex: 'x', quantity: 'ratio', name: 'share of the face behind the shroud' },
  },
  source: SOURCES.definition,
});

/** Air that passes the other cores. */
export const coveredMassFlow = defineFormula({
  id: 'airside.covered-mass-flow',
  expr: 'rho * u_c * A * phi',
  gives: COVERED_MASS,
  terms: { rho: RHO, u_c: COVERED_U, A: FACE, phi: COVERED_SHARE },
  source: SOURCES.definition,
});

/** How much cores in front warm the air they cover. */
export const coveredRise = defineFormula({
  id: 'airside.covered-rise',
  expr: 'Q_s / (m_c * cp)',
  gives: COVERED_RISE,
  terms: { Q_s: HEAT, m_c: COVERED_MASS, cp: CP },
  source: SOURCES.energyBalance,
});

/** What of the heat of cores behind comes round again. */
export const riseComingRound = defineFormula({
  id: 'airside.rise-coming-round',
  expr: 'r / (1 - r) * Q_s / (m_c * cp)',
  gives: COVERED_RISE,
  terms: { r: BACK, Q_s: HEAT, m_c: COVERED_MASS, cp: CP },
  source: SOURCES.energyBalance,
});

/** The covered air's rise spread over all the air. */
export const riseMixed = defineFormula({
  id: 'airside.rise-mixed',
  expr: 'dT_c * m_c / m_a',
  gives: {
    tex: '\\Delta T_{stack}',
    quantity: 'temperatureDifference',
    name: 'rise of the air by other cores, all air together',
  },
  terms: {
    dT_c: COVERED_RISE,
    m_c: COVERED_MASS,
    m_a: { tex: '\\dot m_a', quantity: 'airMassFlow', name: 'air mass flow' },
  },
  source: SOURCES.energyBalance,
});

/** Formulas of the whole face, as the sheets show them. */
import { defineFormula, type Term } from '../formula';
import { SOURCES } from '../sources';
import { RHO, SHARE, U } from './terms';

const MASS: Term = { tex: '\\dot m_a', quantity: 'airMassFlow', name: 'air mass flow' };

/** Mean over shrouded and open face. */
export const meanFaceVelocity = defineFormula({
  id: 'airside.mean-face-velocity',
  expr: 'u_s * x + u_o * (1 - x)',
  gives: { tex: '\\bar u', quantity: 'faceVelocity', name: 'mean face velocity' },
  terms: {
    u_s: { ...U, tex: 'u_s', name: 'face velocity behind the shroud' },
    u_o: { ...U, tex: 'u_o', name: 'face velocity of the open face' },
    x: { ...SHARE, name: 'share of the face behind the shroud' },
  },
  source: SOURCES.definition,
});

/** Air through the whole face. */
export const faceMassFlow = defineFormula({
  id: 'airside.face-mass-flow',
  expr: 'rho * u * A',
  gives: MASS,
  terms: {
    rho: RHO,
    u: { ...U, tex: '\\bar u', name: 'mean face velocity' },
    A: { tex: 'A', quantity: 'area', name: 'face of the core' },
  },
  source: SOURCES.definition,
});

/** What the air can carry off per kelvin. */
export const airCapacityRate = defineFormula({
  id: 'airside.capacity-rate',
  expr: 'm_a * cp',
  gives: { tex: 'C_a', quantity: 'conductance', name: 'capacity rate of the air' },
  terms: {
    m_a: MASS,
    cp: { tex: 'c_p', quantity: 'specificHeat', name: 'specific heat of air' },
  },
  source: SOURCES.definition,
});

/** Air flow of a part of the face. */
export const zoneAirFlow = defineFormula({
  id: 'airside.zone-air-flow',
  expr: 'u * A * x',
  gives: { tex: '\\dot V', quantity: 'airFlow', name: 'air flow' },
  terms: { u: U, A: { tex: 'A', quantity: 'area', name: 'face of the core' }, x: SHARE },
  source: SOURCES.definition,
});

/** Air at the face: warmed by the other cores and by hot air that comes round again. */
export const airAtFace = defineFormula({
  id: 'airside.air-at-face',
  expr: 'T_a + dT_stack + r / (1 - r) * Q_f / C_a',
  gives: { tex: 'T_f', quantity: 'temperature', name: 'air at the face of the core' },
  terms: {
    T_a: { tex: 'T_a', quantity: 'temperature', name: 'ambient air' },
    dT_stack: {
      tex: '\\Delta T_{stack}',
      quantity: 'temperatureDifference',
      name: 'rise by the other cores',
    },
    r: { tex: 'r', quantity: 'ratio', name: 'share of hot air that comes round again' },
    Q_f: { tex: '\\dot Q_f', quantity: 'heat', name: 'heat given off by the front exchanger' },
    C_a: { tex: 'C_a', quantity: 'conductance', name: 'capacity rate of the air' },
  },
  source: SOURCES.energyBalance,
});

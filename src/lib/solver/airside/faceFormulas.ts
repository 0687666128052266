/** Formulas of the face of the front exchanger, as the sheets show them. */
import { defineFormula, type Term } from '../formula';
import { SOURCES } from '../sources';
import { FACE, RHO, SHARE, U } from './terms';

const SPEED: Term = { tex: 'v', quantity: 'speed', name: 'vehicle speed' };

/** What the vehicle's own speed pushes with. */
export const ramPressure = defineFormula({
  id: 'airside.ram-pressure',
  expr: 'k * rho * v^2 / 2',
  gives: { tex: 'p_{ram}', quantity: 'airPressure', name: 'ram pressure across the stack' },
  terms: {
    k: { tex: 'k', quantity: 'ratio', name: 'share of the stagnation pressure left' },
    rho: RHO,
    v: SPEED,
  },
  source: SOURCES.definition,
});

/** Face of the core. */
export const faceArea = defineFormula({
  id: 'airside.face-area',
  expr: 'w * h',
  gives: FACE,
  terms: {
    w: { tex: 'w', quantity: 'length', name: 'width of the core' },
    h: { tex: 'h', quantity: 'length', name: 'height of the core' },
  },
  source: SOURCES.definition,
});

/** What drives the air: left side of the balance. */
export const drivingPressure = defineFormula({
  id: 'airside.driving-pressure',
  expr: 'p_ram + dp_fan',
  gives: { tex: 'p_{drive}', quantity: 'airPressure', name: 'pressure that drives the air' },
  terms: {
    p_ram: { tex: 'p_{ram}', quantity: 'airPressure', name: 'ram pressure' },
    dp_fan: { tex: '\\Delta p_{fan}', quantity: 'airPressure', name: 'pressure of the fan' },
  },
  source: SOURCES.definition,
});

/** What holds it back: right side of the balance. */
export const resistingPressure = defineFormula({
  id: 'airside.resisting-pressure',
  expr: 'dp_core + dp_stack',
  gives: { tex: 'p_{lost}', quantity: 'airPressure', name: 'pressure lost in core and stack' },
  terms: {
    dp_core: { tex: '\\Delta p_{core}', quantity: 'airPressure', name: 'lost in the core' },
    dp_stack: {
      tex: '\\Delta p_{stack}',
      quantity: 'airPressure',
      name: 'lost in the other cores',
    },
  },
  source: SOURCES.definition,
});

/** Face velocity from the air flow of a zone. */
export const faceVelocity = defineFormula({
  id: 'airside.face-velocity',
  expr: 'Q_a / (A * x)',
  gives: U,
  terms: {
    Q_a: { tex: '\\dot V', quantity: 'airFlow', name: 'air flow' },
    A: FACE,
    x: SHARE,
  },
  source: SOURCES.definition,
});

/** Air mass through a zone of the face. */
export const airMassFlow = defineFormula({
  id: 'airside.mass-flow',
  expr: 'rho * u * A * x',
  gives: { tex: '\\dot m_a', quantity: 'airMassFlow', name: 'air mass flow' },
  terms: { rho: RHO, u: U, A: FACE, x: SHARE },
  source: SOURCES.definition,
});

/** How much the other cores warms the air. */
export const stackRise = defineFormula({
  id: 'airside.stack-rise',
  expr: 'Q_s / (m_a * cp)',
  gives: {
    tex: '\\Delta T_{stack}',
    quantity: 'temperatureDifference',
    name: 'rise of the air by the other cores',
  },
  terms: {
    Q_s: { tex: '\\dot Q_s', quantity: 'heat', name: 'heat of the other cores' },
    m_a: { tex: '\\dot m_a', quantity: 'airMassFlow', name: 'air mass flow' },
    cp: { tex: 'c_p', quantity: 'specificHeat', name: 'specific heat of air' },
  },
  source: SOURCES.energyBalance,
});

/** Share of hot air that comes round again; fades out as the vehicle moves. */
export const recirculation = defineFormula({
  id: 'airside.recirculation',
  expr: 'r_0 * max(0, 1 - v / v_f)',
  gives: { tex: 'r', quantity: 'ratio', name: 'share of hot air that comes round again' },
  terms: {
    r_0: { tex: 'r_0', quantity: 'ratio', name: 'that share at standstill' },
    v: SPEED,
    v_f: { tex: 'v_f', quantity: 'speed', name: 'speed at which it has faded out' },
  },
  source: SOURCES.commonPractice,
});

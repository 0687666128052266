/** Formulas of the air side, as the sheets show them. */
import { defineFormula, type Term } from '../formula';
import { SOURCES } from '../sources';
import { STANDARD_AIR_DENSITY, type FanModel } from './fan';

const RHO: Term = { tex: '\\rho', quantity: 'density', name: 'air density' };
const FACE: Term = { tex: 'A', quantity: 'area', name: 'face of the core' };
const SHARE: Term = { tex: 'x', quantity: 'ratio', name: 'share of the face' };
const U: Term = { tex: 'u', quantity: 'faceVelocity', name: 'face velocity' };
const FAN_FLOW: Term = { tex: 'q', quantity: 'airFlow', name: 'air flow of one fan' };
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

/** Air through one fan behind a shroud. */
export const fanFlow = defineFormula({
  id: 'airside.fan-flow',
  expr: 'u * A * x / n',
  gives: FAN_FLOW,
  terms: { u: U, A: FACE, x: SHARE, n: { tex: 'n', quantity: 'count', name: 'number of fans' } },
  source: SOURCES.definition,
});

/** Pressure of a running fan up to free delivery. One formula per fan, as it reads that fan's curve. */
export const fanPressure = (fan: Pick<FanModel, 'rated'>) =>
  defineFormula({
    id: 'airside.fan-pressure',
    expr: 's^2 * rho / rho_0 * P_1(q / s)',
    gives: { tex: '\\Delta p_{fan}', quantity: 'airPressure', name: 'pressure of the fan' },
    terms: {
      s: { tex: 's', quantity: 'ratio', name: 'fan speed over rated speed' },
      rho: RHO,
      rho_0: {
        tex: '\\rho_0',
        quantity: 'density',
        name: 'density of standard air',
        fixed: STANDARD_AIR_DENSITY,
      },
      q: FAN_FLOW,
    },
    functions: {
      P_1: {
        tex: 'P_1',
        says: 'pressure of one fan at rated speed in standard air, read from its curve at the flow in brackets',
        call: (flow) => fan.rated.value(flow),
      },
    },
    source: SOURCES.fanLaws,
  });

/** Pressure a fan takes when air is driven through it past free delivery (0 for a standing fan). */
export const drivenFanPressure = defineFormula({
  id: 'airside.driven-fan-pressure',
  expr: '-(K * rho / 2 * (q^2 - q_0^2) / A_d^2)',
  gives: { tex: '\\Delta p_{fan}', quantity: 'airPressure', name: 'pressure of the fan' },
  terms: {
    K: { tex: '\\zeta', quantity: 'ratio', name: 'loss coefficient of the driven fan' },
    rho: RHO,
    q: FAN_FLOW,
    q_0: { tex: 'q_0', quantity: 'airFlow', name: 'free delivery at this speed' },
    A_d: { tex: 'A_d', quantity: 'area', name: 'swept disc of one fan' },
  },
  source: SOURCES.commonPractice,
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
      name: 'lost in what stands in front',
    },
  },
  source: SOURCES.definition,
});

const RATED = {
  u: U,
  u_r: { tex: 'u_r', quantity: 'faceVelocity', name: 'face velocity at the rating' },
  rho: RHO,
  rho_r: {
    tex: '\\rho_0',
    quantity: 'density',
    name: 'density of standard air',
    fixed: STANDARD_AIR_DENSITY,
  },
  mu: { tex: '\\mu', quantity: 'viscosity', name: 'viscosity of the air' },
  mu_r: { tex: '\\mu_0', quantity: 'viscosity', name: 'viscosity of standard air' },
} as const satisfies Record<string, Term>;

const CORE_LOSS = {
  tex: '\\Delta p_{core}',
  quantity: 'airPressure',
  name: 'air pressure lost in the core',
} as const;

/** Air-side loss of a core known by one rating point. */
export const airLossPower = defineFormula({
  id: 'airside.loss-power',
  expr: 'dp_r * (u / u_r)^n * (rho / rho_r)^(n - 1) * (mu / mu_r)^(2 - n)',
  gives: CORE_LOSS,
  terms: {
    dp_r: { tex: '\\Delta p_r', quantity: 'airPressure', name: 'rated loss' },
    n: { tex: 'n', quantity: 'ratio', name: 'exponent, 1 laminar to 2 turbulent' },
    ...RATED,
  },
  source: SOURCES.commonPractice,
});

/** Air-side loss of a core known by two or more rating points. */
export const airLossTwoPart = defineFormula({
  id: 'airside.loss-two-part',
  expr: 'dp_1 * u / u_r * mu / mu_r + dp_2 * (u / u_r)^2 * rho / rho_r',
  gives: CORE_LOSS,
  terms: {
    dp_1: {
      tex: '\\Delta p_1',
      quantity: 'airPressure',
      name: 'part of the loss that goes with velocity, at the rated one',
    },
    dp_2: {
      tex: '\\Delta p_2',
      quantity: 'airPressure',
      name: 'part that goes with velocity squared, at the rated one',
    },
    ...RATED,
  },
  source: SOURCES.commonPractice,
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

/** How much what stands in front warms the air. */
export const stackRise = defineFormula({
  id: 'airside.stack-rise',
  expr: 'Q_s / (m_a * cp)',
  gives: {
    tex: '\\Delta T_{stack}',
    quantity: 'temperatureDifference',
    name: 'rise of the air by what stands in front',
  },
  terms: {
    Q_s: { tex: '\\dot Q_s', quantity: 'heat', name: 'heat of what stands in front' },
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

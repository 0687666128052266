/** Lines of a core from its measures: areas, the air side, the liquid side, what they make together. */
import { defineFormula, type Formula } from '../../formula';
import { SOURCES } from '../../sources';
import { END_LOSS } from './airSide';
import { FRICTION_SWITCH, type LouveredFin } from './louveredFin';
import { ENDS_PER_PASS, PORTS } from './tubeSide';

const length = (tex: string, name: string) => ({ tex, quantity: 'dimension', name }) as const;
const small = (tex: string, name: string) => ({ tex, quantity: 'bore', name }) as const;
const area = (tex: string, name: string) => ({ tex, quantity: 'area', name }) as const;
const number = (tex: string, name: string) => ({ tex, quantity: 'ratio', name }) as const;
const conductance = (tex: string, name: string) =>
  ({ tex, quantity: 'conductance', name }) as const;

const run = length('L', 'length of a tube between the end tanks');
const depth = length('T_d', 'depth of the core along the air');
const finHeight = small('F_l', 'fin height, tube to tube');
const tubeHeight = small('D_m', 'tube height outside');
const thickness = small('\\delta', 'thickness of the fins');
const density = { tex: 'n_f', quantity: 'finDensity', name: 'fins per length' } as const;
const tubes = { tex: 'N', quantity: 'count', name: 'tubes' } as const;
const finArea = area('A_f', 'both faces of all fins');
const bareArea = area('A_b', 'bare tube between the fins');
const airArea = area('A', 'all that the air touches');
const freeArea = area('A_c', 'free flow area between the fins');
const G = {
  tex: 'G',
  quantity: 'massVelocity',
  name: 'mass flow of air per free flow area',
} as const;
const mu = { tex: '\\mu', quantity: 'viscosity', name: 'viscosity' } as const;
const cp = { tex: 'c_p', quantity: 'specificHeat', name: 'specific heat' } as const;
const Pr = number('Pr', 'Prandtl number');
const Re = number('Re', 'Reynolds number on the louver pitch');
const j = number('j', 'Colburn factor');
const f = number('f', 'Fanning friction factor');
const h = {
  tex: 'h',
  quantity: 'heatTransferCoefficient',
  name: 'heat transfer coefficient of the air',
} as const;
const hLiquid = { ...h, tex: 'h_l', name: 'heat transfer coefficient of the liquid' } as const;
const k = { tex: 'k', quantity: 'conductivity', name: 'conductivity' } as const;
const velocity = { tex: 'V', quantity: 'velocity', name: 'velocity in the tubes' } as const;
const passArea = area('A_p', 'inside of the tubes of one pass');
const D = small('D', 'hydraulic diameter inside a tube');

/** How many tubes fit: whole ones are counted. */
export const tubesThatFit = defineFormula({
  id: 'geometry.tubes',
  expr: '(H - F_l) / (F_l + D_m)',
  gives: number('N', 'tubes that fit, counted whole'),
  terms: { H: length('H', 'height of the stack'), F_l: finHeight, D_m: tubeHeight },
  source: SOURCES.definition,
});

export const finAreaFormula = defineFormula({
  id: 'geometry.fin-area',
  expr: '2 * n_f * L * (N + 1) * F_l * T_d',
  gives: finArea,
  terms: { n_f: density, L: run, N: tubes, F_l: finHeight, T_d: depth },
  source: SOURCES.definition,
});

export const bareAreaFormula = defineFormula({
  id: 'geometry.bare-area',
  expr: '2 * N * L * T_d * (1 - n_f * delta)',
  gives: bareArea,
  terms: { N: tubes, L: run, T_d: depth, n_f: density, delta: thickness },
  source: SOURCES.definition,
});

export const freeAreaFormula = defineFormula({
  id: 'geometry.free-area',
  expr: '(N + 1) * F_l * L * (1 - n_f * delta)',
  gives: freeArea,
  terms: { N: tubes, F_l: finHeight, L: run, n_f: density, delta: thickness },
  source: SOURCES.definition,
});

export const airDiameterFormula = defineFormula({
  id: 'geometry.air-diameter',
  expr: '4 * A_c * T_d / (A_f + A_b)',
  gives: small('D_h', 'hydraulic diameter of the air passages'),
  terms: { A_c: freeArea, T_d: depth, A_f: finArea, A_b: bareArea },
  source: SOURCES.kaysLondon,
});

export const massVelocityFormula = defineFormula({
  id: 'geometry.mass-velocity',
  expr: 'm / A_c',
  gives: G,
  terms: {
    m: { tex: '\\dot m_a', quantity: 'airMassFlow', name: 'air through the core' },
    A_c: freeArea,
  },
  source: SOURCES.definition,
});

export const airReynolds = defineFormula({
  id: 'geometry.air-reynolds',
  expr: 'G * L_r / mu',
  gives: number('Re', 'Reynolds number of the air'),
  terms: { G, L_r: small('L_r', 'length it is told on'), mu },
  source: SOURCES.definition,
});

export const louverColburn = defineFormula({
  id: 'geometry.louver-j',
  expr: 'Re^(-0.49) * (theta / 90)^0.27 * (F_p / L_p)^(-0.14) * (F_l / L_p)^(-0.29) * (T_d / L_p)^(-0.23) * (L_l / L_p)^0.68 * (T_p / L_p)^(-0.28) * (delta / L_p)^(-0.05)',
  gives: j,
  terms: {
    Re,
    theta: number('\\theta', 'louver angle in degrees'),
    F_p: small('F_p', 'fin pitch'),
    L_p: small('L_p', 'louver pitch'),
    F_l: finHeight,
    T_d: depth,
    L_l: small('L_l', 'louver length'),
    T_p: small('T_p', 'tube pitch'),
    delta: thickness,
  },
  source: SOURCES.changWang1997,
});

export const stripColburn = defineFormula({
  id: 'geometry.strip-j',
  expr: '0.6522 * Re^(-0.5403) * a^(-0.1541) * d^0.1499 * g^(-0.0678) * (1 + 5.269e-5 * Re^1.34 * a^0.504 * d^0.456 * g^(-1.055))^0.1',
  gives: j,
  terms: {
    Re: { ...Re, name: 'Reynolds number on the hydraulic diameter' },
    a: number('\\alpha', 'gap between fins over fin height'),
    d: number('\\delta', 'fin thickness over strip length'),
    g: number('\\gamma', 'fin thickness over gap'),
  },
  source: SOURCES.manglikBergles1995,
});

export const ductColburn = defineFormula({
  id: 'geometry.plain-j',
  expr: 'Nu / (Re * Pr^(1/3))',
  gives: j,
  terms: { Nu: number('Nu', 'Nusselt number of the passage'), Re, Pr },
  source: SOURCES.shahLondon1978,
});

export const coefficientFromColburn = defineFormula({
  id: 'geometry.air-coefficient',
  expr: 'j * G * c_p / Pr^(2/3)',
  gives: h,
  terms: { j, G, c_p: cp, Pr },
  source: SOURCES.kaysLondon,
});

export const finParameter = defineFormula({
  id: 'geometry.fin-parameter',
  expr: 'sqrt(2 * h / (k * delta)) * F_l / 2',
  gives: number('ml', 'how hard the fin is worked'),
  terms: { h, k: { ...k, name: 'conductivity of the fin' }, delta: thickness, F_l: finHeight },
  source: SOURCES.bergman3,
});

/** tanh(x)/x, written with exponentials. */
export const finEfficiencyFormula = defineFormula({
  id: 'geometry.fin-efficiency',
  expr: '(1 - exp(-2 * x)) / ((1 + exp(-2 * x)) * x)',
  gives: number('\\eta_f', 'efficiency of a fin'),
  terms: { x: number('ml', 'how hard the fin is worked') },
  source: SOURCES.bergman3,
});

export const surfaceEfficiencyFormula = defineFormula({
  id: 'geometry.surface-efficiency',
  expr: '1 - A_f / (A_f + A_b) * (1 - eta_f)',
  gives: number('\\eta_o', 'efficiency of the whole surface'),
  terms: { A_f: finArea, A_b: bareArea, eta_f: number('\\eta_f', 'efficiency of a fin') },
  source: SOURCES.kaysLondon,
});

export const airConductanceFormula = defineFormula({
  id: 'geometry.air-conductance',
  expr: 'eta_o * h * (A_f + A_b)',
  gives: conductance('hA_a', 'conductance of the air side'),
  terms: {
    eta_o: number('\\eta_o', 'efficiency of the whole surface'),
    h,
    A_f: finArea,
    A_b: bareArea,
  },
  source: SOURCES.kaysLondon,
});

export const airPressureFormula = defineFormula({
  id: 'geometry.air-pressure',
  expr: 'G^2 / (2 * rho) * (f * A / A_c + K)',
  gives: { tex: '\\Delta p_a', quantity: 'airPressure', name: 'pressure the air loses' },
  terms: {
    G,
    rho: { tex: '\\rho', quantity: 'density', name: 'density of the air' },
    f,
    A: airArea,
    A_c: freeArea,
    K: { ...number('K', 'entering and leaving'), fixed: END_LOSS },
  },
  source: SOURCES.kaysLondon,
});

export const tubeVelocity = defineFormula({
  id: 'geometry.tube-velocity',
  expr: 'Q / A_p',
  gives: velocity,
  terms: { Q: { tex: '\\dot V', quantity: 'volumeFlow', name: 'liquid flow' }, A_p: passArea },
  source: SOURCES.definition,
});

export const tubeReynolds = defineFormula({
  id: 'geometry.tube-reynolds',
  expr: 'rho * V * D / mu',
  gives: number('Re_l', 'Reynolds number of the liquid'),
  terms: {
    rho: { tex: '\\rho', quantity: 'density', name: 'density of the liquid' },
    V: velocity,
    D,
    mu,
  },
  source: SOURCES.definition,
});

export const tubeCoefficient = defineFormula({
  id: 'geometry.tube-coefficient',
  expr: 'Nu * k / D',
  gives: hLiquid,
  terms: {
    Nu: number('Nu', 'Nusselt number of the passage'),
    k: { ...k, name: 'conductivity of the liquid' },
    D,
  },
  source: SOURCES.definition,
});

export const tubeConductance = defineFormula({
  id: 'geometry.tube-conductance',
  expr: 'h_l * A_l',
  gives: conductance('hA_l', 'conductance of the liquid side'),
  terms: { h_l: hLiquid, A_l: area('A_l', 'inside of all tubes') },
  source: SOURCES.kaysLondon,
});

export const tubePressure = defineFormula({
  id: 'geometry.tube-pressure',
  expr: 'rho / 2 * (n * (f * L / D + K) * V^2 + K_p * V_p^2)',
  gives: { tex: '\\Delta p_l', quantity: 'pressureDrop', name: 'pressure the liquid loses' },
  terms: {
    rho: { tex: '\\rho', quantity: 'density', name: 'density of the liquid' },
    n: { tex: 'n', quantity: 'count', name: 'passes' },
    f: number('f', 'Darcy friction factor'),
    L: run,
    D,
    K: { ...number('K', 'into and out of the tubes, each pass'), fixed: ENDS_PER_PASS },
    V: velocity,
    K_p: { ...number('K_p', 'both ports'), fixed: PORTS },
    V_p: { ...velocity, tex: 'V_p', name: 'velocity in the ports' },
  },
  source: SOURCES.darcyWeisbach,
});

export const coreConductance = defineFormula({
  id: 'geometry.conductance',
  expr: '1 / (1 / hA_a + R_w + 1 / hA_l)',
  gives: conductance('UA', 'conductance of the core'),
  terms: {
    hA_a: conductance('hA_a', 'air side'),
    R_w: { tex: 'R_w', quantity: 'thermalResistance', name: 'tube walls' },
    hA_l: conductance('hA_l', 'liquid side'),
  },
  source: SOURCES.kaysLondon,
});

/** What the measures say of what the seller says. */
export const measuresOverRating = defineFormula({
  id: 'geometry.measures-over-rating',
  expr: 'UA / UA_r',
  gives: {
    tex: 'x_{UA}',
    quantity: 'percent',
    name: 'conductance by measures, of that of the rating',
  },
  terms: {
    UA: conductance('UA', 'conductance of the core'),
    UA_r: conductance('UA_r', 'conductance at the rating'),
  },
  source: SOURCES.definition,
});

// ---------------------------------------------------------------- friction of the fins

export const stripFriction = defineFormula({
  id: 'geometry.strip-f',
  expr: '9.6243 * Re^(-0.7422) * a^(-0.1856) * d^0.3053 * g^(-0.2659) * (1 + 7.669e-8 * Re^4.429 * a^0.92 * d^3.767 * g^0.236)^0.1',
  gives: f,
  terms: stripColburn.terms,
  source: SOURCES.manglikBergles1995,
});

const angle = number('\\theta', 'louver angle in degrees');
const finPitch = small('F_p', 'fin pitch');
const louverPitch = small('L_p', 'louver pitch');
const louverLength = small('L_l', 'louver length');
const tubePitch = small('T_p', 'tube pitch');
const airDiameter = small('D_h', 'hydraulic diameter of the air passages');

/** The three factors of the friction law below Re 150. */
const slowFactors = [
  defineFormula({
    id: 'geometry.louver-f1-slow',
    expr: '14.39 * Re^(-0.805 * F_p / F_l) * log(1 + F_p / L_p)^3.04',
    gives: number('f_1', 'first factor'),
    terms: { Re, F_p: finPitch, F_l: finHeight, L_p: louverPitch },
    source: SOURCES.chang2000,
  }),
  defineFormula({
    id: 'geometry.louver-f2-slow',
    expr: 'log((delta / F_p)^0.48 + 0.9)^(-1.435) * (D_h / L_p)^(-3.01) * log(0.5 * Re)^(-3.01)',
    gives: number('f_2', 'second factor'),
    terms: { Re, delta: thickness, F_p: finPitch, D_h: airDiameter, L_p: louverPitch },
    source: SOURCES.chang2000,
  }),
  defineFormula({
    id: 'geometry.louver-f3-slow',
    expr: '(F_p / L_l)^(-0.308) * (T_d / L_l)^(-0.308) * exp(-0.1167 * T_p / D_m) * theta^0.35',
    gives: number('f_3', 'third factor'),
    terms: {
      F_p: finPitch,
      L_l: louverLength,
      T_d: depth,
      T_p: tubePitch,
      D_m: tubeHeight,
      theta: angle,
    },
    source: SOURCES.chang2000,
  }),
];

/** The three factors from Re 150 up. */
const fastFactors = [
  defineFormula({
    id: 'geometry.louver-f1-fast',
    expr: '4.97 * Re^(0.6049 - 1.064 / theta^0.2) * log((delta / F_p)^0.5 + 0.9)^(-0.527)',
    gives: number('f_1', 'first factor'),
    terms: { Re, theta: angle, delta: thickness, F_p: finPitch },
    source: SOURCES.chang2000,
  }),
  defineFormula({
    id: 'geometry.louver-f2-fast',
    expr: '(D_h / L_p * log(0.3 * Re))^(-2.966) * (F_p / L_l)^(-0.7931 * T_p / F_l)',
    gives: number('f_2', 'second factor'),
    terms: {
      Re,
      D_h: airDiameter,
      L_p: louverPitch,
      F_p: finPitch,
      L_l: louverLength,
      T_p: tubePitch,
      F_l: finHeight,
    },
    source: SOURCES.chang2000,
  }),
  defineFormula({
    id: 'geometry.louver-f3-fast',
    expr: '(T_p / D_m)^(-0.0446) * log(1.2 + (L_p / F_p)^1.4)^(-3.553) * theta^(-0.477)',
    gives: number('f_3', 'third factor'),
    terms: {
      T_p: tubePitch,
      D_m: tubeHeight,
      L_p: louverPitch,
      F_p: finPitch,
      theta: angle,
    },
    source: SOURCES.chang2000,
  }),
];

const product = defineFormula({
  id: 'geometry.louver-f',
  expr: 'f_1 * f_2 * f_3',
  gives: f,
  terms: {
    f_1: number('f_1', 'first factor'),
    f_2: number('f_2', 'second factor'),
    f_3: number('f_3', 'third factor'),
  },
  source: SOURCES.chang2000,
});

/** The friction law of louvered fins as lines: three factors of the form that holds, and their product. */
export function louverFriction(Reynolds: number, fin: LouveredFin) {
  const x = {
    Re: Reynolds,
    theta: fin.louverAngleDegrees,
    F_p: fin.finPitch,
    F_l: fin.finHeight,
    L_p: fin.louverPitch,
    L_l: fin.louverLength,
    T_d: fin.flowDepth,
    T_p: fin.tubePitch,
    D_m: fin.tubeHeight,
    D_h: fin.hydraulicDiameter,
    delta: fin.finThickness,
  };
  const form = Reynolds < FRICTION_SWITCH ? slowFactors : fastFactors;
  const [f_1, f_2, f_3] = form.map((formula) => formula.value(x));
  const which = ['first', 'second', 'third'];
  return [
    ...form.map((formula, i) => ({
      key: `friction-${i + 1}`,
      says: `friction of its fins, ${which[i]!} factor`,
      formula: formula as Formula,
      x,
    })),
    {
      key: 'friction',
      says: 'friction factor of its louvered fins',
      formula: product as Formula,
      x: { f_1: f_1!, f_2: f_2!, f_3: f_3! },
    },
  ];
}

/** Lines the sheets show of a core: its rating, its conductance at other flows, what it carries. */
import { defineFormula } from '../formula';
import { SOURCES } from '../sources';

const UA = { tex: 'UA', quantity: 'conductance', name: 'overall conductance' } as const;
export const ratedUA = {
  tex: 'UA_r',
  quantity: 'conductance',
  name: 'conductance at the rating',
} as const;
const cMin = { tex: 'C_{min}', quantity: 'conductance', name: 'smaller capacity rate' } as const;
const cMax = { tex: 'C_{max}', quantity: 'conductance', name: 'larger capacity rate' } as const;
const ntuTerm = { tex: 'NTU', quantity: 'ratio', name: 'number of transfer units' } as const;
const eps = { tex: '\\varepsilon', quantity: 'ratio', name: 'effectiveness' } as const;
const hotIn = { tex: 'T_{h,in}', quantity: 'temperature', name: 'hot stream in' } as const;
const coldIn = { tex: 'T_{c,in}', quantity: 'temperature', name: 'cold stream in' } as const;
const hAAirTerm = { tex: 'hA_a', quantity: 'conductance', name: 'air side' } as const;
const hALiquidTerm = { tex: 'hA_l', quantity: 'conductance', name: 'liquid side' } as const;
export const airShare = {
  tex: 's_a',
  quantity: 'ratio',
  name: 'share of the thermal resistance on the air side at the rating',
} as const;
const rho = { tex: '\\rho', quantity: 'density', name: 'density of the liquid' } as const;
const flow = { tex: '\\dot V', quantity: 'volumeFlow', name: 'liquid flow' } as const;
const cp = { tex: 'c_p', quantity: 'specificHeat', name: 'specific heat of the liquid' } as const;
const mu = { tex: '\\mu', quantity: 'viscosity', name: 'viscosity of the liquid' } as const;
const k = { tex: 'k', quantity: 'conductivity', name: 'conductivity of the liquid' } as const;
const reRatio = {
  tex: 'x_{Re}',
  quantity: 'ratio',
  name: 'Reynolds number over its value at the rating',
} as const;

// ---------------------------------------------------------------- rating

export const effectivenessFromHeat = defineFormula({
  id: 'cores.effectiveness-from-heat',
  expr: 'Q / (C_min * (T_hot - T_cold))',
  gives: eps,
  terms: {
    Q: { tex: '\\dot Q', quantity: 'heat', name: 'heat carried' },
    C_min: cMin,
    T_hot: hotIn,
    T_cold: coldIn,
  },
  source: SOURCES.kaysLondon,
});

export const effectivenessFromTemperatures = defineFormula({
  id: 'cores.effectiveness-from-temperatures',
  expr: '(C / C_min) * dT / (T_hot - T_cold)',
  gives: eps,
  terms: {
    C: { tex: 'C', quantity: 'conductance', name: 'capacity rate of the stream measured' },
    C_min: cMin,
    dT: { tex: '\\Delta T', quantity: 'temperatureDifference', name: 'change of that stream' },
    T_hot: hotIn,
    T_cold: coldIn,
  },
  source: SOURCES.kaysLondon,
});

// ---------------------------------------------------------------- other flows

export const hAAir = defineFormula({
  id: 'cores.hA-air',
  expr: 'UA_r / s_a * (m / m_r)^n',
  gives: hAAirTerm,
  terms: {
    UA_r: ratedUA,
    s_a: airShare,
    m: { tex: '\\dot m_a', quantity: 'airMassFlow', name: 'air mass flow' },
    m_r: { tex: '\\dot m_{a,r}', quantity: 'airMassFlow', name: 'rated air mass flow' },
    n: { tex: 'n_a', quantity: 'ratio', name: 'air-side exponent' },
  },
  source: SOURCES.kaysLondon,
});

export const reynoldsRatio = defineFormula({
  id: 'cores.reynolds-ratio',
  expr: 'rho * V * mu_r / (rho_r * V_r * mu)',
  gives: reRatio,
  terms: {
    rho,
    V: flow,
    mu,
    rho_r: { ...rho, tex: '\\rho_r', name: 'density at the rating' },
    V_r: { ...flow, tex: '\\dot V_r', name: 'rated liquid flow' },
    mu_r: { ...mu, tex: '\\mu_r', name: 'viscosity at the rating' },
  },
  source: SOURCES.definition,
});

/** Nu = c Re^n Pr^0.4 carried from the rating; what belongs to the passages cancels. */
export const hALiquid = defineFormula({
  id: 'cores.hA-liquid',
  expr: 'UA_r / (1 - s_a) * x_Re^n * (k / k_r)^0.6 * (c_p * mu / (c_pr * mu_r))^0.4',
  gives: hALiquidTerm,
  terms: {
    UA_r: ratedUA,
    s_a: airShare,
    x_Re: reRatio,
    n: { tex: 'n_l', quantity: 'ratio', name: 'liquid-side exponent' },
    k,
    k_r: { ...k, tex: 'k_r', name: 'conductivity at the rating' },
    c_p: cp,
    mu,
    c_pr: { ...cp, tex: 'c_{p,r}', name: 'specific heat at the rating' },
    mu_r: { ...mu, tex: '\\mu_r', name: 'viscosity at the rating' },
  },
  source: SOURCES.kaysLondon,
});

export const overallConductance = defineFormula({
  id: 'cores.overall-conductance',
  expr: 'c / (1 / hA_a + 1 / hA_l)',
  gives: UA,
  terms: {
    c: { tex: 'c', quantity: 'ratio', name: 'share of the conductance left by fouling' },
    hA_a: hAAirTerm,
    hA_l: hALiquidTerm,
  },
  source: SOURCES.kaysLondon,
});

// ---------------------------------------------------------------- what it carries

export const liquidCapacityRate = defineFormula({
  id: 'cores.liquid-capacity-rate',
  expr: 'rho * V * c_p',
  gives: { tex: 'C_l', quantity: 'conductance', name: 'capacity rate of the liquid' },
  terms: { rho, V: flow, c_p: cp },
  source: SOURCES.definition,
});

export const transferUnits = defineFormula({
  id: 'cores.transfer-units',
  expr: 'UA / C_min',
  gives: ntuTerm,
  terms: { UA, C_min: cMin },
  source: SOURCES.kaysLondon,
});

export const capacityRatio = defineFormula({
  id: 'cores.capacity-ratio',
  expr: 'C_min / C_max',
  gives: { tex: 'C_r', quantity: 'ratio', name: 'capacity ratio' },
  terms: { C_min: cMin, C_max: cMax },
  source: SOURCES.kaysLondon,
});

export const exchangerHeat = defineFormula({
  id: 'cores.heat',
  expr: 'eps * C_min * (T_hot - T_cold)',
  gives: { tex: '\\dot Q', quantity: 'heat', name: 'heat carried' },
  terms: { eps, C_min: cMin, T_hot: hotIn, T_cold: coldIn },
  source: SOURCES.kaysLondon,
});

export const frontHeat = defineFormula({
  id: 'cores.front-heat',
  expr: 'eps * C_min * (T_l - T_a)',
  gives: { tex: '\\dot Q_f', quantity: 'heat', name: 'heat given off by the front exchanger' },
  terms: {
    eps,
    C_min: cMin,
    T_l: { tex: 'T_{l,in}', quantity: 'temperature', name: 'liquid into the front exchanger' },
    T_a: { tex: 'T_{a,in}', quantity: 'temperature', name: 'air at the face of the core' },
  },
  source: SOURCES.kaysLondon,
});

export const streamOutlet = defineFormula({
  id: 'cores.stream-outlet',
  expr: 'T_in - Q / C',
  gives: { tex: 'T_{out}', quantity: 'temperature', name: 'outlet of the stream that cools' },
  terms: {
    T_in: { tex: 'T_{in}', quantity: 'temperature', name: 'its inlet' },
    Q: { tex: '\\dot Q', quantity: 'heat', name: 'heat carried' },
    C: { tex: 'C', quantity: 'conductance', name: 'its capacity rate' },
  },
  source: SOURCES.energyBalance,
});

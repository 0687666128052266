/** Lines the sheets show of the charge air, from demand to the charge cooler. */
import { AIR_GAS_CONSTANT } from '../air/air';
import { defineFormula } from '../formula';
import { SOURCES } from '../sources';
import { GAMMA_AIR } from './compressor';

const massFlow = { tex: '\\dot m_a', quantity: 'airMassFlow', name: 'air mass flow' } as const;
const gamma = {
  tex: '\\gamma',
  quantity: 'ratio',
  name: 'ratio of specific heats of air',
  fixed: GAMMA_AIR,
} as const;
const pressureRatio = { tex: 'PR', quantity: 'ratio', name: 'pressure ratio' } as const;
const efficiency = { tex: '\\eta', quantity: 'ratio', name: 'compressor efficiency' } as const;
const ambient = { tex: 'p_{amb}', quantity: 'pressure', name: 'ambient pressure' } as const;
const inletLoss = {
  tex: '\\Delta p_{in}',
  quantity: 'airPressure',
  name: 'pressure lost before the compressor',
} as const;
const manifold = {
  tex: 'p_m',
  quantity: 'pressure',
  name: 'manifold pressure, absolute',
} as const;

export const airFromPower = defineFormula({
  id: 'charge.air-from-power',
  expr: 'P * b * AFR',
  gives: massFlow,
  terms: {
    P: { tex: 'P', quantity: 'power', name: 'power at the crankshaft' },
    b: { tex: 'b', quantity: 'fuelUse', name: 'brake specific fuel consumption' },
    AFR: { tex: 'AFR', quantity: 'ratio', name: 'air over fuel by mass' },
  },
  source: SOURCES.definition,
});

export const airSpeedDensity = defineFormula({
  id: 'charge.air-speed-density',
  expr: 'eta_v * V_d * N / n_r * p_m / (R * T_m)',
  gives: massFlow,
  terms: {
    eta_v: { tex: '\\eta_v', quantity: 'ratio', name: 'volumetric efficiency' },
    V_d: { tex: 'V_d', quantity: 'displacement', name: 'displacement' },
    N: { tex: 'N', quantity: 'rotation', name: 'engine speed' },
    n_r: { tex: 'n_r', quantity: 'ratio', name: 'revolutions per cycle, four-stroke', fixed: 2 },
    p_m: manifold,
    R: { tex: 'R', quantity: 'gasConstant', name: 'gas constant of air', fixed: AIR_GAS_CONSTANT },
    T_m: { tex: 'T_m', quantity: 'absoluteTemperature', name: 'manifold temperature' },
  },
  source: SOURCES.heywood,
});

export const manifoldPressure = defineFormula({
  id: 'charge.manifold-pressure',
  expr: 'p_amb + p_g',
  gives: manifold,
  terms: {
    p_amb: ambient,
    p_g: { tex: 'p_g', quantity: 'gaugePressure', name: 'manifold pressure, gauge' },
  },
  source: SOURCES.definition,
});

export const inletLossAtFlow = defineFormula({
  id: 'charge.inlet-loss',
  expr: 'dp_full * (m / m_full)^2',
  gives: inletLoss,
  terms: {
    dp_full: {
      tex: '\\Delta p_{full}',
      quantity: 'airPressure',
      name: 'pressure lost before the compressor at full power',
    },
    m: massFlow,
    m_full: { tex: '\\dot m_{full}', quantity: 'airMassFlow', name: 'air mass flow at full power' },
  },
  source: SOURCES.commonPractice,
});

const coolerLoss = {
  tex: '\\Delta p_{cc}',
  quantity: 'airPressure',
  name: 'charge-air pressure lost in the charge cooler',
} as const;

export const coolerLossAtFlow = defineFormula({
  id: 'charge.cooler-loss',
  expr: 'dp_r * (m / m_r)^2',
  gives: coolerLoss,
  terms: {
    dp_r: {
      tex: '\\Delta p_{cc,r}',
      quantity: 'airPressure',
      name: 'pressure lost in the charge cooler at its rating',
    },
    m: massFlow,
    m_r: { tex: '\\dot m_{a,r}', quantity: 'airMassFlow', name: 'rated air mass flow' },
  },
  source: SOURCES.commonPractice,
});

export const pressureRatioClosed = defineFormula({
  id: 'charge.pressure-ratio',
  expr: '(p_m + dp_cc) / (p_amb - dp_in)',
  gives: pressureRatio,
  terms: { p_m: manifold, dp_cc: coolerLoss, p_amb: ambient, dp_in: inletLoss },
  source: SOURCES.definition,
});

export const pressureRatioOpen = defineFormula({
  id: 'charge.pressure-ratio-open-bypass',
  expr: '1 + dp_by / (p_amb - dp_in)',
  gives: pressureRatio,
  terms: {
    dp_by: {
      tex: '\\Delta p_{by}',
      quantity: 'airPressure',
      name: 'rise the compressor still works against, bypass open',
    },
    p_amb: ambient,
    dp_in: inletLoss,
  },
  source: SOURCES.definition,
});

export const intakeTemperature = defineFormula({
  id: 'charge.intake-temperature',
  expr: 'T_amb + dT_i',
  gives: { tex: 'T_i', quantity: 'temperature', name: 'fresh air at the intake' },
  terms: {
    T_amb: { tex: 'T_{amb}', quantity: 'temperature', name: 'ambient temperature' },
    dT_i: {
      tex: '\\Delta T_i',
      quantity: 'temperatureDifference',
      name: 'rise of the intake air above ambient',
    },
  },
  source: SOURCES.definition,
});

export const passRise = defineFormula({
  id: 'charge.pass-rise',
  expr: '(PR^((gamma - 1) / gamma) - 1) / eta',
  gives: { tex: 'k', quantity: 'ratio', name: 'rise of one pass over its inlet temperature' },
  terms: { PR: pressureRatio, gamma, eta: efficiency },
  source: SOURCES.compressorText,
});

export const mixedInlet = defineFormula({
  id: 'charge.compressor-inlet-mixed',
  expr: '(1 - r) * T_i / (1 - r * (1 + k))',
  gives: { tex: 'T_1', quantity: 'absoluteTemperature', name: 'compressor inlet after mixing' },
  terms: {
    r: { tex: 'r', quantity: 'ratio', name: 'share of the outlet air that goes round' },
    T_i: { tex: 'T_i', quantity: 'absoluteTemperature', name: 'fresh air at the intake' },
    k: { tex: 'k', quantity: 'ratio', name: 'rise of one pass over its inlet temperature' },
  },
  source: SOURCES.energyBalance,
});

export const compressorOutletLine = defineFormula({
  id: 'charge.compressor-outlet',
  expr: 'T_1 * (1 + (PR^((gamma - 1) / gamma) - 1) / eta)',
  gives: { tex: 'T_2', quantity: 'absoluteTemperature', name: 'compressor outlet' },
  terms: {
    T_1: { tex: 'T_1', quantity: 'absoluteTemperature', name: 'compressor inlet' },
    PR: pressureRatio,
    gamma,
    eta: efficiency,
  },
  source: SOURCES.compressorText,
});

export const compressorEfficiencyLine = defineFormula({
  id: 'charge.compressor-efficiency',
  expr: '(PR^((gamma - 1) / gamma) - 1) / (T_2 / T_1 - 1)',
  gives: efficiency,
  terms: {
    PR: pressureRatio,
    gamma,
    T_2: { tex: 'T_2', quantity: 'absoluteTemperature', name: 'compressor outlet' },
    T_1: { tex: 'T_1', quantity: 'absoluteTemperature', name: 'compressor inlet' },
  },
  source: SOURCES.compressorText,
});

export const airCapacityRate = defineFormula({
  id: 'charge.air-capacity-rate',
  expr: 'm * c_p',
  gives: { tex: 'C_a', quantity: 'conductance', name: 'capacity rate of the air' },
  terms: {
    m: massFlow,
    c_p: { tex: 'c_{p,a}', quantity: 'specificHeat', name: 'specific heat of air' },
  },
  source: SOURCES.definition,
});

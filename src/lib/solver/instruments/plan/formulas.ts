/** Lines of the plan of instruments: what boiling water should read, what the ± of probes and flow do to heat and UA. */
import { measuredHeat } from '../../diagnosis/formulas';
import { defineFormula, type Term } from '../../formula';
import { SOURCES } from '../../sources';
import { boilPoint } from '../probe/boilPoint';

const degrees = (tex: string, name: string): Term => ({
  tex,
  quantity: 'temperatureDifference',
  name,
});
const share = (tex: string, name: string): Term => ({ tex, quantity: 'percent', name });

const U_PROBE = degrees('u_T', '± of each probe');
const DROP = degrees('\\Delta T_f', 'drop of the liquid through the front exchanger');
const U_DROP = degrees('u_\\Delta', '± of a drop read by two probes');
const FLOW_SHARE = share('x_V', '± of the flow, of its reading');
const HEAT_SHARE = share('x_Q', '± of the heat, of its value');
const T_in: Term = {
  tex: 'T_{f,in}',
  quantity: 'temperature',
  name: 'liquid into the front exchanger',
};
const T_out: Term = {
  tex: 'T_{f,out}',
  quantity: 'temperature',
  name: 'liquid out of the front exchanger',
};
const ABOVE_IN = degrees('\\theta_1', 'liquid in, above the air');
const ABOVE_OUT = degrees('\\theta_2', 'liquid out, above the air');
const UNITS: Term = { tex: 'N', quantity: 'ratio', name: 'transfer units of the liquid' };

/** Half of what the boil point moves by between both ends of the air's ±. */
export const boilPlusMinus = defineFormula({
  id: 'plan.boil-plus-minus',
  expr: '(T_sat(p_a + u_p) - T_sat(p_a - u_p)) / 2',
  gives: degrees('u_b', '± of the boil point'),
  terms: {
    p_a: { tex: 'p_a', quantity: 'pressure', name: 'pressure of the air here' },
    u_p: { tex: 'u_p', quantity: 'airPressure', name: '± of that pressure' },
  },
  functions: {
    T_sat: {
      tex: 'T_{sat}',
      says: 'saturation temperature of water, as in any steam table (IAPWS-IF97, region 4)',
      takes: ['pressure'],
      gives: 'temperature',
      call: (p) => boilPoint(p!),
    },
  },
  source: SOURCES.iapwsIF97,
});

/** Probe and boil point together. */
export const boilReadingPlusMinus = defineFormula({
  id: 'plan.boil-reading-plus-minus',
  expr: 'sqrt(u_T^2 + u_b^2)',
  gives: degrees('u', '± of the reading in boiling water'),
  terms: { u_T: U_PROBE, u_b: boilPlusMinus.gives },
  source: SOURCES.gum,
});

/** Two probes that err independently. */
export const pairPlusMinus = defineFormula({
  id: 'plan.pair-plus-minus',
  expr: 'sqrt(2) * u_T',
  gives: U_DROP,
  terms: { u_T: U_PROBE },
  source: SOURCES.gum,
});

export const expectedDrop = defineFormula({
  id: 'plan.drop',
  expr: 'T_in - T_out',
  gives: DROP,
  terms: { T_in, T_out },
  source: SOURCES.definition,
});

/** Heat is flow times drop times constants: relative errors add by their squares. */
export const heatShareFormula = defineFormula({
  id: 'plan.heat-share',
  expr: 'sqrt(x_V^2 + (u_D / dT)^2)',
  gives: HEAT_SHARE,
  terms: { x_V: FLOW_SHARE, u_D: U_DROP, dT: DROP },
  source: SOURCES.gum,
});

export const heatPlusMinusFormula = defineFormula({
  id: 'plan.heat-plus-minus',
  expr: 'x_Q * Q_f',
  gives: { tex: 'u_Q', quantity: 'heat', name: '± of the heat' },
  terms: { x_Q: HEAT_SHARE, Q_f: measuredHeat.gives },
  source: SOURCES.definition,
});

/** Share of the heat's variance that comes from the probes. */
export const probesToBlame = defineFormula({
  id: 'plan.probes-to-blame',
  expr: '(u_D / (dT * x_Q))^2',
  gives: share('w_T', 'part of the heat’s variance that the probes bring'),
  terms: { u_D: U_DROP, dT: DROP, x_Q: HEAT_SHARE },
  source: SOURCES.gum,
});

/** The ± of each probe that leaves the heat as sure as wanted, the flow being as sure as it is. */
export const probeWantedFormula = defineFormula({
  id: 'plan.probe-wanted',
  expr: 'dT * sqrt((x_w^2 - x_V^2) / 2)',
  gives: degrees('u_w', '± each probe may have'),
  terms: { dT: DROP, x_w: share('x_w', '± of the heat wanted'), x_V: FLOW_SHARE },
  source: SOURCES.gum,
});

export const aboveAir = defineFormula({
  id: 'plan.above-air',
  expr: 'T - T_a',
  gives: degrees('\\theta', 'liquid above the air at the core’s face'),
  terms: {
    T: { tex: 'T_f', quantity: 'temperature', name: 'liquid in, or out' },
    T_a: { tex: 'T_{face}', quantity: 'temperature', name: 'air at the core’s face' },
  },
  source: SOURCES.definition,
});

/** The air taken as hardly warmed: Cr = 0 of the ε-NTU method. */
export const transferUnitsByAir = defineFormula({
  id: 'plan.transfer-units',
  expr: 'log(th_1 / th_2)',
  gives: UNITS,
  terms: { th_1: ABOVE_IN, th_2: ABOVE_OUT },
  source: SOURCES.kaysLondon,
});

export const conductanceByAir = defineFormula({
  id: 'plan.conductance',
  expr: 'C_l * N',
  gives: { tex: 'UA_{min}', quantity: 'conductance', name: 'least UA that cools the liquid so' },
  terms: { C_l: measuredHeat.terms.C_l, N: UNITS },
  source: SOURCES.kaysLondon,
});

/** Both liquid probes may err the same way, so their mean is no surer than one of them. */
export const abovePlusMinus = defineFormula({
  id: 'plan.above-plus-minus',
  expr: 'sqrt(u_T^2 + u_a^2)',
  gives: degrees('u_\\theta', '± of the liquid above the air'),
  terms: { u_T: U_PROBE, u_a: degrees('u_a', '± of the air at the core’s face') },
  source: SOURCES.gum,
});

/** First-order propagation through {@link conductanceByAir}: flow, drop and level of the liquid apart. */
export const conductanceShareFormula = defineFormula({
  id: 'plan.conductance-share',
  expr: 'sqrt(x_V^2 + (u_D * (th_1 + th_2) / (2 * N * th_1 * th_2))^2 + (u_th * dT / (N * th_1 * th_2))^2)',
  gives: share('x_{UA}', '± of the UA, of its value'),
  terms: {
    x_V: FLOW_SHARE,
    u_D: U_DROP,
    th_1: ABOVE_IN,
    th_2: ABOVE_OUT,
    N: UNITS,
    u_th: abovePlusMinus.gives,
    dT: DROP,
  },
  source: SOURCES.gum,
});

/** How deep a probe's tip stands in the bore. */
export const tipDepth = defineFormula({
  id: 'plan.tip-depth',
  expr: 'd / n',
  gives: { tex: 'z', quantity: 'dimension', name: 'depth of the tip in the bore' },
  terms: {
    d: { tex: 'd', quantity: 'bore', name: 'bore at the probe' },
    n: { tex: 'n', quantity: 'count', name: 'parts of the bore', fixed: 3 },
  },
  source: SOURCES.commonPractice,
});

/** Formulas of the feed as a sheet shows them. Each is tied to its plain function by a test. */
import { defineFormula, type Term } from '../formula';
import { SOURCES } from '../sources';
import { COPPER_COEFFICIENT_20, COPPER_REFERENCE_TEMPERATURE } from './copper';

const current: Term = { tex: 'I', quantity: 'current', name: 'current' };

/** Area of copper of an American gauge. */
export const wireAreaFormula = defineFormula({
  id: 'feed.wire-area',
  expr: 'pi / 4 * (d_36 * 92^((36 - n) / 39))^2',
  gives: { tex: 'A', quantity: 'wireArea', name: 'area of copper' },
  terms: {
    d_36: { tex: 'd_{36}', quantity: 'dimension', name: 'diameter of 36 gauge', fixed: 0.000127 },
    n: { tex: 'n', quantity: 'count', name: 'gauge; 1/0 to 4/0 count as 0 to -3' },
  },
  source: SOURCES.astmB258,
});

/** Resistance out and back at 20 °C, from what one metre of one square millimetre has. */
export const wireResistance20 = defineFormula({
  id: 'feed.wire-resistance-20',
  expr: 'R_u * (2 * L / L_u) * (A_u / A)',
  gives: { tex: 'R_{20}', quantity: 'resistance', name: 'wire out and back at 20 °C' },
  terms: {
    R_u: {
      tex: 'R_u',
      quantity: 'resistance',
      name: 'one metre of one square millimetre of copper at 20 °C: 1/58 ohm',
      fixed: 1 / 58,
    },
    L: { tex: 'L', quantity: 'length', name: 'length one way' },
    L_u: { tex: 'L_u', quantity: 'length', name: 'one metre', fixed: 1 },
    A_u: { tex: 'A_u', quantity: 'wireArea', name: 'one square millimetre', fixed: 1e-6 },
    A: { tex: 'A', quantity: 'wireArea', name: 'area of copper' },
  },
  source: SOURCES.iec60028,
});

/** Resistance of copper at its own temperature. */
export const wireResistanceHot = defineFormula({
  id: 'feed.wire-resistance-hot',
  expr: 'R_20 * (1 + (T - T_20) / theta)',
  gives: { tex: 'R_w', quantity: 'resistance', name: 'wire out and back at its temperature' },
  terms: {
    R_20: { tex: 'R_{20}', quantity: 'resistance', name: 'the same at 20 °C' },
    T: { tex: 'T', quantity: 'temperature', name: 'temperature of the copper' },
    T_20: {
      tex: 'T_{20}',
      quantity: 'temperature',
      name: 'reference temperature',
      fixed: COPPER_REFERENCE_TEMPERATURE,
    },
    theta: {
      tex: '\\theta',
      quantity: 'temperatureDifference',
      name: 'rise that doubles the resistance: 1 / 0.00393 per kelvin',
      fixed: 1 / COPPER_COEFFICIENT_20,
    },
  },
  source: SOURCES.iec60028,
});

/** Drop across a part that carries the pump's current. */
export const dropFormula = defineFormula({
  id: 'feed.drop',
  expr: 'I * R',
  gives: { tex: 'U', quantity: 'voltage', name: 'drop' },
  terms: { I: current, R: { tex: 'R', quantity: 'resistance', name: 'resistance' } },
  source: SOURCES.ohmKirchhoff,
});

/** Volts on the pump's plug. */
export const voltsAtPump = defineFormula({
  id: 'feed.volts-at-pump',
  expr: 'V_s - I * (R_w + R_c)',
  gives: { tex: 'V_p', quantity: 'voltage', name: 'volts at the pump' },
  terms: {
    V_s: { tex: 'V_s', quantity: 'voltage', name: 'volts at the battery posts' },
    I: current,
    R_w: { tex: 'R_w', quantity: 'resistance', name: 'wire out and back' },
    R_c: { tex: 'R_c', quantity: 'resistance', name: 'protection, relay and plugs' },
  },
  source: SOURCES.ohmKirchhoff,
});

/** Volts at a pump whose controller holds its power. */
export const voltsConstantPower = defineFormula({
  id: 'feed.volts-constant-power',
  expr: '(V_s + sqrt(V_s^2 - 4 * R * P)) / 2',
  gives: { tex: 'V_p', quantity: 'voltage', name: 'volts at a pump that holds its power' },
  terms: {
    V_s: { tex: 'V_s', quantity: 'voltage', name: 'volts at the battery posts' },
    R: { tex: 'R', quantity: 'resistance', name: 'whole feed' },
    P: { tex: 'P', quantity: 'electricPower', name: 'power the pump holds' },
  },
  source: SOURCES.ohmKirchhoff,
});

/** Speed of a brushed pump against its rated speed; flow follows where head goes with the square of flow. */
export const flowRatio = defineFormula({
  id: 'feed.flow-ratio',
  expr: 'V_p / V_r',
  gives: { tex: 's', quantity: 'ratio', name: 'speed (and nearly flow) over rated, brushed motor' },
  terms: {
    V_p: { tex: 'V_p', quantity: 'voltage', name: 'volts at the pump' },
    V_r: { tex: 'V_r', quantity: 'voltage', name: 'volts at which the pump is rated' },
  },
  source: SOURCES.commonPractice,
});

/** Resistance of a joint from the drop a meter shows across it. */
export const jointResistanceFormula = defineFormula({
  id: 'feed.joint-resistance',
  expr: 'U / I',
  gives: { tex: 'R_j', quantity: 'resistance', name: 'resistance of the joint' },
  terms: { U: { tex: 'U', quantity: 'voltage', name: 'drop across the joint' }, I: current },
  source: SOURCES.ohmKirchhoff,
});

/** Heat made in a joint whose drop was measured. */
export const jointHeat = defineFormula({
  id: 'feed.joint-heat',
  expr: 'U * I',
  gives: { tex: 'P_j', quantity: 'electricPower', name: 'heat made in the joint' },
  terms: { U: { tex: 'U', quantity: 'voltage', name: 'drop across the joint' }, I: current },
  source: SOURCES.ohmKirchhoff,
});

/** Heat made in a joint of known resistance. */
export const jointHeatFromResistance = defineFormula({
  id: 'feed.joint-heat-resistance',
  expr: 'I^2 * R',
  gives: { tex: 'P_j', quantity: 'electricPower', name: 'heat made in the joint' },
  terms: { I: current, R: { tex: 'R_j', quantity: 'resistance', name: 'resistance of the joint' } },
  source: SOURCES.ohmKirchhoff,
});

/** Current a breaker holds where it sits. */
export const deratedBreaker = defineFormula({
  id: 'feed.breaker-derated',
  expr: 'I_r * (1 - b * (T - T_r) / dT_u)',
  gives: { tex: 'I_h', quantity: 'current', name: 'current the breaker holds' },
  terms: {
    I_r: { tex: 'I_r', quantity: 'current', name: 'rating' },
    b: { tex: 'b', quantity: 'percent', name: 'share lost per kelvin' },
    T: { tex: 'T', quantity: 'temperature', name: 'temperature round the breaker' },
    T_r: { tex: 'T_r', quantity: 'temperature', name: 'temperature of the rating' },
    dT_u: { tex: '\\Delta T_u', quantity: 'temperatureDifference', name: 'one kelvin', fixed: 1 },
  },
  source: SOURCES.commonPractice,
});

/** Heating ratio of a breaker; it opens when this is above 1. */
export const breakerHeating = defineFormula({
  id: 'feed.breaker-heating',
  expr: '(I / I_h)^2',
  gives: { tex: 'x', quantity: 'ratio', name: 'heating of the breaker, opens above 1' },
  terms: {
    I: current,
    I_h: { tex: 'I_h', quantity: 'current', name: 'current the breaker holds' },
  },
  source: SOURCES.iec60255,
});

/** Time until a breaker opens; only for a heating ratio above 1. */
export const breakerTripTime = defineFormula({
  id: 'feed.breaker-trip-time',
  expr: 'tau * log((x - y_0) / (x - 1))',
  gives: { tex: 't', quantity: 'time', name: 'time until the breaker opens' },
  terms: {
    tau: { tex: '\\tau', quantity: 'time', name: 'time constant of the breaker' },
    x: { tex: 'x', quantity: 'ratio', name: 'heating of the breaker' },
    y_0: { tex: 'y_0', quantity: 'ratio', name: 'state at the start: 0 cold, 1 about to open' },
  },
  source: SOURCES.iec60255,
});

/** Time an open automatic breaker takes to close again. */
export const breakerResetTime = defineFormula({
  id: 'feed.breaker-reset-time',
  expr: 'tau * log(1 / r)',
  gives: { tex: 't_{off}', quantity: 'time', name: 'time until it closes again' },
  terms: {
    tau: { tex: '\\tau', quantity: 'time', name: 'time constant of the breaker' },
    r: { tex: 'r', quantity: 'ratio', name: 'state at which it closes' },
  },
  source: SOURCES.lumpedCapacity,
});

/** Lines of the front exchanger zone by zone, and of what leaves it; the solver's own are in front.ts. */
import type { Smaller } from '../cores/crossflowFormulas';
import { airShare, ratedUA } from '../cores/formulas';
import { defineFormula, type Formula, type Term } from '../formula';
import { SOURCES } from '../sources';

const conductance = (tex: string, name: string) =>
  ({ tex, quantity: 'conductance', name }) as const satisfies Term;
const temperature = (tex: string, name: string) =>
  ({ tex, quantity: 'temperature', name }) as const satisfies Term;
const ratio = (tex: string, name: string) => ({ tex, quantity: 'ratio', name }) as const;

const share = ratio('x', 'share of the face');
const airSide = conductance('hA_a', 'air side of the whole core, all of it with this air');
const airRate = conductance('C_a', 'capacity rate of the air of this zone');
const liquidRate = conductance('C_l', 'capacity rate of the liquid');
const toFresh = conductance('G', 'heat per degree between liquid inlet and fresh air');
const liquidIn = temperature('T_{f,in}', 'liquid into the front exchanger');
const airCp = {
  tex: 'c_p',
  quantity: 'specificHeat',
  name: 'specific heat of the air',
} as const satisfies Term;

/** Air of a zone, as heat it carries per kelvin. */
export const zoneAirRate = defineFormula({
  id: 'loop.zone-air-rate',
  expr: 'rho * u * w * h * x * c_p',
  gives: airRate,
  terms: {
    rho: { tex: '\\rho', quantity: 'density', name: 'density of the air' },
    u: { tex: 'u', quantity: 'faceVelocity', name: 'face velocity of this zone' },
    w: { tex: 'w', quantity: 'dimension', name: 'width of the finned face' },
    h: { tex: 'h', quantity: 'dimension', name: 'height of the finned face' },
    x: share,
    c_p: airCp,
  },
  source: SOURCES.definition,
});

/** Air side as it would be if the whole core had the air of this zone. */
export const zoneAirSide = defineFormula({
  id: 'loop.zone-air-side',
  expr: 'UA_r / s_a * (C_a / (x * c_p * m_r))^n',
  gives: airSide,
  terms: {
    UA_r: ratedUA,
    s_a: airShare,
    C_a: airRate,
    x: share,
    c_p: airCp,
    m_r: { tex: '\\dot m_{a,r}', quantity: 'airMassFlow', name: 'rated air mass flow' },
    n: ratio('n_a', 'air-side exponent'),
  },
  source: SOURCES.kaysLondon,
});

/** Conductance of a zone: its share of the whole core, fouling taken off. */
export const zoneConductance = defineFormula({
  id: 'loop.zone-conductance',
  expr: 'x * c / (1 / hA_a + 1 / hA_l)',
  gives: conductance('UA', 'conductance of this zone'),
  terms: {
    x: share,
    c: ratio('c', 'share of the conductance left by fouling'),
    hA_a: airSide,
    hA_l: conductance('hA_l', 'liquid side of the whole core'),
  },
  source: SOURCES.kaysLondon,
});

/** Liquid that passes a zone: it spreads over the face evenly. */
export const zoneLiquidRate = defineFormula({
  id: 'loop.zone-liquid-rate',
  expr: 'x * C_l',
  gives: conductance('C_{l,z}', 'capacity rate of the liquid of this zone'),
  terms: { x: share, C_l: liquidRate },
  source: SOURCES.definition,
});

const TO_FRESH = {
  eps: ratio('\\varepsilon', 'effectiveness of this zone'),
  r: ratio('r', 'share of hot air that comes round again'),
} as const;
const AIR_SMALLER = defineFormula({
  id: 'loop.zone-to-fresh-air',
  expr: 'eps * C_a / (1 + eps * r / (1 - r))',
  gives: toFresh,
  terms: { ...TO_FRESH, C_a: airRate },
  source: SOURCES.energyBalance,
});
const LIQUID_SMALLER = defineFormula({
  id: 'loop.zone-to-fresh-air-liquid-smaller',
  expr: 'eps * x * C_l / (1 + eps * x * C_l * r / ((1 - r) * C_a))',
  gives: toFresh,
  terms: { ...TO_FRESH, x: share, C_l: liquidRate, C_a: airRate },
  source: SOURCES.energyBalance,
});

/**
 * Heat per kelvin of a zone between its liquid and the fresh air; part of the hot air that left comes
 * round again and lowers it. See `frontExchange` for where it comes from.
 */
export const zoneToFreshAir = (smaller: Smaller): Formula =>
  smaller === 'air' ? AIR_SMALLER : LIQUID_SMALLER;

/** Both zones together. */
export const zonesTogether = defineFormula({
  id: 'loop.zones-together',
  expr: 'G_s + G_o',
  gives: toFresh,
  terms: {
    G_s: conductance('G_s', 'behind the shroud'),
    G_o: conductance('G_o', 'open face'),
  },
  source: SOURCES.energyBalance,
});

export const heatToFreshAir = defineFormula({
  id: 'loop.heat-to-fresh-air',
  expr: 'G * (T_f - T_amb - dT_stack)',
  gives: { tex: '\\dot Q_f', quantity: 'heat', name: 'heat given off by the front exchanger' },
  terms: {
    G: toFresh,
    T_f: liquidIn,
    T_amb: temperature('T_{amb}', 'ambient temperature'),
    dT_stack: {
      tex: '\\Delta T_{stack}',
      quantity: 'temperatureDifference',
      name: 'rise of the air by the other cores',
    },
  },
  source: SOURCES.energyBalance,
});

const heatOf = (n: number) =>
  ({ tex: `\\dot Q_{${n}}`, quantity: 'heat', name: 'heat given off by that part' }) as const;
const wholeHeat = {
  tex: '\\dot Q_f',
  quantity: 'heat',
  name: 'heat given off by the front exchanger',
} as const satisfies Term;

/** Covered and clear part, each in its own air. */
export const twoPartsTogether = defineFormula({
  id: 'loop.two-parts-together',
  expr: 'Q_1 + Q_2',
  gives: wholeHeat,
  terms: { Q_1: heatOf(1), Q_2: heatOf(2) },
  source: SOURCES.energyBalance,
});

/** The same, behind the shroud and on the open face. */
export const fourPartsTogether = defineFormula({
  id: 'loop.four-parts-together',
  expr: 'Q_1 + Q_2 + Q_3 + Q_4',
  gives: wholeHeat,
  terms: { Q_1: heatOf(1), Q_2: heatOf(2), Q_3: heatOf(3), Q_4: heatOf(4) },
  source: SOURCES.energyBalance,
});

export const frontDropLine = defineFormula({
  id: 'loop.front-drop',
  expr: 'Q_f / C_l',
  gives: {
    tex: '\\Delta T_f',
    quantity: 'temperatureDifference',
    name: 'drop of the liquid through the front exchanger',
  },
  terms: {
    Q_f: { tex: '\\dot Q_f', quantity: 'heat', name: 'heat given off' },
    C_l: liquidRate,
  },
  source: SOURCES.energyBalance,
});

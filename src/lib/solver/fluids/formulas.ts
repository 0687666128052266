/** Lines the sheets show of the liquid and of the air around it. Each is tied by a test to the function the solver calls. */
import { AIR_GAS_CONSTANT } from '../air/air';
import { GRADIENT_HEIGHT, PRESSURE_EXPONENT, STANDARD_ATMOSPHERE } from '../air/atmosphere';
import { defineFormula } from '../formula';
import { SOURCES } from '../sources';

const density = { tex: '\\rho', quantity: 'density', name: 'density of the liquid' } as const;
const waterShare = {
  tex: 'x_w',
  quantity: 'ratio',
  name: 'mole fraction of water',
} as const;

/** Heat that a volume of liquid takes up per kelvin. */
export const volumetricHeatCapacity = defineFormula({
  id: 'fluids.volumetric-heat-capacity',
  expr: 'rho * c_p',
  gives: {
    tex: '\\rho c_p',
    quantity: 'volumetricHeatCapacity',
    name: 'heat capacity by volume',
  },
  terms: {
    rho: density,
    c_p: { tex: 'c_p', quantity: 'specificHeat', name: 'specific heat of the liquid' },
  },
  source: SOURCES.definition,
});

/** Share of water among the molecules of a glycol mixture: `waterMoleFraction` in coolant.ts. */
export const waterMoleFraction = defineFormula({
  id: 'fluids.water-mole-fraction',
  expr: '(1 - w) / (1 - w + w / m)',
  gives: waterShare,
  terms: {
    w: { tex: 'w', quantity: 'ratio', name: 'mass fraction of glycol' },
    m: {
      tex: 'M_g/M_w',
      quantity: 'ratio',
      name: 'molar mass of the glycol over that of water (ethylene 3.445, propylene 4.224)',
    },
  },
  source: SOURCES.definition,
});

/** Vapour pressure over the mixture by Raoult: `coolantVapourPressure`. */
export const vapourPressure = defineFormula({
  id: 'fluids.vapour-pressure',
  expr: 'x_w * p_sat',
  gives: { tex: 'p_v', quantity: 'pressure', name: 'vapour pressure of the coolant' },
  terms: {
    x_w: waterShare,
    p_sat: {
      tex: 'p_{sat}',
      quantity: 'pressure',
      name: 'saturation pressure of water at this temperature',
    },
  },
  source: SOURCES.raoult,
});

/** Pressure of the standard atmosphere: `pressureAtAltitude`. */
export const pressureAtAltitude = defineFormula({
  id: 'air.pressure-at-altitude',
  expr: 'p_0 * (1 - h / H)^n',
  gives: { tex: 'p_a', quantity: 'pressure', name: 'pressure of the air at this altitude' },
  terms: {
    p_0: {
      tex: 'p_0',
      quantity: 'pressure',
      name: 'pressure at sea level',
      fixed: STANDARD_ATMOSPHERE.p0,
    },
    h: { tex: 'h', quantity: 'altitude', name: 'altitude' },
    H: {
      tex: 'H',
      quantity: 'altitude',
      name: 'standard temperature over its gradient, 288.15 K / 0.0065 K/m',
      fixed: GRADIENT_HEIGHT,
    },
    n: {
      tex: 'n',
      quantity: 'ratio',
      name: 'exponent, g / (R · gradient)',
      fixed: PRESSURE_EXPONENT,
    },
  },
  source: SOURCES.iso2533,
});

/** Density of dry air: `airDensity`. */
export const airDensity = defineFormula({
  id: 'air.density',
  expr: 'p / (R * T)',
  gives: { tex: '\\rho_a', quantity: 'density', name: 'density of the air' },
  terms: {
    p: { tex: 'p', quantity: 'pressure', name: 'pressure of the air, absolute' },
    R: { tex: 'R', quantity: 'gasConstant', name: 'gas constant of air', fixed: AIR_GAS_CONSTANT },
    T: { tex: 'T', quantity: 'absoluteTemperature', name: 'temperature of the air' },
  },
  source: SOURCES.iso2533,
});

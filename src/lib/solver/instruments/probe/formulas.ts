/** Lines of the two baths. Each is tied by a test to the function the solver calls. */
import { GRADIENT_HEIGHT, PRESSURE_EXPONENT, STANDARD_ATMOSPHERE } from '../../air/atmosphere';
import { defineFormula, type Formula, type Term } from '../../formula';
import { SOURCES } from '../../sources';
import { boilPoint } from './boilPoint';
import type { Probe } from './probe';

const ohms = (tex: string, name: string): Term => ({ tex, quantity: 'resistance', name });
const temperature = (tex: string, name: string): Term => ({ tex, quantity: 'temperature', name });

const R = ohms('R', 'probe in that bath');
const R_B = ohms('R_b', 'bias resistor in the circuit');
const R_BA = ohms('R_{ba}', 'bias that the reader’s table assumes');
const R_SHOWN = ohms('R_s', 'probe at the temperature shown, by the reader’s table');
const ALPHA: Term = { tex: '\\alpha', quantity: 'perKelvin', name: 'share lost per kelvin' };

/** Pressure here from a weather report: `stationPressure`. */
export const stationPressureFormula = defineFormula({
  id: 'probe.station-pressure',
  expr: 'p_0 * ((p_r / p_0)^(1 / n) - h / H)^n',
  gives: { tex: 'p_a', quantity: 'pressure', name: 'pressure of the air here' },
  terms: {
    p_0: {
      tex: 'p_0',
      quantity: 'pressure',
      name: 'standard pressure at sea level',
      fixed: STANDARD_ATMOSPHERE.p0,
    },
    p_r: { tex: 'p_r', quantity: 'pressure', name: 'pressure as reported, for sea level' },
    n: { tex: 'n', quantity: 'ratio', name: 'exponent', fixed: PRESSURE_EXPONENT },
    h: { tex: 'h', quantity: 'altitude', name: 'altitude' },
    H: {
      tex: 'H',
      quantity: 'altitude',
      name: 'standard temperature over its gradient',
      fixed: GRADIENT_HEIGHT,
    },
  },
  source: SOURCES.altimeter,
});

/** Boil point of water: `boilPoint`. */
export const boilPointFormula = defineFormula({
  id: 'probe.boil-point',
  expr: 'T_sat(p_a)',
  gives: temperature('T_b', 'water at an open boil'),
  terms: { p_a: { tex: 'p_a', quantity: 'pressure', name: 'pressure of the air here' } },
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

/** Resistance by the Beta law: `betaResistance`. */
export const betaResistanceFormula = defineFormula({
  id: 'probe.beta-resistance',
  expr: 'R_25 * exp(beta * (1 / T - 1 / T_25))',
  gives: ohms('R', 'probe'),
  terms: {
    R_25: ohms('R_{25}', 'probe at 25 °C'),
    beta: { tex: '\\beta', quantity: 'beta', name: 'Beta of the probe' },
    T: { tex: 'T', quantity: 'absoluteTemperature', name: 'temperature' },
    T_25: { tex: 'T_{25}', quantity: 'absoluteTemperature', name: '25 °C', fixed: 298.15 },
  },
  source: SOURCES.betaLaw,
});

/** One over the absolute temperature: one side of the law of Steinhart and Hart. */
export const reciprocalTemperature = defineFormula({
  id: 'probe.reciprocal-temperature',
  expr: '1 / T',
  gives: { tex: 'y', quantity: 'perKelvin', name: 'one over the absolute temperature' },
  terms: { T: { tex: 'T', quantity: 'absoluteTemperature', name: 'temperature' } },
  source: SOURCES.definition,
});

/** The other side: `steinhartHartTemperature`. */
export const steinhartHartFormula = defineFormula({
  id: 'probe.steinhart-hart',
  expr: 'A + B * log(R / R_u) + C * log(R / R_u)^3',
  gives: { tex: 'y', quantity: 'perKelvin', name: 'one over the absolute temperature' },
  terms: {
    A: { tex: 'A', quantity: 'perKelvin', name: 'first coefficient' },
    B: { tex: 'B', quantity: 'perKelvin', name: 'second coefficient' },
    C: { tex: 'C', quantity: 'perKelvin', name: 'third coefficient' },
    R: ohms('R', 'probe'),
    R_u: { ...ohms('R_u', 'one ohm'), fixed: 1 },
  },
  source: SOURCES.steinhartHart,
});

/** Resistance read from a table of points, where there is no closed law. */
export const tableResistance = (probe: Probe, whose: string): Formula<'T'> =>
  defineFormula({
    id: 'probe.table-resistance',
    expr: 'R_p(T)',
    gives: ohms('R', whose),
    terms: { T: temperature('T', 'temperature') },
    functions: {
      R_p: {
        tex: 'R_p',
        says: `${whose}: between its points 1/T runs smoothly and monotone against ln R`,
        takes: ['temperature'],
        gives: 'resistance',
        call: (T) => probe.resistance(T!),
      },
    },
    source: SOURCES.probeTable,
  });

/** Temperature that a reader shows for a resistance. */
export const readerShows = (table: Probe): Formula<'R'> =>
  defineFormula({
    id: 'probe.reader-shows',
    expr: 'T_r(R)',
    gives: temperature('T_r', 'reader shows'),
    terms: { R: ohms('R', 'resistance the reader believes') },
    functions: {
      T_r: {
        tex: 'T_r',
        says: 'the reader’s table: the law above, solved for the temperature',
        takes: ['resistance'],
        gives: 'temperature',
        call: (ohm) => table.temperature(ohm!),
      },
    },
    source: SOURCES.definition,
  });

/** Bias of the reader's table, from one bath, where the one in the circuit is known: see `biasOf`. */
export const assumedBias = defineFormula({
  id: 'probe.assumed-bias',
  expr: 'R_b * R_s / R',
  gives: R_BA,
  terms: { R_b: R_B, R_s: R_SHOWN, R },
  source: SOURCES.ohmKirchhoff,
});

/** Bias in the circuit, from one bath, where that of the reader's table is stated: `biasOf`. */
export const biasInCircuit = defineFormula({
  id: 'probe.bias-in-circuit',
  expr: 'R_ba * R / R_s',
  gives: R_B,
  terms: { R_ba: R_BA, R_s: R_SHOWN, R },
  source: SOURCES.ohmKirchhoff,
});

/** ± of a bias from one bath: `biasShare`. */
export const biasShareFormula = defineFormula({
  id: 'probe.bias-share',
  expr: 'u * alpha',
  gives: { tex: 's', quantity: 'percent', name: '± of that bias' },
  terms: {
    u: { tex: 'u', quantity: 'temperatureDifference', name: '± of the reading against the truth' },
    alpha: ALPHA,
  },
  source: SOURCES.gum,
});

const shares = {
  s_1: { tex: 's_1', quantity: 'percent', name: '± from the ice' },
  s_2: { tex: 's_2', quantity: 'percent', name: '± from the boil' },
} as const;

/** Both baths together: `combinedBias`. */
export const combinedBiasFormula = defineFormula({
  id: 'probe.combined-bias',
  expr: 'R_1 * exp(log(R_2 / R_1) * s_1^2 / (s_1^2 + s_2^2))',
  gives: ohms('R', 'bias by both baths'),
  terms: { R_1: ohms('R_1', 'by the ice'), R_2: ohms('R_2', 'by the boil'), ...shares },
  source: SOURCES.weightedMean,
});

/** Its ±: `combinedBias`. */
export const combinedShareFormula = defineFormula({
  id: 'probe.combined-share',
  expr: 's_1 * s_2 / sqrt(s_1^2 + s_2^2)',
  gives: { tex: 's', quantity: 'percent', name: '± of the bias by both baths' },
  terms: shares,
  source: SOURCES.weightedMean,
});

/** ± of the bias with what the probe itself may be off: the same in both baths, so it does not average out. */
export const shareWithProbe = defineFormula({
  id: 'probe.share-with-probe',
  expr: 'sqrt(s^2 + t^2)',
  gives: { tex: 's_p', quantity: 'percent', name: '± of the bias, the probe’s own error with it' },
  terms: {
    s: { tex: 's', quantity: 'percent', name: '± by both baths' },
    t: { tex: 't', quantity: 'percent', name: '± of the probe’s resistance' },
  },
  source: SOURCES.gum,
});

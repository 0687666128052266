/** Lines of the divider: volts, counts, own heat. Each is tied by a test to the function the solver calls. */
import { defineFormula, type Formula, type Term } from '../../formula';
import { SOURCES } from '../../sources';
import { sensitivity, type Probe } from './probe';

const ohms = (tex: string, name: string): Term => ({ tex, quantity: 'resistance', name });
const temperature = (tex: string, name: string): Term => ({ tex, quantity: 'temperature', name });

const R = ohms('R', 'probe in that bath');
const R_B = ohms('R_b', 'bias resistor in the circuit');
const R_BA = ohms('R_{ba}', 'bias that the reader’s table assumes');
const ALPHA: Term = { tex: '\\alpha', quantity: 'perKelvin', name: 'share lost per kelvin' };
const SUPPLY: Term = { tex: 'V_s', quantity: 'voltage', name: 'supply of the divider' };

/** Share of its resistance that a probe loses per kelvin, by its law. */
export const sensitivityFormula = (probe: Probe): Formula<'T'> =>
  defineFormula({
    id: 'probe.sensitivity',
    expr: 'alpha_p(T)',
    gives: ALPHA,
    terms: { T: temperature('T', 'temperature shown') },
    functions: {
      alpha_p: {
        tex: '\\alpha_p',
        says: 'from the probe’s law at two temperatures a tenth of a kelvin apart: ln(R₁/R₂) over 0.1 K',
        takes: ['temperature'],
        gives: 'perKelvin',
        call: (T) => sensitivity(probe, T!),
      },
    },
    source: SOURCES.definition,
  });

/** Two resistances side by side: `parallel`. */
export const sideBySide = defineFormula({
  id: 'probe.side-by-side',
  expr: 'R_1 * R_2 / (R_1 + R_2)',
  gives: ohms('R', 'side by side'),
  terms: { R_1: ohms('R_1', 'one'), R_2: ohms('R_2', 'the other') },
  source: SOURCES.ohmKirchhoff,
});

/** What the reader takes the probe for, its bias being another than assumed. */
export const believedFormula = defineFormula({
  id: 'probe.believed',
  expr: 'R * R_ba / R_b',
  gives: ohms('R_s', 'resistance the reader believes'),
  terms: { R, R_ba: R_BA, R_b: R_B },
  source: SOURCES.ohmKirchhoff,
});

/** Volts at the input: `inputVolts`. */
export const inputVoltsFormula = defineFormula({
  id: 'probe.input-volts',
  expr: 'V_s * R / (R + R_b)',
  gives: { tex: 'V', quantity: 'voltage', name: 'volts at the input' },
  terms: { V_s: SUPPLY, R, R_b: R_B },
  source: SOURCES.ohmKirchhoff,
});

/** Temperature of one count: `degreesPerCount`. */
export const degreesPerCountFormula = defineFormula({
  id: 'probe.degrees-per-count',
  expr: '(R + R_b)^2 / (R * R_b * alpha * n)',
  gives: { tex: '\\Delta T_n', quantity: 'temperatureDifference', name: 'one count' },
  terms: {
    R,
    R_b: R_B,
    alpha: ALPHA,
    n: { tex: 'n', quantity: 'count', name: 'highest count of the converter' },
  },
  source: SOURCES.ohmKirchhoff,
});

/** Heat in the probe: `probePower`. */
export const probePowerFormula = defineFormula({
  id: 'probe.power',
  expr: 'V_s^2 * R / (R + R_b)^2',
  gives: { tex: 'P', quantity: 'electricPower', name: 'heat made in the probe' },
  terms: { V_s: SUPPLY, R, R_b: R_B },
  source: SOURCES.ohmKirchhoff,
});

/** Rise of the probe: `selfHeating`. */
export const selfHeatingFormula = defineFormula({
  id: 'probe.self-heating',
  expr: 'P / delta',
  gives: { tex: '\\Delta T_h', quantity: 'temperatureDifference', name: 'rise of the probe' },
  terms: {
    P: { tex: 'P', quantity: 'electricPower', name: 'heat made in the probe' },
    delta: { tex: '\\delta', quantity: 'dissipation', name: 'dissipation constant' },
  },
  source: SOURCES.definition,
});

/** Bias in the middle of a probe's resistances: `balancedBias`. */
export const balancedBiasFormula = defineFormula({
  id: 'probe.balanced-bias',
  expr: 'sqrt(R_1 * R_2)',
  gives: ohms('R_m', 'bias that suits both ends'),
  terms: { R_1: ohms('R_1', 'probe in ice'), R_2: ohms('R_2', 'probe at boil') },
  source: SOURCES.commonPractice,
});

import { betaResistance } from '$lib/solver/instruments/probe/beta';
import {
  degreesPerCount,
  dividerRatio,
  inputCounts,
  inputVolts,
  probePower,
  selfHeating,
} from '$lib/solver/instruments/probe/divider';
import { probeOf, sensitivity, type Probe } from '$lib/solver/instruments/probe/probe';
import { steinhartHartFit } from '$lib/solver/instruments/probe/steinhartHart';
import {
  networkBand,
  networkResistance,
  trimParallel,
  trimSeries,
} from '$lib/solver/instruments/probe/trim/network';
import {
  biasAndSeries,
  biasFromPoint,
  shownWithBias,
} from '$lib/solver/instruments/probe/twoPoints';
import { Unsupported, type Given } from '../given';
import type { Adapter } from '../harness';

const probe = (given: Given): Probe =>
  probeOf({
    kind: 'steinhart-hart',
    A: given.number('A'),
    B: given.number('B'),
    C: given.number('C'),
  });

/** The solver's converter counts in whole bits. */
function bitsOf(given: Given): number {
  const full = given.number('full_scale_counts');
  const bits = Math.log2(full + 1);
  if (!Number.isInteger(bits)) throw new Unsupported(`full scale of ${full} counts`);
  return bits;
}

export const thermistorDividerAdapters: Readonly<Record<string, Adapter>> = {
  'steinhart-hart-fit': (given) => ({
    ...steinhartHartFit(
      [1, 2, 3].map((i) => ({ T: given.number(`T${i}`), R: given.number(`R${i}`) })),
    ),
  }),
  'steinhart-hart-resistance': (given) => ({ R: probe(given).resistance(given.number('T')) }),
  'steinhart-hart-temperature': (given) => ({ T: probe(given).temperature(given.number('R')) }),
  'beta-resistance': (given) => ({
    R: betaResistance({ R25: given.number('R25'), beta: given.number('beta') }, given.number('T')),
  }),
  divider: (given) => {
    const R = given.number('R_thermistor');
    const bias = given.number('R_bias');
    const supply = given.number('V_supply');
    const divider = { supply, bias, bits: bitsOf(given), input: Infinity };
    const exact = inputCounts(divider, R);
    return {
      V: inputVolts(divider, R),
      ratio: dividerRatio(R, bias),
      counts_exact: exact,
      counts: Math.round(exact),
    };
  },
  'degrees-per-count': (given) => {
    const T = given.number('T');
    const p = probe(given);
    return {
      kelvin_per_count: degreesPerCount({
        R: p.resistance(T),
        R_b: given.number('R_bias'),
        alpha: sensitivity(p, T),
        n: given.number('full_scale_counts'),
      }),
    };
  },
  'bias-error': (given) => {
    const T_true = given.number('T_true');
    const T_shown = shownWithBias(
      probe(given),
      T_true,
      given.number('R_bias_assumed'),
      given.number('R_bias_true'),
    );
    return { T_shown, error: T_shown - T_true };
  },
  'bias-from-point': (given) => ({
    R_bias_true: biasFromPoint(
      probe(given),
      { T_true: given.number('T_true'), T_shown: given.number('T_shown') },
      given.number('R_bias_assumed'),
    ),
  }),
  'bias-and-series-from-two-points': (given) => {
    const [one, other] = [1, 2].map((i) => ({
      T_true: given.number(`T_true_${i}`),
      T_shown: given.number(`T_shown_${i}`),
    })) as [{ T_true: number; T_shown: number }, { T_true: number; T_shown: number }];
    const { bias, series } = biasAndSeries(
      probe(given),
      [one, other],
      given.number('R_bias_assumed'),
    );
    return { R_bias_true: bias, R_series: series };
  },
  'trim-parallel': (given) => ({
    R_trim: trimParallel(given.number('R_present'), given.number('R_target')),
  }),
  'trim-series': (given) => ({
    R_trim: trimSeries(given.number('R_present'), given.number('R_target')),
  }),
  'parallel-worst-case': (given) => {
    const network = { form: 'a|b', parts: [given.number('R1'), given.number('R2')] } as const;
    const [R_min, R_max] = networkBand(network, [
      given.number('tolerance1'),
      given.number('tolerance2'),
    ]);
    return { R_nominal: networkResistance(network), R_min, R_max };
  },
  'self-heating': (given) => {
    const P = probePower({
      V_s: given.number('V_supply'),
      R: given.number('R_thermistor'),
      R_b: given.number('R_bias'),
    });
    return { power: P, rise: selfHeating({ P, delta: given.number('dissipation_constant') }) };
  },
};

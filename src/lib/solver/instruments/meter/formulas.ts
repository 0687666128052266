/** Lines of the flow meter. Each is tied by a test to the function the solver calls. */
import { defineFormula, type Formula, type Term } from '../../formula';
import { SOURCES } from '../../sources';
import type { Counting } from './kFactor';
import { RATING_DENSITY } from './meterInLoop';

const count = (tex: string, name: string): Term => ({ tex, quantity: 'count', name });
const volume = (tex: string, name: string): Term => ({ tex, quantity: 'volume', name });
const time = (tex: string, name: string): Term => ({ tex, quantity: 'time', name });
const flow = (tex: string, name: string): Term => ({ tex, quantity: 'volumeFlow', name });
const share = (tex: string, name: string): Term => ({ tex, quantity: 'percent', name });
const K: Term = { tex: 'K', quantity: 'pulsesPerVolume', name: 'K-factor' };
const N = count('N', 'pulses counted');
const V = volume('V', 'volume in the bucket');
const T = time('t', 'time by the watch');

/** Mean flow of a run. */
export const runFlow = defineFormula({
  id: 'meter.run-flow',
  expr: 'V / t',
  gives: flow('\\dot V', 'mean flow'),
  terms: { V, t: T },
  source: SOURCES.definition,
});

/** K of a run: `kOfRun`. */
export const runK = defineFormula({
  id: 'meter.run-k',
  expr: 'N / V',
  gives: K,
  terms: { N, V },
  source: SOURCES.definition,
});

const errors = {
  u_N: { tex: 'u_N', quantity: 'ratio', name: '± of the count' },
  N,
  u_V: volume('u_V', '± of the level in the bucket'),
  V,
} as const;

/** ± of K of a run, as a share: `kOfRun`. */
export const RUN_SHARE: Readonly<Record<Counting, Formula>> = {
  'whole-run': defineFormula({
    id: 'meter.run-share',
    expr: 'sqrt((u_N / N)^2 + (u_V / V)^2)',
    gives: share('s', '± of K'),
    terms: errors,
    source: SOURCES.gum,
  }),
  'by-watch': defineFormula({
    id: 'meter.run-share-by-watch',
    expr: 'sqrt((u_N / N)^2 + (u_V / V)^2 + (u_t / t)^2)',
    gives: share('s', '± of K'),
    terms: { ...errors, u_t: time('u_t', '± of the watch'), t: T },
    source: SOURCES.gum,
  }),
};

/** Formulas over as many runs as there are. */
export interface RunsFormulas {
  readonly mean: Formula;
  readonly chiSquare: Formula;
  readonly fromRuns: Formula;
}

const known = new Map<number, RunsFormulas>();

/** Weighted mean, chi-square and ± of `n` runs: `kFactor`. */
export function runsFormulas(n: number): RunsFormulas {
  let made = known.get(n);
  if (!made) known.set(n, (made = makeRunsFormulas(n)));
  return made;
}

function makeRunsFormulas(n: number): RunsFormulas {
  const places = Array.from({ length: n }, (_, i) => i + 1);
  const sum = (each: (i: number) => string) => places.map(each).join(' + ');
  const weights = sum((i) => `1 / s_${i}^2`);
  const shares: Record<string, Term> = {};
  const values: Record<string, Term> = {};
  for (const i of places) {
    values[`K_${i}`] = { ...K, tex: `K_{${i}}`, name: `K of run ${i}` };
    shares[`s_${i}`] = share(`s_{${i}}`, `± of run ${i}`);
  }
  return {
    mean: defineFormula({
      id: `meter.mean-k-${n}`,
      expr: `(${sum((i) => `K_${i} / s_${i}^2`)}) / (${weights})`,
      gives: K,
      terms: { ...values, ...shares },
      source: SOURCES.weightedMean,
    }),
    chiSquare: defineFormula({
      id: `meter.chi-square-${n}`,
      expr: sum((i) => `(2 * (K_${i} / K - 1) / s_${i})^2`),
      gives: { tex: '\\chi^2', quantity: 'ratio', name: 'scatter of the runs against their ±' },
      terms: { K, ...values, ...shares },
      source: SOURCES.weightedMean,
    }),
    fromRuns: defineFormula({
      id: `meter.from-runs-${n}`,
      expr: `K * w / sqrt(${weights})`,
      gives: { ...K, tex: 'u_r', name: '± of K from the runs' },
      terms: { K, w: { tex: 'w', quantity: 'ratio', name: 'widening' }, ...shares },
      source: SOURCES.weightedMean,
    }),
  };
}

/** By how much the scatter exceeds the ±: Birge's ratio. */
export const birgeRatio = defineFormula({
  id: 'meter.birge',
  expr: 'sqrt(max(1, chi / nu))',
  gives: { tex: 'w', quantity: 'ratio', name: 'widening' },
  terms: {
    chi: { tex: '\\chi^2', quantity: 'ratio', name: 'scatter' },
    nu: count('\\nu', 'runs less one'),
  },
  source: SOURCES.weightedMean,
});

/** ± of K with the bucket's own marks. */
export const wholePlusMinus = defineFormula({
  id: 'meter.whole-plus-minus',
  expr: 'sqrt(u_r^2 + (K * b)^2)',
  gives: { ...K, tex: 'u_K', name: '± of K' },
  terms: {
    u_r: { ...K, tex: 'u_r', name: '± from the runs' },
    K,
    b: share('b', '± of the bucket’s marks'),
  },
  source: SOURCES.gum,
});

/** Pulses at a flow. */
export const pulseFrequency = defineFormula({
  id: 'meter.frequency',
  expr: 'K * Q',
  gives: { tex: 'f', quantity: 'frequency', name: 'pulses' },
  terms: { K, Q: flow('\\dot V', 'flow') },
  source: SOURCES.definition,
});

/** Flow at which the pulses reach a frequency. */
export const flowAtFrequency = defineFormula({
  id: 'meter.flow-at-frequency',
  expr: 'f / K',
  gives: flow('\\dot V_f', 'flow at that frequency'),
  terms: { f: { tex: 'f', quantity: 'frequency', name: 'frequency' }, K },
  source: SOURCES.definition,
});

/** Flow above which one K holds: `linearAbove`. */
export const linearAboveFormula = defineFormula({
  id: 'meter.linear-above',
  expr: 'Q_0 / x',
  gives: flow('\\dot V_{low}', 'flow above which K holds'),
  terms: {
    Q_0: flow('\\dot V_0', 'flow at which the turbine stops, from the runs'),
    x: share('x', 'error allowed'),
  },
  source: SOURCES.commonPractice,
});

const made = {
  Q_m: flow('\\dot V_{min}', 'lowest by its maker'),
  f: { tex: 'f_{min}', quantity: 'frequency', name: 'slowest pulses the input takes' },
  K,
} as const;

/** Lower end of what may be believed, without a slip: `readableRange`. */
export const readableFrom = defineFormula({
  id: 'meter.readable-from',
  expr: 'max(Q_m, f / K)',
  gives: flow('\\dot V_a', 'reading holds from'),
  terms: made,
  source: SOURCES.definition,
});

/** Lower end with the slip of the runs: `readableRange`. */
export const readableFromSlip = defineFormula({
  id: 'meter.readable-from-slip',
  expr: 'max(Q_m, f / K, Q_s)',
  gives: flow('\\dot V_a', 'reading holds from'),
  terms: { ...made, Q_s: flow('\\dot V_{low}', 'flow above which K holds') },
  source: SOURCES.definition,
});

/** Upper end: `readableRange`. */
export const readableTo = defineFormula({
  id: 'meter.readable-to',
  expr: 'min(Q_h, f_h / K)',
  gives: flow('\\dot V_b', 'reading holds up to'),
  terms: {
    Q_h: flow('\\dot V_{max}', 'highest by its maker'),
    f_h: { tex: 'f_{max}', quantity: 'frequency', name: 'fastest pulses the input counts' },
    K,
  },
  source: SOURCES.definition,
});

/** Step of the reading: `flowStep`. */
export const flowStepFormula = defineFormula({
  id: 'meter.flow-step',
  expr: '1 / (K * t_g)',
  gives: flow('\\Delta\\dot V', 'one pulse more or less'),
  terms: { K, t_g: time('t_g', 'gate of the input') },
  source: SOURCES.definition,
});

/** Loss of the meter: `meterLoss`. */
export const meterLossFormula = defineFormula({
  id: 'meter.loss',
  expr: 'dp_r * (Q / Q_r)^2 * rho / rho_r',
  gives: { tex: '\\Delta p_m', quantity: 'pressureDrop', name: 'lost in the meter' },
  terms: {
    dp_r: { tex: '\\Delta p_r', quantity: 'pressureDrop', name: 'lost at the rated flow' },
    Q: flow('\\dot V', 'flow with the meter'),
    Q_r: flow('\\dot V_r', 'rated flow'),
    rho: { tex: '\\rho', quantity: 'density', name: 'density of the liquid' },
    rho_r: {
      tex: '\\rho_r',
      quantity: 'density',
      name: 'density of water at the rating',
      fixed: RATING_DENSITY,
    },
  },
  source: SOURCES.darcyWeisbach,
});

/** Flow that the meter costs. */
export const flowTaken = defineFormula({
  id: 'meter.flow-taken',
  expr: 'Q - Q_m',
  gives: flow('\\Delta\\dot V_m', 'flow the meter costs'),
  terms: { Q: flow('\\dot V', 'flow without it'), Q_m: flow('\\dot V_m', 'flow with it') },
  source: SOURCES.definition,
});

/** Straight hose: `straightLength`. */
export const straightFormula = defineFormula({
  id: 'meter.straight',
  expr: 'n * d',
  gives: { tex: 'L', quantity: 'dimension', name: 'straight hose wanted' },
  terms: {
    n: count('n', 'bores'),
    d: { tex: 'd', quantity: 'bore', name: 'bore of the meter' },
  },
  source: SOURCES.commonPractice,
});

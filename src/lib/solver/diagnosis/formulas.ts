/** Lines the sheet shows of the diagnosis. Each is what rank.ts and likelihood.ts compute. */
import { defineFormula, type Formula, type Term } from '../formula';
import type { Quantity } from '../quantity';
import { SOURCES } from '../sources';
import { CHANNELS } from './channels';
import { COMMON_MODEL_SHARE, PLUS_MINUS_SIGMAS } from './likelihood';
import type { Channel } from './types';

const ratio = (tex: string, name: string) => ({ tex, quantity: 'ratio', name }) as const;

const DIFFERENCE: Partial<Record<Quantity, Quantity>> = { temperature: 'temperatureDifference' };
const differenceOf = (quantity: Quantity): Quantity => DIFFERENCE[quantity] ?? quantity;

/** What belongs to one channel: terms of its own kind of quantity. */
export interface ChannelFormulas {
  /** From ± to one standard deviation. */
  readonly instrument: Formula;
  /** Instrument and model together. */
  readonly together: Formula;
  readonly miss: Formula;
}

function channelFormulas(channel: Channel): ChannelFormulas {
  const { quantity, tex, name, thermal } = CHANNELS[channel];
  const difference = differenceOf(quantity);
  const term = (symbol: string, what: string): Term => ({
    tex: symbol,
    quantity: difference,
    name: what,
  });
  const instrument = term('\\sigma_i', 'standard deviation of the instrument');
  const sigma = term('\\sigma', 'standard deviation of reading and model together');
  const model = term('\\sigma_m', 'error of the model’s own at this reading');
  return {
    instrument: defineFormula({
      id: `diagnosis.instrument-${channel}`,
      expr: 'pm / k',
      gives: instrument,
      terms: {
        pm: term('u', '± of the reading'),
        k: { ...ratio('k', 'standard deviations in a ±'), fixed: PLUS_MINUS_SIGMAS },
      },
      source: SOURCES.definition,
    }),
    together: thermal
      ? defineFormula({
          id: `diagnosis.sigma-${channel}`,
          expr: 'sqrt(s_i^2 + s_m^2 + (c * (y_p - T_a))^2 + s_a^2)',
          gives: sigma,
          terms: {
            s_i: instrument,
            s_m: model,
            c: {
              ...ratio('c', 'share by which the loop as described may be off'),
              fixed: COMMON_MODEL_SHARE,
            },
            y_p: { tex: `${tex}^{*}`, quantity, name: `${name}, predicted` },
            T_a: { tex: 'T_a', quantity: 'temperature', name: 'ambient air' },
            s_a: term('\\sigma_a', 'standard deviation of the ambient reading'),
          },
          source: SOURCES.diagnosisErrors,
        })
      : defineFormula({
          id: `diagnosis.sigma-${channel}`,
          expr: 'sqrt(s_i^2 + s_m^2 + (c * y_p)^2)',
          gives: sigma,
          terms: {
            s_i: instrument,
            s_m: model,
            c: ratio('c', 'share by which the model may be off'),
            y_p: { tex: `${tex}^{*}`, quantity, name: `${name}, predicted` },
          },
          source: SOURCES.diagnosisErrors,
        }),
    miss: defineFormula({
      id: `diagnosis.miss-${channel}`,
      expr: '(y - y_p) / s',
      gives: ratio('z', 'standard deviations between reading and prediction'),
      terms: {
        y: { tex, quantity, name: `${name}, read` },
        y_p: { tex: `${tex}^{*}`, quantity, name: `${name}, predicted` },
        s: sigma,
      },
      source: SOURCES.definition,
    }),
  };
}

const made = new Map<Channel, ChannelFormulas>();

/** The formulas of a channel, made when first asked for. */
export function formulasOf(channel: Channel): ChannelFormulas {
  let found = made.get(channel);
  if (!found) made.set(channel, (found = channelFormulas(channel)));
  return found;
}

/** How a miss weighs: the normal density over its top. */
export const missWeight = defineFormula({
  id: 'diagnosis.miss-weight',
  expr: 'exp(-z^2 / 2)',
  gives: ratio('\\ell', 'likelihood of this reading, over that of a perfect fit'),
  terms: { z: ratio('z', 'standard deviations between reading and prediction') },
  source: SOURCES.gauss,
});

/** Bayes for the leading cause; likelihoods over its own. */
export const leadingProbability = defineFormula({
  id: 'diagnosis.leading-probability',
  expr: 'w_1 / (w_1 + w_2 * B_2 + w_3 * B_3 + R)',
  gives: { tex: 'P_1', quantity: 'percent', name: 'probability of the leading cause' },
  terms: {
    w_1: ratio('w_1', 'weight of the leading cause before the readings'),
    w_2: ratio('w_2', 'weight of the second'),
    B_2: ratio('B_2', 'likelihood of the readings under the second over that under the first'),
    w_3: ratio('w_3', 'weight of the third'),
    B_3: ratio('B_3', 'likelihood of the readings under the third over that under the first'),
    R: ratio('R', 'weight times likelihood of all others, over the likelihood under the first'),
  },
  source: SOURCES.bayes,
});

/** Drop of the liquid across the front exchanger, as read. */
export const measuredDrop = defineFormula({
  id: 'diagnosis.measured-drop',
  expr: 'T_in - T_out',
  gives: {
    tex: '\\Delta T_f',
    quantity: 'temperatureDifference',
    name: 'drop of the liquid through the front exchanger, as read',
  },
  terms: {
    T_in: { tex: 'T_{f,in}', quantity: 'temperature', name: 'liquid into the front exchanger' },
    T_out: { tex: 'T_{f,out}', quantity: 'temperature', name: 'liquid out of the front exchanger' },
  },
  source: SOURCES.definition,
});

const rate = { tex: 'C_l', quantity: 'conductance', name: 'capacity rate of the liquid' } as const;

/** Heat that the front exchanger takes off, by the liquid. */
export const measuredHeat = defineFormula({
  id: 'diagnosis.measured-heat',
  expr: 'C_l * dT',
  gives: { tex: '\\dot Q_f', quantity: 'heat', name: 'heat given off, by the liquid' },
  terms: { C_l: rate, dT: measuredDrop.gives },
  source: SOURCES.energyBalance,
});

/** Share of the possible drop that the liquid makes, against ambient. */
export const measuredEffectiveness = defineFormula({
  id: 'diagnosis.measured-effectiveness',
  expr: 'dT / (T_in - T_a)',
  gives: {
    tex: '\\varepsilon_l',
    quantity: 'percent',
    name: 'liquid-side effectiveness against ambient',
  },
  terms: {
    dT: measuredDrop.gives,
    T_in: measuredDrop.terms.T_in,
    T_a: { tex: 'T_a', quantity: 'temperature', name: 'ambient air' },
  },
  source: SOURCES.kaysLondon,
});

/** Heat per degree above ambient, as read. */
export const measuredConductance = defineFormula({
  id: 'diagnosis.measured-conductance',
  expr: 'Q_f / (T_in - T_a)',
  gives: { tex: 'G', quantity: 'conductance', name: 'heat per degree above ambient, as read' },
  terms: {
    Q_f: measuredHeat.gives,
    T_in: measuredDrop.terms.T_in,
    T_a: measuredEffectiveness.terms.T_a,
  },
  source: SOURCES.definition,
});

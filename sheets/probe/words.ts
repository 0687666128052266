/** Names of what may be wrong, and of networks, in the words of the trade. */
import type { FittedHypothesis, HypothesisId } from '$lib/solver/instruments/probe/hypotheses';
import type { Form, Network } from '$lib/solver/instruments/probe/trim/network';
import type { Placement } from '$lib/solver/instruments/probe/trim/trims';
import { q, type Sentence } from '../types';

export const HYPOTHESIS: Readonly<Record<HypothesisId, string>> = {
  'as-described': 'nothing is wrong',
  bias: 'bias and table do not match',
  'pull-up': 'a hidden pull-up inside the reader',
  supply: 'the divider’s supply is not the reader’s reference',
  pin: 'resistance in the probe’s lead or pin',
  leak: 'a leak across the probe',
};

export const PLACEMENT: Readonly<Record<Placement, string>> = {
  across: 'across the bias resistor',
  'in-series': 'in series with the bias resistor',
  instead: 'in place of the bias resistor',
};

const IN_SERIES = ' in series';

/** Between the parts of each form, and round them. */
const JOINED: Readonly<Record<Form, readonly string[]>> = {
  a: ['', ''],
  'a+b': ['', ' + ', IN_SERIES],
  'a|b': ['', ' and ', ' side by side'],
  'a+b+c': ['', ' + ', ' + ', IN_SERIES],
  'a|b|c': ['', ', ', ' and ', ' side by side'],
  '(a+b)|c': ['', ' + ', ' in series, with ', ' beside both'],
  '(a|b)+c': ['', ' and ', ' side by side, then ', IN_SERIES],
};

/** A network as one would call it across a bench. */
export const networkWords = ({ form, parts }: Network): Sentence => {
  const joined = JOINED[form];
  return parts
    .flatMap((R, i) => [joined[i]!, q(R, 'resistance')])
    .concat(joined[parts.length]!)
    .filter((part) => part !== '');
};

/** A network and where it goes, each word once: parts in series are in series with the bias, too. */
export function solderedWords(network: Network, placement: Placement): Sentence {
  const words = networkWords(network);
  const last = words[words.length - 1];
  const joined =
    placement === 'in-series' && typeof last === 'string' && last.endsWith(IN_SERIES)
      ? [...words.slice(0, -1), last.slice(0, -IN_SERIES.length)].filter((part) => part !== '')
      : words;
  const comma = network.parts.length > 1 && joined === words ? ',' : '';
  return [...joined, `${comma} ${PLACEMENT[placement]}`];
}

/** The number behind a hypothesis, in its own words. */
export function hypothesisNumber(
  { id, value, quantity, plusMinus }: FittedHypothesis,
  readerBiasKnown: boolean,
): Sentence {
  if (value === null) return [];
  const number: Sentence = Number.isFinite(plusMinus)
    ? [q(value, quantity), ' ± ', q(plusMinus, quantity)]
    : [q(value, quantity)];
  const words: Readonly<Record<Exclude<HypothesisId, 'as-described'>, string>> = {
    bias: readerBiasKnown
      ? 'bias that works in the circuit: '
      : 'bias for which the table was made: ',
    'pull-up': 'pull-up to the supply: ',
    supply: 'supply over reference: ',
    pin: 'in series with the probe: ',
    leak: 'across the probe: ',
  };
  return [words[id as keyof typeof words], ...number];
}

/** What to solder, what it leaves, and when not to. */
import { GONE_LEAST, LEFT_MOST } from '$lib/solver/instruments/probe/trim/choice';
import type { Trim, Trims } from '$lib/solver/instruments/probe/trim/trims';
import { q, say, type Finding, type Sentence } from '../types';
import type { Study } from './study';
import type { Tried } from './tried';
import { solderedWords } from './words';

const REPAIR_FIRST = ['pin', 'leak', 'supply'];

export function trimFindings(study: Study): Finding[] {
  const { job, verdict, trims, trim } = study;
  if (!verdict && !job.readerBiasKnown) return [];
  if (!trims) return [];
  if (!trims.ok) return [{ code: 'no-trim', level: 'act', sentence: noRange(trims) }];
  return trim ? soldering(study, trims.value, trim) : [noSoldering(study, trims.value)];
}

const noRange = ({ problem, sentence }: Extract<Tried<Trims>, { ok: false }>): Sentence =>
  problem.code === 'out-of-range'
    ? [...sentence, ' Shorten the range that counts, or give the probe more points.']
    : sentence;

/** The error that is there, in words. */
const presentWords = (present: number): Sentence =>
  present === Infinity
    ? say`the reader showing nothing at one end of the range`
    : say`${q(present, 'temperatureDifference')}`;

/** What is left where some bias shows something over the whole range. */
const leastWords = ({ present, least }: Trims): Sentence =>
  least === Infinity
    ? say`with no bias would the reader show something over the whole range`
    : [
        ...say`the best bias there could be would leave ${q(least, 'temperatureDifference')} over the range, where now there is `,
        ...presentWords(present),
      ];

/** The bound, said wherever it decides. */
const WORTH = say`A trim is worth its joints where it leaves at most ${q(LEFT_MOST, 'temperatureDifference')} and at most ${q(1 - GONE_LEAST, 'percent')} of the error (common practice): further off, a reading misleads with it as without.`;

function noSoldering({ noTrim, stock, stockAssumed }: Study, found: Trims): Finding {
  switch (noTrim) {
    case 'repair':
      return {
        code: 'repair-first',
        level: 'act',
        sentence: [
          ...say`No network mends this: a bias that is off does not explain the readings, and `,
          ...leastWords(found),
          '. A trim would only hide the fault, and be wrong again when it changes. Put the fault right first, then read both baths again.',
        ],
      };
    case 'bias-cannot':
      return {
        code: 'trim-bias-cannot',
        level: 'watch',
        sentence: [
          ...say`No network mends this: `,
          ...leastWords(found),
          '. ',
          ...WORTH,
          ' Bias is not all that is wrong: check the reader’s table, the probe and its lead.',
        ],
      };
    case 'no-stock':
      return {
        code: 'no-trim',
        level: 'act',
        sentence: stock.ok ? [] : stock.sentence,
      };
    case 'stock-cannot':
      return {
        code: 'trim-no-help',
        level: 'watch',
        sentence: [
          ...say`No network of up to three of these resistors${stockAssumed ? EXAMPLE : ''} comes near enough to be worth soldering; `,
          ...leastWords(found),
          '. ',
          ...WORTH,
          ' A finer series, or more values in the list, may do it.',
        ],
      };
    default:
      return {
        code: 'trim-not-needed',
        level: 'good',
        sentence: [
          ...say`Over the range the largest error is `,
          ...presentWords(found.present),
          ': good enough as it is.',
        ],
      };
  }
}

/** Behind what rests on the list that comes with the blank. */
const EXAMPLE = ' (of the example list; enter yours)';

function soldering(study: Study, { present }: Trims, trim: Trim): Finding[] {
  const { leading, goodEnough, stockAssumed } = study;
  const found: Finding[] = [
    {
      code: 'solder',
      level: trim.worst <= goodEnough && !stockAssumed ? 'good' : 'watch',
      sentence: [
        ...say`Solder `,
        ...solderedWords(trim.network, trim.placement),
        ...say`${stockAssumed ? EXAMPLE : ''}: bias ${q(trim.bias, 'resistance')}. The largest error over the range falls from `,
        ...presentWords(present),
        ...say` to ${q(trim.worst, 'temperatureDifference')}; with every resistor at the end of its ±, ${q(trim.worstWithTolerance, 'temperatureDifference')}.`,
      ],
    },
  ];
  if (leading && REPAIR_FIRST.includes(leading.id)) {
    found.push({
      code: 'repair-first',
      level: 'act',
      sentence: say`Put the fault right first. A trim only bends the reading towards the truth over the range, and is wrong again when the fault changes.`,
    });
  } else if (trim.worstWithTolerance > goodEnough && trim.worst <= goodEnough) {
    found.push({
      code: 'measure-resistors',
      level: 'watch',
      sentence: say`As printed on them, the resistors may miss ${q(goodEnough, 'temperatureDifference')}. Measure each with an ohm-meter and enter its own value.`,
    });
  }
  return found;
}

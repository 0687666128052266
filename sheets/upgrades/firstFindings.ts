/** Which of all that could be done to do first, in plain words, and how sure that is. */
import { countOf, type Counted, type Drawn } from '$lib/job/upgrades/spreads';
import type { UpgradeStudy } from '$lib/job/upgrades/upgrades';
import { q, say, type Finding, type Sentence } from '../types';
import { takesOff } from './choice';
import { spreadsOf, type Option } from './options';
import { halfWidth } from './plusMinus';
import { JUDGED, short } from './words';

/** A chance from which on one is taken for better than another. */
export const SURE = 0.95;

/** Some letters of a name in a sentence. */
const NAME = 60;
const named = (name: string) => `“${short(name, NAME)}”`;
/** With what is bought for it, where its name does not say. */
const told = ({ name, bought }: Option) =>
  bought === null ? named(name) : `${named(name)} (${short(bought, NAME)})`;

/** A chance counted: what every draw said is said so, not as a hundred per cent. */
export function inDraws({ n, N }: Counted): Sentence {
  if (n === N) return say`in every one of the ${q(N, 'count')} loops drawn within the ±`;
  if (n === 0) return say`in none of the ${q(N, 'count')} loops drawn within the ±`;
  return say`in ${q(n / N, 'percent')} of the ${q(N, 'count')} loops drawn within the ±`;
}

/** Less than this nobody buys, K: a gauge on the road does not show it (common practice, no source). */
const WORTH = 0.5;

/** With a price and enough to be felt, the cheapest degrees first. */
const worthIt = (options: readonly Option[]): readonly Option[] =>
  options.filter(({ perDegree, gain }) => perDegree !== null && gain >= WORTH);

/** The one to do first; null where nothing with a price takes degrees off that would be felt. */
export const firstOf = (options: readonly Option[]): Option | null => worthIt(options)[0] ?? null;

/** The answer in one sentence: what, for how much, what it brings, how sure. */
export function firstSentence(options: readonly Option[], { judge }: UpgradeStudy): Sentence {
  const [first, second] = worthIt(options);
  if (!first) return [];
  const pm = spreadsOf(first);
  return [
    ...say`Do ${told(first)} first: ${q(first.cost!, 'money')} take ${q(first.gain, 'temperatureDifference', pm.gain)} off the charge air ${JUDGED[judge]}, ${q(first.perDegree!, 'costPerDegree', pm.perDegree)}`,
    ...(first.cheapest && options.length > 1
      ? [...say`: the cheapest degrees `, ...inDraws(first.cheapest)]
      : []),
    '.',
    ...(second
      ? say` Next is ${named(second.name)} at ${q(second.perDegree!, 'costPerDegree', spreadsOf(second).perDegree)}.`
      : []),
  ];
}

/** With what it lacks of a proof; `sure`: it lacks nothing. Empty where there is no first. */
export function firstWithProof(
  options: readonly Option[],
  study: UpgradeStudy,
): { readonly sure: boolean; readonly sentence: Sentence } {
  const first = firstOf(options);
  const sure = !first?.cheapest || first.cheapest.n >= SURE * first.cheapest.N;
  return {
    sure,
    sentence: [
      ...firstSentence(options, study),
      ...(sure ? [] : [' That is no proof: measure better what is unsure, see sheet 16.']),
    ],
  };
}

/** Where it ends, and how likely that is cool enough; nothing where it is not drawn. */
export function limitSentence({ drawn, T, name }: Option, limit: number): Sentence {
  if (!drawn) return [];
  return [
    ...say`With ${named(name)} alone the charge air is at ${q(T, 'temperature', halfWidth(drawn))}; `,
    ...keptIn(drawn, limit),
    '.',
  ];
}

/** How likely a limit is kept; nothing where it is not drawn. */
export function keptIn(drawn: Drawn | null, limit: number): Sentence {
  const within = drawn && countOf(drawn, (value) => value <= limit);
  return within
    ? [...say`it keeps the limit of ${q(limit, 'temperature')} `, ...inDraws(within)]
    : [];
}

/** Which to do first, of all that one could do. */
export function firstFindings(
  options: readonly Option[],
  study: UpgradeStudy,
  candidates: number,
): Finding[] {
  if (candidates === 0) {
    return [
      {
        code: 'no-candidates',
        level: 'info',
        sentence: say`Nothing is planned yet. Plan a change beside the loop as found, put it aside, and plan another: every one is then compared here.`,
      },
    ];
  }
  const first = firstOf(options);
  const found: Finding[] = [];
  if (first) {
    const { sure, sentence } = firstWithProof(options, study);
    found.push({ code: 'first', level: sure ? 'good' : 'watch', sentence });
  }
  const [most] = options.filter(({ gain }) => takesOff(gain)).toSorted((a, b) => b.gain - a.gain);
  if (most && most.name !== first?.name) {
    found.push({
      code: 'most',
      level: 'info',
      sentence: say`Money aside ${named(most.name)} takes most off: ${q(most.gain, 'temperatureDifference', spreadsOf(most).gain)}.`,
    });
  }
  return [...found, ...idleFinding(options, study)];
}

/** What takes nothing off, named. */
function idleFinding(options: readonly Option[], { judge }: UpgradeStudy): Finding[] {
  const idle = options.filter(({ gain }) => !takesOff(gain));
  if (idle.length === 0) return [];
  const one = idle.length === 1;
  return [
    {
      code: 'no-help',
      level: 'watch',
      sentence: [
        idle.map(({ name }) => named(name)).join(', '),
        ` ${one ? 'takes' : 'take'} nothing off ${JUDGED[judge]}: what ${one ? 'it mends' : 'they mend'} does not limit there.`,
        judge === 'cruise' ? ' Judge by the pull as well before saying no.' : '',
      ].filter(Boolean),
    },
  ];
}

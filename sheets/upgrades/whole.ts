/** What an answer must not hide: what suffices already, the other way to judge, what counts as exact. */
import type { Evaluated } from '$lib/job/evaluate';
import { FIELDS } from '$lib/job/fields';
import { judged, type Judge } from '$lib/job/upgrades/assess';
import type { Drawn } from '$lib/job/upgrades/spreads';
import { candidatesOf, type UpgradeStudy } from '$lib/job/upgrades/upgrades';
import type { Entries } from '$lib/job/types';
import { q, say, type Finding, type Sentence } from '../types';
import { assessed } from './choice';
import { judgedDraws, type DrawsOf } from './draws';
import { halfWidth } from './plusMinus';
import { sidesIn } from './study';
import { JUDGED, short } from './words';

const OTHER: Readonly<Record<Judge, Judge>> = { cruise: 'pull', pull: 'cruise' };

/** Where the loop as found keeps the limit by itself. */
export function enoughSentence(
  { found, judge }: UpgradeStudy,
  limit: number,
  drawn: Drawn | null,
): Sentence {
  const T = judged(judge, found);
  if (T === null || T > limit) return [];
  return say`As found the charge air ${JUDGED[judge]} is at ${q(T, 'temperature', halfWidth(drawn))}, within the limit of ${q(limit, 'temperature')}: nothing has to be bought for that.`;
}

/**
 * What the best within the budget does where the answer does not look, to go on after “the”; `past`: not
 * cool enough there.
 */
export function otherwise(
  all: Evaluated,
  { best, judge }: UpgradeStudy,
  limit: number,
  drawsOf: DrawsOf,
): { readonly past: boolean; readonly sentence: Sentence } | null {
  if (!best) return null;
  const other = OTHER[judge];
  const side = sidesIn(all.job)(best.moves);
  const T = judged(other, assessed(side));
  if (T === null) return null;
  const pm = halfWidth(judgedDraws(other, drawsOf(side)));
  const past = T > limit;
  return {
    past,
    sentence: past
      ? say`charge air ${JUDGED[other]} is then still at ${q(T, 'temperature', pm)}, past the limit of ${q(limit, 'temperature')}: judge by that as well to see what helps there.`
      : say`charge air ${JUDGED[other]} is then at ${q(T, 'temperature', pm)}, within the limit as well.`,
  };
}

/** Values that a change brings, and whether any has a ±. */
const quantities = (changes: Entries) =>
  Object.entries(changes).filter(
    ([path, { is }]) => is !== undefined && FIELDS.get(path)?.kind === 'quantity',
  );

/** Candidates whose own figures nobody doubts. */
export function exactSentence({ job }: Evaluated): Sentence {
  const exact = candidatesOf(job).filter(({ changes }) => {
    const own = quantities(changes);
    return own.length > 0 && own.every(([, { pm }]) => pm === undefined);
  });
  if (exact.length === 0) return [];
  const one = exact.length === 1;
  return [
    exact.map(({ name }) => `“${short(name, 60)}”`).join(', '),
    `: nothing ${one ? 'it changes' : 'they change'} has a ±, so ${one ? 'its' : 'their'} own figures count as exact, and a ± told is that of the loop alone. Type how sure each quote is.`,
  ];
}

const hasSpread = (entries: Entries) => Object.values(entries).some(({ pm }) => pm !== undefined);

/** The same as findings of the sheet. */
export function wholeFindings(
  all: Evaluated,
  study: UpgradeStudy,
  limit: number,
  drawsOf: DrawsOf,
): Finding[] {
  const enough = enoughSentence(study, limit, judgedDraws(study.judge, drawsOf(all.asFound)));
  const other = otherwise(all, study, limit, drawsOf);
  const exact = exactSentence(all);
  return [
    ...(enough.length > 0 ? [{ code: 'enough', level: 'good', sentence: enough } as const] : []),
    ...(other
      ? [
          {
            code: 'otherwise',
            level: other.past ? 'watch' : 'info',
            sentence: ['With the best within the budget the ', ...other.sentence],
          } as const,
        ]
      : []),
    ...(hasSpread(all.job.asFound)
      ? []
      : [
          {
            code: 'no-spread',
            level: 'watch',
            sentence: say`Nothing of the loop as found has a ±: every figure here counts as exact, and none is. Type how sure the inputs are.`,
          } as const,
        ]),
    ...(exact.length > 0 ? [{ code: 'exact', level: 'watch', sentence: exact } as const] : []),
  ];
}

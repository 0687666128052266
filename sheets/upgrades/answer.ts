/** The answer of the sheet, for its head and for the cover of the folder: one source, the same words. */
import type { Evaluated } from '$lib/job/evaluate';
import type { UpgradeStudy } from '$lib/job/upgrades/upgrades';
import { say, type Sentence } from '../types';
import { drawnSentence } from './drawn';
import { judgedDraws, type DrawsOf } from './draws';
import { bestSentence } from './findings';
import { firstOf, firstWithProof, limitSentence } from './firstFindings';
import { drawnWith } from './front';
import type { Option } from './options';
import { movesIn } from './study';
import { enoughSentence, otherwise } from './whole';

export interface Answer {
  /** In large letters: where nothing needs to be bought; what to do first, its gain, its cost, what comes next. */
  readonly leads: readonly Sentence[];
  /**
   * Where the first ends and how likely that is cool enough; the best within the budget, and what it
   * does where the answer does not look; how much was drawn for it. Empty ones have nothing to tell.
   */
  readonly paragraphs: readonly Sentence[];
  /** Something with a price takes off degrees that would be felt. */
  readonly sells: boolean;
}

export function answerOf(
  all: Evaluated,
  study: UpgradeStudy,
  options: readonly Option[],
  drawsOf: DrawsOf,
): Answer {
  const { charge: limit } = all.asFound.limits;
  const first = firstOf(options);
  const now = judgedDraws(study.judge, drawsOf(all.asFound));
  const enough = enoughSentence(study, limit, now);
  if (!first) {
    const nothing = say`Nothing that has a price takes degrees off the charge air that would be felt.`;
    return { leads: [enough, nothing], paragraphs: [], sells: false };
  }
  const best = bestSentence(study, movesIn(all.job), limit, drawnWith(all, study, drawsOf));
  const other = best.length > 0 ? otherwise(all, study, limit, drawsOf) : null;
  return {
    leads: [enough, firstWithProof(options, study).sentence],
    paragraphs: [
      limitSentence(first, limit),
      other ? [...best, ' The ', ...other.sentence] : best,
      drawnSentence(all, drawsOf),
    ],
    sells: true,
  };
}

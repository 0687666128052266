/** What the sheet of upgrades says first, for the cover: the same findings, so the same words and numbers. */
import type { Evaluated } from '$lib/job/evaluate';
import { FULL, finished, sureness, surenessKey } from '$lib/job/sure/sureness';
import { driven, drivenKey, DRIVES } from '$lib/job/upgrades/driven';
import { about as UPGRADES } from '../upgrades/about';
import { choicesOf } from '../upgrades/choice';
import { studies } from '../how-sure/study';
import { drawsFor, drives, toldSides } from '../upgrades/draws';
import { bestSentence } from '../upgrades/findings';
import { firstFindings, firstOf, limitSentence } from '../upgrades/firstFindings';
import { drawnWith } from '../upgrades/front';
import { optionsOf } from '../upgrades/options';
import { movesIn, studyOf } from '../upgrades/study';
import { enoughSentence, otherwise } from '../upgrades/whole';
import type { Sentence } from '../types';

/** The sheet that answers. */
export const ANSWERS = UPGRADES.slug;

/** The finding that the answer is made of, and what it adds: said in its box, not again among the warnings. */
const FIRST = 'first';
const SAID: readonly string[] = [FIRST, 'otherwise'];
export const isAnswer = (sheet: string, code: string): boolean =>
  sheet === ANSWERS && SAID.includes(code);

export interface Answer {
  /** Where nothing needs to be bought; empty: it does. */
  readonly enough: Sentence;
  /** What to do first, its gain, its cost, what comes next. */
  readonly first: Sentence;
  /** Where it ends, and how likely that is cool enough; empty where it is not drawn. */
  readonly limit: Sentence;
  /** The best within the budget, and what it does where the answer does not look; empty: nothing is. */
  readonly best: Sentence;
}

/** Every draw that the sheet of upgrades tells a ± from, made here and kept: for who can wait. */
export function drawInFull(all: Evaluated): void {
  const told = toldSides(all, studyOf(all));
  for (const side of told.settled)
    studies.of(surenessKey(side), () => finished(sureness(side, FULL)));
  for (const side of told.driven)
    drives.of(drivenKey(side), () => finished(driven(side, DRIVES.full)));
}

/** From the draws there are, else fewer made now. Null where nothing that has a price takes degrees off. */
export function answerAtOnce(all: Evaluated): Answer | null {
  const study = studyOf(all);
  const drawsOf = drawsFor(all, study, true);
  const choices = choicesOf(all, study, drawsOf);
  const options = optionsOf(all, study, choices, drawsOf);
  const option = firstOf(options);
  const said = firstFindings(options, study, choices.length - 1).find(({ code }) => code === FIRST);
  if (!option || !said) return null;
  const { charge } = all.asFound.limits;
  const best = bestSentence(study, movesIn(all.job), charge, drawnWith(all, study, drawsOf));
  const other = otherwise(all, study, charge);
  return {
    enough: enoughSentence(study, charge),
    first: said.sentence,
    limit: limitSentence(option, charge),
    best: best.length > 0 && other ? [...best, ' ', ...other.sentence] : best,
  };
}

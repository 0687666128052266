/** What the sheet of upgrades says first, for the cover: the same findings, so the same words and numbers. */
import type { Evaluated, Side } from '$lib/job/evaluate';
import { FULL, finished, sureness, surenessKey } from '$lib/job/sure/sureness';
import { driven, drivenKey, DRIVES } from '$lib/job/upgrades/driven';
import { about as UPGRADES } from '../upgrades/about';
import { answerOf, type Answer } from '../upgrades/answer';
import { choicesOf } from '../upgrades/choice';
import { studies } from '../how-sure/study';
import { drawsFor, drives, toldSides } from '../upgrades/draws';
import { optionsOf } from '../upgrades/options';
import { halfWidth } from '../upgrades/plusMinus';
import { studyOf } from '../upgrades/study';

/** The sheet that answers. */
export const ANSWERS = UPGRADES.slug;

/** The finding that the answer is made of, and what it adds: said in its box, not again among the warnings. */
const SAID: readonly string[] = ['first', 'otherwise'];
export const isAnswer = (sheet: string, code: string): boolean =>
  sheet === ANSWERS && SAID.includes(code);

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
  const options = optionsOf(all, study, choicesOf(all, study, drawsOf), drawsOf);
  const answer = answerOf(all, study, options, drawsOf);
  return answer.sells ? answer : null;
}

/** ± of the hottest charge of the drive, K, by the same draws; undefined where nothing makes it unsure. */
export const hottestPlusMinus = (side: Side, all: Evaluated): number | undefined =>
  halfWidth(drawsFor(all, studyOf(all), true)(side).chargeHottest);

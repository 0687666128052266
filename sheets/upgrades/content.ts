/** Upgrades compared, as data: results, lines, findings. */
import type { Evaluated, Side } from '$lib/job/evaluate';
import { judgeOf, type UpgradeStudy } from '$lib/job/upgrades/upgrades';
import type { Line } from '$lib/solver/formula';
import type { Limiting } from '$lib/solver/loop/limiting';
import type { ContentOf, Result, SheetContent } from '../types';
import { asideChoices, choiceOf, choicesOf } from './choice';
import { budgetFindings, limitFindings, ownFindings } from './findings';
import { drawnSentence } from './drawn';
import { drawsFor, type DrawsOf } from './draws';
import { firstFindings } from './firstFindings';
import { drawnWith, frontFindings, frontRows } from './front';
import { optionLines } from './optionLines';
import { optionsOf } from './options';
import { choiceLines, limitLines } from './lines';
import { resultsOf } from './results';
import { stepLines } from './steps';
import { movesIn, ownLimits, studyOf } from './study';
import { wholeFindings } from './whole';

/**
 * One side, and on the loop as found also what is said of all candidates together. Without the job as
 * evaluated only the side itself is known: nothing of its parts, and nothing to compare it with.
 */
const contentBy =
  (atOnce: boolean): ContentOf =>
  (side, all) => {
    if (!all) return contentOf(side, ownLimits(side));
    const study = studyOf(all);
    const drawsOf = drawsFor(all, study, atOnce);
    const limits = side.id === 'asFound' ? study.foundLimits : (study.limits[0] ?? null);
    const own = contentOf(side, limits, all, drawsOf);
    return side.id === 'asFound' ? withAll(own, all, study, drawsOf) : own;
  };

/** With every ±, drawn at once where it is not known. */
export const content = contentBy(true);
/** With the ± that are known, while the others are drawn on another thread. */
export const knownContent = contentBy(false);
/** Results of every candidate put aside, in their order. */
export function asideResults(all: Evaluated): readonly (readonly Result[])[] {
  const study = studyOf(all);
  return asideChoices(all, study, drawsFor(all, study, true)).map((choice) =>
    resultsOf(choice, all.asFound.limits),
  );
}

/** While the study is under way: each side by itself. */
export const plainContent: ContentOf = (side, all) => contentOf(side, null, all);

function contentOf(
  side: Side,
  limits: Limiting | null,
  all?: Evaluated,
  drawsOf?: DrawsOf,
): SheetContent {
  const choice = choiceOf(side, all, drawsOf);
  const judge = judgeOf(all?.asFound ?? side);
  return {
    results: resultsOf(choice, side.limits),
    lines: [...(limits ? limitLines(limits, judge) : []), ...choiceLines(choice, judge)],
    findings: [...ownFindings(choice), ...limitFindings(limits, judge)],
  };
}

/** A candidate put aside is neither of the two loops that the lines stand for. */
const apart = (line: Line): Line => (line.kind === 'formula' ? { ...line, apart: true } : line);

function withAll(
  own: SheetContent,
  all: Evaluated,
  study: UpgradeStudy,
  drawsOf: DrawsOf,
): SheetContent {
  const moves = movesIn(all.job);
  const choices = choicesOf(all, study, drawsOf);
  const options = optionsOf(all, study, choices, drawsOf);
  const drawn = drawnSentence(all, drawsOf);
  return {
    results: own.results,
    lines: [
      ...own.lines,
      ...asideChoices(all, study, drawsOf).flatMap((choice) =>
        choiceLines(choice, study.judge, `${choice.id}.`).map(apart),
      ),
      ...optionLines(options, study).map(apart),
      ...stepLines(study, moves).map(apart),
    ],
    findings: [
      ...firstFindings(options, study, choices.length - 1),
      ...wholeFindings(all, study, all.asFound.limits.charge, drawsOf),
      ...budgetFindings(study, moves, all.asFound.limits.charge, drawnWith(all, study, drawsOf)),
      ...frontFindings(frontRows(all, study, drawsOf)),
      ...(drawn.length > 0 ? [{ code: 'drawn', level: 'info', sentence: drawn } as const] : []),
      ...own.findings,
    ],
  };
}

/**
 * What every sheet of a job says, as plain data: results and findings of both sides. The command line,
 * the folder and its revisions take it from here, so that they tell the same. No screen.
 */
import type { ResultRow } from '$lib/job/folder/exportCsv';
import { evaluate, type Evaluated } from '$lib/job/evaluate';
import type { SideId } from '$lib/job/types';
import { once } from '$lib/once';
import { CONTENTS } from '../contents';
import { about as COMPARISON } from '../upgrades/about';
import { asideResults } from '../upgrades/content';
import { studyInFull } from '../how-sure/study';
import type { Finding, Result } from '../types';
import { dutyOf } from '../wiring/duty';
import type { Answer } from '../upgrades/answer';
import { answerAtOnce, drawInFull, hottestPlusMinus } from './answer';

/** The sheet that sets all candidates side by side. */
const COMPARED = COMPARISON.slug;

/** One sheet for one side. */
export interface Gathered {
  readonly sheet: string;
  readonly side: SideId;
  readonly results: readonly Result[];
  readonly findings: readonly Finding[];
  /** What to do first: of the sheet that compares, with the loop as found; null: it has none. */
  readonly answer?: Answer | null;
  /** ± of the hottest charge of the drive, K: of the sheet that compares, by its draws. */
  readonly hottestPlusMinus?: number;
  /** The sheet could not be worked out at all. */
  readonly failed?: string;
}

/** How many there are to come. */
export const partsOf = ({ candidate }: Pick<Evaluated, 'candidate'>): number =>
  Object.keys(CONTENTS).length * (candidate ? 2 : 1);

/**
 * One after the other: the first of them come while the long ones are still to be worked out.
 * @param patient - the draws of how sure it is may take their time, as on the page
 */
export function* gather(all: Evaluated, patient = false): Generator<Gathered, void> {
  const { asFound, candidate } = all;
  const sides = candidate ? [asFound, candidate] : [asFound];
  for (const sheet in CONTENTS) {
    for (const side of sides) {
      try {
        // Of both sides before either is told: what sets one against the other needs both.
        if (patient && sheet === 'how-sure')
          for (const each of sides) studyInFull(each, dutyOf(each));
        if (patient && sheet === COMPARED) drawInFull(all);
        const { results, findings } = CONTENTS[sheet]!(side, all);
        const answers = sheet === COMPARED && side === asFound;
        const answer = answers ? { answer: answerAtOnce(all) } : {};
        const hottest = sheet === COMPARED ? hottestPlusMinus(side, all) : undefined;
        yield {
          sheet,
          side: side.id,
          results,
          findings,
          ...answer,
          ...(hottest !== undefined && { hottestPlusMinus: hottest }),
        };
      } catch (thrown) {
        yield { sheet, side: side.id, results: [], findings: [], failed: wordsOf(thrown) };
      }
    }
  }
}

/** A candidate put aside, and what every sheet says of it. */
export interface GatheredAside {
  readonly name: string;
  /** The job with that candidate in hand and no other. */
  readonly all: Evaluated;
  readonly parts: readonly Gathered[];
}

/** Candidates put aside, one after the other, each by every sheet as if it were in hand. */
export function* gatherAside(all: Evaluated): Generator<GatheredAside, void> {
  const { job } = all;
  const compared = once(() => asideResults(all));
  for (const [i, candidate] of job.aside.entries()) {
    const alone = evaluate({ ...job, candidate, aside: [] });
    const parts = Object.keys(CONTENTS).map((sheet): Gathered => {
      const head = { sheet, side: 'candidate' as const };
      try {
        // Compared with all others there, not by itself.
        if (sheet === COMPARED) return { ...head, results: compared()[i]!, findings: [] };
        const { results, findings } = CONTENTS[sheet]!(alone.candidate!, alone);
        return { ...head, results, findings };
      } catch (thrown) {
        return { ...head, results: [], findings: [], failed: wordsOf(thrown) };
      }
    });
    yield { name: candidate.name, all: alone, parts };
  }
}

const wordsOf = (thrown: unknown) => (thrown instanceof Error ? thrown.message : String(thrown));

/** The results as rows of a table, in the order of the sheets, the loop as found first. */
export const resultRows = (gathered: readonly Gathered[]): ResultRow[] =>
  gathered.flatMap(({ sheet, side, results }) =>
    results.map(({ id, name, quantity, value, absent, state }) => ({
      sheet,
      id,
      name,
      side,
      quantity,
      value,
      ...(value === null && absent !== undefined ? { absent } : {}),
      ...(state === undefined ? {} : { state }),
    })),
  );

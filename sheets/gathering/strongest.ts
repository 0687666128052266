/** Of everything the sheets found, what belongs on the cover: what asks for action, then what warns. */
import type { SideId } from '$lib/job/types';
import type { Finding, FindingLevel } from '../types';
import { isAnswer } from './answer';
import type { Gathered } from './gather';

/** Strongest first; `info` and `good` stay on their sheets, but for the answer, which has a box of its own. */
const ORDER: readonly FindingLevel[] = ['act', 'watch'];

/** About what was measured or is to be: a candidate, which is not built, has no say there. */
export const FOUND_ONLY: readonly string[] = [
  'diagnosis',
  'probe',
  'flow-meter',
  'log',
  'instruments',
];

export interface CoverFinding {
  /** Slug of the sheet that found it. */
  readonly sheet: string;
  readonly finding: Finding;
}

export interface Strongest {
  readonly shown: readonly CoverFinding[];
  /** As strong, but more than the cover takes. */
  readonly left: number;
}

/** Sheets that have a say about one side. */
export const sheetsOf = (sheets: readonly string[], side: SideId): readonly string[] =>
  side === 'asFound' ? sheets : sheets.filter((sheet) => !FOUND_ONLY.includes(sheet));

/**
 * Findings of one side. Act first; within a level the first of every sheet, then the second of each,
 * so that no sheet crowds out another. What two sheets say in the same words is said once.
 * @param sheets - the sheets of the folder in its order
 * @param answered - the answer stands above them in its box
 */
export function strongest(
  parts: readonly Gathered[],
  sheets: readonly string[],
  side: SideId,
  most: number,
  answered = false,
): Strongest {
  const bySheet = sheetsOf(sheets, side).map((sheet) => ({
    sheet,
    findings: parts.find((one) => one.sheet === sheet && one.side === side)?.findings ?? [],
  }));
  const said = new Set<string>();
  const all = ORDER.flatMap((level) => {
    const lists = bySheet.map(({ sheet, findings }) =>
      findings
        .filter((one) => one.level === level && !(answered && isAnswer(sheet, one.code)))
        .map((finding) => ({ sheet, finding })),
    );
    const longest = Math.max(0, ...lists.map((list) => list.length));
    return Array.from({ length: longest }, (_, i) => lists.flatMap((list) => list[i] ?? [])).flat();
  }).filter(({ finding: { sentence } }) => {
    const words = JSON.stringify(sentence);
    return !said.has(words) && said.add(words);
  });
  return { shown: all.slice(0, most), left: Math.max(0, all.length - most) };
}

/** Where one side stands, for the cover: its headline with the ± the job knows, and the limits it is past. */
import type { SideId } from '$lib/job/types';
import type { Result, Sentence } from '../types';
import { q, say } from '../types';
import type { Answer } from '../upgrades/answer';
import { ANSWERS } from './answer';
import type { Gathered } from './gather';
import { sheetsOf } from './strongest';

/** Results of the headline, and which result of the sheet on how sure it is carries their ±. */
const DRAWN: Readonly<Record<string, string>> = {
  'cruise.charge-out': 'charge-cruise-middle',
  'cruise.reservoir': 'reservoir-cruise-middle',
  'traffic.reservoir': 'reservoir-traffic-middle',
};

/** The answer, told with the loop as found; null: none. */
export const answerIn = (parts: readonly Gathered[]): Answer | null =>
  parts.find(({ sheet, side }) => sheet === ANSWERS && side === 'asFound')?.answer ?? null;

/**
 * The headline of a side, each result with its ± where it was drawn: settled loops by the sheet on how
 * sure it is, the drive by the sheet that compares.
 */
export function withPlusMinus(
  headline: readonly Result[],
  parts: readonly Gathered[],
  side: SideId,
): readonly Result[] {
  const partOf = (sheet: string) => parts.find((one) => one.sheet === sheet && one.side === side);
  const drawn = partOf('how-sure')?.results ?? [];
  const hottest = partOf(ANSWERS)?.hottestPlusMinus;
  return headline.map((result) => {
    const settled = drawn.find(({ id }) => id === DRAWN[result.id])?.plusMinus;
    const pm = result.id === 'peak-charge' ? hottest : settled;
    return pm === undefined || result.value === null ? result : { ...result, plusMinus: pm };
  });
}

/**
 * What is past its limit, by name, in one sentence; empty where nothing is. What two sheets call
 * differently but is the same number is said once.
 * @param sheets - the sheets of the folder in its order
 */
export function pastLimits(
  headline: readonly Result[],
  parts: readonly Gathered[],
  sheets: readonly string[],
  side: SideId,
): Sentence {
  const told = sheetsOf(sheets, side).flatMap(
    (sheet) => parts.find((one) => one.sheet === sheet && one.side === side)?.results ?? [],
  );
  const over = [...headline, ...told].filter(({ state }) => state === 'over');
  const once = over.filter(
    ({ name, value }, i) => over.findIndex((o) => o.name === name || o.value === value) === i,
  );
  if (once.length === 0) return [];
  return [
    'Past the limit: ',
    ...once.flatMap(({ name, value, quantity, plusMinus }, i) => [
      i === 0 ? '' : '; ',
      ...(value === null ? [name] : say`${name}, ${q(value, quantity, plusMinus)}`),
    ]),
    '.',
  ].filter((part) => part !== '');
}

/** How many loops and drives the ± rest on, and how exact that makes them. */
import type { Evaluated } from '$lib/job/evaluate';
import { FULL } from '$lib/job/sure/sureness';
import { DRIVES } from '$lib/job/upgrades/driven';
import { rangeError } from '$lib/solver/uncertainty/rangeError';
import { roughly } from '../how-sure/words';
import { q, say, type Sentence } from '../types';
import type { DrawsOf } from './draws';

/** Empty where nothing is drawn. */
export function drawnSentence({ asFound }: Evaluated, drawsOf: DrawsOf): Sentence {
  const { chargeCruise, chargePull } = drawsOf(asFound);
  const parts = [
    ...(chargeCruise ? [{ what: 'settled loops', N: chargeCruise.length, full: FULL.draws }] : []),
    ...(chargePull ? [{ what: 'drives', N: chargePull.length, full: DRIVES.full }] : []),
  ];
  if (parts.length === 0) return [];
  const between = (i: number) => (i === 0 ? '' : ', ');
  const fewer = parts.some(({ N, full }) => N < full);
  return [
    'Drawn within the ± of the inputs, for each choice: ',
    ...parts.flatMap(({ what, N }, i) => [
      ...say`${between(i)}${q(N, 'count')} ${what}, from which a ± is read to about ${roughly(rangeError(N), 'SI')} of itself`,
    ]),
    ': its last digit is not sure.',
    ...(fewer
      ? say` These are few, drawn at once where nothing could wait, as for paper; the sheet left open draws ${q(FULL.draws, 'count')} and ${q(DRIVES.full, 'count')}.`
      : []),
  ].filter((part) => part !== '');
}

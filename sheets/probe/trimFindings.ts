/** What to solder, what it leaves, and when not to. */
import { q, say, type Finding } from '../types';
import type { Study } from './study';
import { networkWords, PLACEMENT } from './words';

const REPAIR_FIRST = ['pin', 'leak', 'supply'];

export function trimFindings(study: Study): Finding[] {
  const { job, verdict, leading, trims, trim, goodEnough } = study;
  if (!verdict && !job.readerBiasKnown) return [];
  if (!trims) return [];
  if (!trims.ok) {
    return [{ code: 'no-trim', level: 'act', sentence: say`${trims.problem.message}` }];
  }
  const { present, least } = trims.value;
  if (!trim) {
    return [
      present <= goodEnough
        ? {
            code: 'trim-not-needed',
            level: 'good',
            sentence: say`Over the range the largest error is ${q(present, 'temperatureDifference')}: good enough as it is.`,
          }
        : {
            code: 'trim-no-help',
            level: 'watch',
            sentence: say`No network of up to three of these resistors does better than the circuit as it is. The best bias there could be would leave ${q(least, 'temperatureDifference')}.`,
          },
    ];
  }
  const before: Finding['sentence'] =
    present === Infinity
      ? say`the reader showing nothing at one end of the range`
      : say`${q(present, 'temperatureDifference')}`;
  const found: Finding[] = [
    {
      code: 'solder',
      level: trim.worst <= goodEnough ? 'good' : 'watch',
      sentence: [
        ...say`Solder `,
        ...networkWords(trim.network),
        ...say` ${PLACEMENT[trim.placement]}: bias ${q(trim.bias, 'resistance')}. The largest error over the range falls from `,
        ...before,
        ...say` to ${q(trim.worst, 'temperatureDifference')}; with every resistor at the end of its ±, ${q(trim.worstWithTolerance, 'temperatureDifference')}.`,
      ],
    },
  ];
  if (leading && REPAIR_FIRST.includes(leading.id)) {
    found.push({
      code: 'repair-first',
      level: 'act',
      sentence: say`Put the fault right first. A trim only bends the reading towards the truth over the range, and is wrong again when the fault changes.`,
    });
  } else if (trim.worstWithTolerance > goodEnough && trim.worst <= goodEnough) {
    found.push({
      code: 'measure-resistors',
      level: 'watch',
      sentence: say`As printed on them, the resistors may miss ${q(goodEnough, 'temperatureDifference')}. Measure each with an ohm-meter and enter its own value.`,
    });
  }
  return found;
}

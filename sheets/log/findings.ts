/** What the log means, in plain words. */
import { channelName } from '$lib/job/log/logKeep';
import type { LogRecord } from '$lib/job/log/logRecord';
import { say, type Finding } from '../types';
import { eventFindings } from './eventFindings';
import { fitFindings } from './fitFindings';
import type { Study } from './study';
import { inSentence, listed } from './words';

export function findings(study: Study): Finding[] {
  const { record } = study;
  if (!record)
    return [
      {
        code: 'no-log',
        level: 'info',
        sentence: say`Open a log: comma, semicolon or tab between its cells, names in its first row. Time, liquid into and out of the front exchanger, flow and ambient tell the heat; charge air before the cooler with its mass flow lets the loop be fitted.`,
      },
    ];
  return [
    ...inventedFinding(record),
    ...fitFindings(study, record),
    ...eventFindings(study),
    ...markFindings(record),
  ];
}

const inventedFinding = (record: LogRecord): Finding[] =>
  record.invented
    ? [
        {
          code: 'invented',
          level: 'info',
          sentence: say`This log is invented; nothing in it was measured on a vehicle.`,
        },
      ]
    : [];

function markFindings(record: LogRecord): Finding[] {
  if (record.marks.length === 0) return [];
  const words = record.marks.map(({ channel, outliers, stuck, beyond }) =>
    [
      inSentence(channelName(channel)),
      listed([
        ...(outliers > 0 ? [`${outliers} ${outliers === 1 ? 'outlier' : 'outliers'}`] : []),
        ...(stuck > 0
          ? [stuck === 1 ? '1 stretch that stands still' : `${stuck} stretches that stand still`]
          : []),
        ...(beyond > 0 ? [`${beyond} beyond what it could read`] : []),
      ]),
    ].join(': '),
  );
  return [
    {
      code: 'marked',
      level: 'watch',
      sentence: say`Doubtful readings, marked where they are and never removed. ${words.join('; ')}.`,
    },
  ];
}

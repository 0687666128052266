/** What the log means, in plain words. */
import { clock } from '$lib/job/log/logEdits';
import { channelName } from '$lib/job/log/logKeep';
import type { LogFit, LogRecord, LogTrial } from '$lib/job/log/logRecord';
import { q, say, type Finding } from '../types';
import { eventFindings } from './eventFindings';
import type { Study } from './study';
import { inSentence, listed, parameterName } from './words';

/** Unseen over seen, and over noise: up to here the fit foretells (common practice, no source). */
const FORETELLS = 1.5;
/** Intervals widened by more than this tell of a model that is not the loop. */
const WIDENED = 2;

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

function fitFindings({ frontUA, outdated }: Study, record: LogRecord): Finding[] {
  const { fit, refused } = record;
  if (refused !== null && refused !== undefined)
    return [{ code: 'no-fit', level: 'watch', sentence: say`No fit: ${refused}` }];
  if (!fit)
    return [
      {
        code: 'not-fitted',
        level: 'info',
        sentence: say`Choose the spans that count and press “Work it out from these spans”.`,
      },
    ];
  const found: Finding[] = [];
  if (outdated)
    found.push({
      code: 'outdated',
      level: 'watch',
      sentence: say`The spans were changed since; what is said here is of the spans before.`,
    });
  if (frontUA) found.push(uaFinding(frontUA));
  return [...found, ...trustFindings(fit), ...weakFindings(fit)];
}

/** Share of the ± from which on the instruments, not the log, set it. */
const BY_INSTRUMENTS = 0.7;

function uaFinding({
  value,
  low,
  high,
  entered,
  instruments,
}: NonNullable<Study['frontUA']>): Finding {
  const ua = q(value, 'conductance');
  if (low === null || high === null)
    return {
      code: 'front-ua',
      level: 'watch',
      sentence: say`Your front exchanger’s UA comes out as ${ua}, but this log does not hold it.`,
    };
  const half = 0.5 * (high - low);
  const width = q(half, 'conductance');
  const why =
    instruments !== null && instruments > BY_INSTRUMENTS * half
      ? say` Most of the ± is that of probes and flow meter, which no longer log makes smaller: put both probes of the exchanger in one bath, and a pull into the spans, whose drop is larger.`
      : [];
  if (entered === null || (entered >= low && entered <= high))
    return {
      code: 'front-ua',
      level: 'good',
      sentence: [
        ...say`Your front exchanger’s UA is ${ua} ± ${width}; the description’s figure${entered === null ? '' : ' of '}${entered === null ? '' : q(entered, 'conductance')} lies within.`,
        ...why,
      ],
    };
  const less = value < entered;
  return {
    code: 'front-ua',
    level: less ? 'watch' : 'info',
    sentence: [
      ...say`Your front exchanger’s UA is ${ua} ± ${width}. The description says ${q(entered, 'conductance')} at the same flows: it does ${less ? 'less' : 'more'} than described${less ? ', by dirt, by air that goes past it or comes round again, or by a rating that flatters' : ''}.`,
      ...why,
    ],
  };
}

function trustFindings({ heldOut, widened, notes }: LogFit): Finding[] {
  const found: Finding[] = [];
  const worst = heldOut.reduce<LogTrial | null>(
    (a, b) => (a === null || b.overSeen > a.overSeen ? b : a),
    null,
  );
  if (worst) {
    const good = worst.overSeen <= FORETELLS;
    const bad = heldOut.filter(({ overSeen }) => overSeen > FORETELLS).length;
    const n = heldOut.length;
    found.push({
      code: 'held-out',
      level: good ? 'good' : 'watch',
      sentence: good
        ? say`${n === 1 ? 'The stretch' : `Each of the ${n} stretches`} left out comes out as well as what was fitted: errors at most ${q(worst.overSeen, 'ratio')} times as large.`
        : say`Of ${String(n)} ${n === 1 ? 'stretch' : 'stretches'} left out and foretold ${String(bad)} ${bad === 1 ? 'comes' : 'come'} out worse than what was fitted, the worst from ${clock(worst.from)} to ${clock(worst.to)}: errors ${q(worst.overSeen, 'ratio')} times as large. Something drove the loop there that the fit has not seen; do not carry it over to such driving.`,
    });
  } else
    found.push({
      code: 'not-held-out',
      level: 'info',
      sentence: say`No stretch was left out, so nothing tells yet whether the fit foretells what it has not seen.`,
    });
  if (widened > WIDENED)
    found.push({
      code: 'widened',
      level: 'watch',
      sentence: say`What the fit leaves is not noise alone, and the ± were widened up to ${q(widened, 'ratio')} times for it: a quick change that hoses and probes smear, or heat that neither log nor description holds.`,
    });
  for (const message of notes.filter((note) => !note.startsWith('What the model leaves')))
    found.push({ code: 'fit-note', level: 'watch', sentence: say`${message}` });
  return found;
}

function weakFindings({ weak, proposals }: LogFit): Finding[] {
  if (weak.length === 0) return [];
  const names = weak.map(({ parameters }) =>
    listed(parameters.map((name) => inSentence(parameterName(name)))),
  );
  const best = proposals[0];
  const one = weak.every(({ parameters }) => parameters.length === 1);
  return [
    {
      code: 'weak',
      level: 'watch',
      sentence: say`This log ${one ? 'does not tell' : 'cannot tell apart'}: ${names.join('; ')}.${best ? ` What would: ${best.says}` : ''}`,
    },
  ];
}

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

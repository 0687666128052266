/** What the fit found of the front exchanger, and what may be built on it. */
import type { LogEstimate, LogFit, LogRecord } from '$lib/job/log/logRecord';
import { about as MEASURED } from '../core-from-measures/about';
import { about as RATED } from '../exchangers/about';
import { q, say, type Finding, type Sentence } from '../types';
import { leastOf } from './least';
import type { Study } from './study';
import { misses, trustFindings, weakFindings } from './trustFindings';

export function fitFindings(study: Study, record: LogRecord): Finding[] {
  const { fit, refused } = record;
  if (refused !== null && refused !== undefined)
    return [
      { code: 'no-fit', level: 'watch', sentence: say`No fit: ${refused}` },
      ...leastFinding(study),
    ];
  if (!fit)
    return [
      {
        code: 'not-fitted',
        level: 'info',
        sentence: say`Choose the spans that count and press “Work it out from these spans”.`,
      },
    ];
  const { frontUA, outdated } = study;
  const found: Finding[] = [];
  if (outdated)
    found.push({
      code: 'outdated',
      level: 'watch',
      sentence: say`The spans were changed since; what is said here is of the spans before.`,
    });
  if (frontUA) found.push(uaFinding(study, fit, frontUA));
  return [...found, ...soakFinding(fit), ...trustFindings(fit), ...weakFindings(fit)];
}

/** Without a fit, flow and two temperatures still bound the core from below. */
function leastFinding(study: Study): Finding[] {
  const least = leastOf(study);
  if (!least) return [];
  return [
    {
      code: 'least-ua',
      level: 'info',
      sentence: say`From the flow, both temperatures and ambient alone: your front exchanger’s UA is at least ${q(least.UA, 'conductance')} ± ${q(least.plusMinus, 'conductance')}, as if its air stayed at ambient all the way through. Log the charge air before the cooler with its mass flow, and the whole loop can be fitted.`,
    },
  ];
}

/** Share of the ± from which on the instruments, not the log, set it. */
const BY_INSTRUMENTS = 0.7;
/** A ± of more than this share of the value holds nothing to build on. */
const LOOSE = 0.5;

function uaFinding(study: Study, fit: LogFit, frontUA: LogEstimate): Finding {
  const { value, low, high, entered, instruments } = frontUA;
  const ua = q(value, 'conductance');
  if (low === null || high === null || low <= 0)
    return {
      code: 'front-ua',
      level: 'watch',
      sentence: [
        ...say`Your front exchanger’s UA comes out as ${ua}, but this log does not hold it`,
        ...(high === null
          ? say`.`
          : say`: anything from nothing to ${q(high, 'conductance')} would do as well.`),
        ...caveats(study, fit, frontUA),
      ],
    };
  const half = 0.5 * (high - low);
  const is = say`Your front exchanger’s UA is ${ua} ± ${q(half, 'conductance')}`;
  const after = [...caveats(study, fit, frontUA), ...byInstruments(instruments, half)];
  const doubted = misses(fit) !== null || half > LOOSE * value || belowLeast(study, high);
  if (entered === null || !study.described)
    return {
      code: 'front-ua',
      level: doubted ? 'watch' : 'info',
      sentence: [
        ...is,
        ...say`. No exchanger was entered to compare it with: enter its rating or its measures on sheet ${String(RATED.number)} or ${String(MEASURED.number)}.`,
        ...after,
      ],
    };
  if (entered >= low && entered <= high)
    return {
      code: 'front-ua',
      level: doubted ? 'watch' : 'good',
      sentence: [
        ...is,
        ...say`; the description’s figure of ${q(entered, 'conductance')} lies within.`,
        ...after,
      ],
    };
  const less = value < entered;
  return {
    code: 'front-ua',
    level: less || doubted ? 'watch' : 'info',
    sentence: [
      ...is,
      ...say`. The description says ${q(entered, 'conductance')} at the same flows: it does ${less ? 'less' : 'more'} than described${less ? ', by dirt, by air that goes past it or comes round again, or by a rating that flatters' : ''}.`,
      ...after,
    ],
  };
}

const belowLeast = (study: Study, high: number): boolean => {
  const least = leastOf(study);
  return least !== null && high < least.UA - least.plusMinus;
};

/** What stands between the figure and its use. */
function caveats(study: Study, fit: LogFit, { high }: LogEstimate): Sentence {
  const missed = misses(fit);
  const least = leastOf(study);
  return [
    ...(study.airDescribed
      ? []
      : say` It is counted from ambient: nobody entered what warms the air before its face, and with a condenser there or air that comes round again the core itself does more.`),
    ...(least && high !== null && belowLeast(study, high)
      ? say` That is less than the ${q(least.UA, 'conductance')} which flow and both temperatures ask for at least: the fit has not found this loop.`
      : []),
    ...(missed === null
      ? []
      : say` Do not build on it yet: what the loop described leaves unexplained of this log is ${q(missed, 'ratio')} times what it should be. Enter tank, hoses, cores and soak of this vehicle, then work it out again.`),
  ];
}

const byInstruments = (instruments: number | null, half: number): Sentence =>
  instruments !== null && instruments > BY_INSTRUMENTS * half
    ? say` Most of the ± is that of probes and flow meter, which no longer log makes smaller: put both probes of the exchanger in one bath, and a pull into the spans, whose drop is larger.`
    : [];

/** Nobody entered the soak, so it was sought. */
function soakFinding({ estimates }: LogFit): Finding[] {
  const soak = estimates.find(({ name }) => name === 'soakHeat');
  if (!soak) return [];
  return [
    {
      code: 'soak-sought',
      level: 'info',
      sentence: say`How engine and bay heat the liquid was not entered, so the fit sought it as well: ${q(soak.value, 'heat')} beside what a usual engine gives. Entered on sheet 1, it would no longer have to be found, and the rest would be surer.`,
    },
  ];
}

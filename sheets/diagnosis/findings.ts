/** What the readings speak for, in plain words. */
import { CHANNELS } from '$lib/solver/diagnosis/channels';
import type { Cause, Diagnosis } from '$lib/solver/diagnosis/rank';
import { plusMinusOf } from '$lib/solver/diagnosis/severity';
import { q, say, type Finding, type Sentence } from '../types';
import { eitherOr } from './eitherOr';
import type { Study } from './study';
import { causeName, readingName } from './words';

/** Sure enough to act on (common practice). */
const SURE = 0.5;
/** So sure that nothing more need be read. */
const DECIDED = 0.9;
/** Fewer than this much of the doubt is not worth a walk round the vehicle. */
const WORTH_THE_WALK = 0.05;
const NAMED = 4;

const quoted = (cause: Cause) => `“${causeName(cause)}”`;

export function findings(study: Study): Finding[] {
  const { diagnosis } = study;
  return [
    ...(diagnosis.contradicts ? [contradiction(diagnosis)] : [leading(diagnosis)]),
    ...(diagnosis.contradicts ? [] : eitherOr(study)),
    ...tie(diagnosis),
    ...next(study),
    ...heldVolts(study),
    ...unused(diagnosis),
    {
      code: 'one-fault',
      level: 'info',
      sentence: say`One fault at a time is weighed, on the loop as it is entered in this job. A pull lasts too short for readings to settle, so only traffic and cruise are asked for. Probabilities hold within the list of faults shown.`,
    },
  ];
}

function leading(diagnosis: Diagnosis): Finding {
  const first = diagnosis.causes[0]!;
  const { fault, probability, severity } = first;
  const healthy = fault?.id === 'as-described';
  const bad: Sentence =
    fault?.severity && severity
      ? say` Best estimate of ${fault.severity.name}: ${q(severity.mean, fault.severity.quantity)} ± ${q(plusMinusOf(first), fault.severity.quantity)}.`
      : [];
  return {
    code: 'leading-cause',
    level: healthy ? (probability > SURE ? 'good' : 'info') : probability > SURE ? 'act' : 'watch',
    sentence: [
      ...say`${quoted(first)} fits the readings best, with ${q(probability, 'percent')}. ${fault?.sign ?? ''}`,
      ...bad,
      ...(diagnosis.set.length === 1 && probability > DECIDED && !healthy
        ? [` That decides it: nothing else on the list comes near.`]
        : []),
    ],
  };
}

/** Volts on the plug follow the flow where the feed is worked out; the faults are solved without that. */
function heldVolts({ voltsHeld }: Study): Finding[] {
  if (voltsHeld === null) return [];
  return [
    {
      code: 'volts-held',
      level: 'info',
      sentence: say`The volts at the pump are worked out from its feed and move a little with the flow. Here they are held at ${q(voltsHeld, 'voltage')}, those of the loop as described, for every fault that does not itself act on the supply.`,
    },
  ];
}

function contradiction({ causes, worst }: Diagnosis): Finding {
  const best = causes.find((c) => c.fault)!;
  const where: Sentence = worst
    ? say` The nearest, ${quoted(best)}, misses “${readingName(worst.reading)}” most: ${q(worst.reading.value, CHANNELS[worst.reading.channel].quantity)} was read, ${q(worst.predicted, CHANNELS[worst.reading.channel].quantity)} expected. Read that one again first.`
    : [];
  return {
    code: 'contradiction',
    level: 'act',
    sentence: [
      ...say`No single fault explains these readings together: they contradict each other, the loop is not as described, or there are two faults at once.`,
      ...where,
    ],
  };
}

/** What the readings cannot tell from the leading cause, and the whole set behind it. */
function tie({ causes, pairs, set }: Diagnosis): Finding[] {
  const first = causes.find((c) => c.fault)!;
  const same = pairs.filter(([a]) => a === first).map(([, b]) => b);
  const found: Finding[] = [];
  if (same.length > 0) {
    const named = same.slice(0, NAMED).map(quoted).join(', ');
    const rest = same.length > NAMED ? ' and others' : '';
    found.push({
      code: 'not-told-apart',
      level: 'watch',
      sentence: say`These data cannot tell ${quoted(first)} from ${named}${rest}.`,
    });
  }
  if (set.length > 1) {
    const named = set
      .slice(0, NAMED + 2)
      .map(quoted)
      .join(', ');
    found.push({
      code: 'nine-in-ten',
      level: 'info',
      sentence: say`Nine chances in ten lie with ${q(set.length, 'count')} causes: ${named}${set.length > NAMED + 2 ? ' and those below' : ''}.`,
    });
  }
  return found;
}

function next({ next: [best] }: Study): Finding[] {
  if (!best || best.doubt < WORTH_THE_WALK) {
    return [
      {
        code: 'next-none',
        level: 'info',
        sentence: say`No further reading on this list would tell the remaining causes apart; inspect, or put right the likeliest and read again.`,
      },
    ];
  }
  const { quantity, how } = CHANNELS[best.channel];
  const expects = best.expects.flatMap(
    ({ cause, value }): Sentence =>
      say` With ${quoted(cause)} it should read about ${q(value, quantity)}.`,
  );
  return [
    {
      code: 'next-measurement',
      level: 'info',
      sentence: [
        ...say`Next, measure “${readingName(best)}”: about ${q(best.minutes, 'count')} minutes, and it can be expected to remove ${q(best.doubt, 'percent')} of the doubt. ${how}`,
        ...expects,
      ],
    },
  ];
}

const unused = ({ unused: left }: Diagnosis): Finding[] =>
  left.length === 0
    ? []
    : [
        {
          code: 'reading-not-used',
          level: 'watch',
          sentence: say`Not used, because the loop as described does not predict it: ${left.map(readingName).join('; ')}. Where charge heat is stated outright there is no charge air.`,
        },
      ];

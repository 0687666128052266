/** What the choices mean, in plain words: what limits, what the budget allows, what is not known. */
import type { Judge } from '$lib/job/upgrades/assess';
import type { Move } from '$lib/job/upgrades/moves';
import type { UpgradeStudy } from '$lib/job/upgrades/upgrades';
import { LOADS } from '$lib/solver/loop/limitingParts';
import type { Limiting } from '$lib/solver/loop/limiting';
import { q, say, type Finding, type Sentence } from '../types';
import { takesOff, type Choice } from './choice';
import { keptIn } from './firstFindings';
import { halfWidth } from './plusMinus';
import type { DrawnWith } from './steps';
import { capital, JUDGED, PART, short } from './words';

/** What limits a side, and what comes next. */
export function limitFindings(limits: Limiting | null, judge: Judge): Finding[] {
  if (!limits) return [];
  const parts = limits.parts.filter(({ part }) => !LOADS.includes(part));
  const [first, second] = parts;
  if (limits.part === null || !first) {
    return [
      {
        code: 'nothing-limits',
        level: 'info',
        sentence: say`No single part limits the charge air ${JUDGED[judge]}: the next size of none takes off as much as a thermometer shows.`,
      },
    ];
  }
  const { name, verb, more } = PART[first.part];
  return [
    {
      code: 'limits',
      level: 'info',
      sentence: [
        ...say`${capital(name)} ${verb} the charge air ${JUDGED[judge]}: ${more} would take off ${q(first.gain, 'temperatureDifference')}`,
        ...(second && takesOff(second.gain)
          ? say`; next ${PART[second.part].name} with ${q(second.gain, 'temperatureDifference')}.`
          : ['.']),
      ],
    },
  ];
}

/** What must be told of one choice. */
export function ownFindings(choice: Choice): Finding[] {
  const { is, parts } = choice;
  const found: Finding[] = [];
  if (is.problem !== null) {
    found.push({
      code: 'unsolved',
      level: 'act',
      sentence: say`This loop cannot be solved: ${is.problem}`,
    });
  }
  if (is.trouble) found.push({ code: is.trouble, level: 'act', sentence: TROUBLE[is.trouble] });
  if (is.driveProblem !== null) {
    found.push({
      code: 'drive-refused',
      level: 'act',
      sentence: say`The drive of this loop cannot be followed: ${is.driveProblem}`,
    });
  }
  if (is.feed !== null && is.feed < 0) {
    found.push({
      code: 'feed-over',
      level: 'act',
      sentence: say`The pump draws more than its fuse or breaker holds hot: it will open on the road, see sheet 8, pump feed.`,
    });
  }
  if (parts && parts.cost === null) {
    found.push({
      code: 'cost-unknown',
      level: 'watch',
      sentence:
        parts.rows.length === 0
          ? say`No part is listed for this candidate, so what it costs is not known and no degree of it has a price. List its parts below.`
          : say`${q(parts.unpriced, 'count')} of ${q(parts.rows.length, 'count')} parts have no price: the cost is not known, and the candidate is left out where money is compared.`,
    });
  }
  return found;
}

const TROUBLE = {
  'no-flow': say`The pump moves nothing: the charge air is not cooled, whatever else is bought.`,
  boils: say`The liquid boils before the loop settles or the drive ends.`,
  freezes: say`The liquid freezes before the loop settles or the drive ends.`,
} as const;

/** The best that the budget allows, in one sentence; empty where nothing does better than doing nothing. */
export function bestSentence(
  { best, budget, steps, judge }: UpgradeStudy,
  moves: readonly Move[],
  limit: number,
  drawnWith: DrawnWith,
): Sentence {
  const start = steps[0];
  const last = steps.at(-1);
  if (!best || !start || !last) return [];
  const names = best.moves.map((i) => `“${short(moves[i]!.name, 60)}”`).join(' with ');
  const then = last.limits && last.limits.part;
  const drawn = drawnWith(best.moves);
  const kept = keptIn(drawn, limit);
  return [
    ...(budget === null ? ['Of all combinations '] : say`Within ${q(budget, 'money')} `),
    ...say`the best is ${names}: ${q(best.cost, 'money')}, and the charge air ${JUDGED[judge]} goes from ${q(start.T, 'temperature', halfWidth(drawnWith([])))} to ${q(best.T, 'temperature', halfWidth(drawn))}`,
    ...(kept.length > 0 ? ['; ', ...kept] : []),
    '.',
    ...(then ? [` With it ${PART[then].name} ${PART[then].verb}.`] : []),
  ];
}

/** The best that the budget allows. */
export function budgetFindings(
  study: UpgradeStudy,
  moves: readonly Move[],
  limit: number,
  drawnWith: DrawnWith,
): Finding[] {
  const { budget, capped, judge } = study;
  const found: Finding[] = [];
  const sentence = bestSentence(study, moves, limit, drawnWith);
  if (sentence.length > 0) {
    found.push({ code: 'best-within', level: 'good', sentence });
  } else if (moves.some(({ cost }) => cost !== null)) {
    found.push({
      code: 'none-within',
      level: 'watch',
      sentence: [
        ...(budget === null
          ? ['No combination']
          : say`No combination within ${q(budget, 'money')}`),
        ...say` takes degrees off the charge air ${JUDGED[judge]}.`,
      ],
    });
  }
  if (capped) {
    found.push({
      code: 'capped',
      level: 'info',
      sentence: say`There are more combinations than could be tried: beyond ${q(study.tried.length, 'count')} only the best was built on, move by move, so a better one may exist.`,
    });
  }
  const unpriced = moves.filter(({ cost }) => cost === null);
  if (unpriced.length > 0) {
    found.push({
      code: 'unpriced',
      level: 'watch',
      sentence: say`${unpriced.map(({ name }) => `“${short(name, 40)}”`).join(', ')} ${unpriced.length === 1 ? 'has' : 'have'} no known cost and ${unpriced.length === 1 ? 'is' : 'are'} left out of the combinations.`,
    });
  }
  return found;
}

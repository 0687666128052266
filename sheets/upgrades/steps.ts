/** The way to the best that the budget allows, step by step. */
import type { Move } from '$lib/job/upgrades/moves';
import { gains, type Drawn } from '$lib/job/upgrades/spreads';
import type { UpgradeStudy } from '$lib/job/upgrades/upgrades';
import type { Limiting } from '$lib/solver/loop/limiting';
import { formulaLine, type Line } from '$lib/solver/formula';
import * as plan from '$lib/solver/plan/formulas';
import { q, say, type Sentence } from '../types';
import { halfWidth } from './plusMinus';
import { capital, JUDGED, PART } from './words';

export interface StepWords {
  readonly id: string;
  readonly sentence: Sentence;
}

/** Draws of the temperature judged by with a set of moves, rising; null: not drawn. */
export type DrawnWith = (set: readonly number[]) => Drawn | null;

/** Each step in a sentence: what is done, what it brings for how much, what limits then. */
export function stepWords(
  { steps, judge }: UpgradeStudy,
  moves: readonly Move[],
  drawnWith: DrawnWith = () => null,
): StepWords[] {
  const drawn = steps.map((_, i) =>
    drawnWith(
      steps
        .slice(0, i + 1)
        .flatMap(({ move }) => (move === null ? [] : [move]))
        .sort((a, b) => a - b),
    ),
  );
  return steps.map(({ move, T, limits }, i) => {
    const then = nowLimits(limits, move === null ? '' : ' then');
    if (move === null) {
      return {
        id: 'start',
        sentence: [
          ...say`As found: charge air at ${q(T, 'temperature', halfWidth(drawn[0]))}, ${JUDGED[judge]}.`,
          ...then,
        ],
      };
    }
    const { name, cost } = moves[move]!;
    const before = steps[i - 1]!.T;
    const gain = plan.gainFormula.value({ T_now: before, T_with: T });
    return {
      id: `${i}`,
      sentence: [
        ...say`${name}, ${q(cost!, 'money')}: takes off ${q(gain, 'temperatureDifference', halfWidth(gains(drawn[i - 1]!, drawn[i]!)))} and leaves ${q(T, 'temperature', halfWidth(drawn[i]))}.`,
        ...then,
      ],
    };
  });
}

/** What limits, and by how much; nothing where no part does. */
function nowLimits(limits: Limiting | null, then: string): Sentence {
  if (!limits) return [];
  if (limits.part === null) return [` No single part limits${then}.`];
  const first = limits.parts.find(({ part }) => part === limits.part)!;
  const { name, verb } = PART[limits.part];
  return say` ${capital(name)} ${verb}${then}: the next size takes off ${q(first.gain, 'temperatureDifference')}.`;
}

/** The same as lines. */
export const stepLines = ({ steps, judge }: UpgradeStudy, moves: readonly Move[]): Line[] =>
  steps.flatMap(({ move, T }, i) => {
    if (move === null) return [];
    const { name, cost } = moves[move]!;
    const gain = formulaLine(
      plan.gainFormula,
      { T_now: steps[i - 1]!.T, T_with: T },
      {
        id: `step-${i}-gain`,
        statement: `Step ${i} of the best within the budget, “${name}”: degrees off the charge air, ${JUDGED[judge]}`,
        why: 'What this step adds to those before it: the same part brings less once another is in.',
      },
    );
    if (!(gain.value > 0)) return [gain];
    return [
      gain,
      formulaLine(
        plan.costPerDegreeFormula,
        { C: cost!, dT: gain.value },
        {
          id: `step-${i}-per-degree`,
          statement: `Step ${i}: cost of each of these degrees`,
          why: 'Where this climbs, the money is better kept.',
        },
      ),
    ];
  });

/** A choice to be made: the loop as found or one candidate, with what it leads to and what it costs. */
import { assess, judged, type Assessed, type Judge } from '$lib/job/upgrades/assess';
import type { Evaluated, Side } from '$lib/job/evaluate';
import { partsList, type PartsList } from '$lib/job/upgrades/partsList';
import { together } from '$lib/job/upgrades/moves';
import { candidatesOf, candidateSides, type UpgradeStudy } from '$lib/job/upgrades/upgrades';
import { LEAST_GAIN } from '$lib/solver/loop/limiting';
import * as plan from '$lib/solver/plan/formulas';
import { gains, type Drawn } from '$lib/job/upgrades/spreads';
import { judgedDraws, type DrawsOf, type SideDraws } from './draws';
import { movesIn, sidesIn } from './study';

export interface Choice {
  /** `found`, `hand`, or `aside-1` … */
  readonly id: string;
  readonly name: string;
  readonly is: Assessed;
  /** Null: the loop as found, to which nothing is bought. */
  readonly parts: PartsList | null;
  /** What it is compared with; null where that is not known. */
  readonly found: Assessed | null;
  /** Where their ± come from; empty: not drawn. */
  readonly draws: SideDraws;
  readonly foundDraws: SideDraws;
}

/** Nothing listed: nothing known of its cost. */
export const NO_PARTS: PartsList = partsList([], 'US');

const AS_FOUND = 'As found';

const NONE: SideDraws = {};

/** The choice that one side is. */
export function choiceOf(side: Side, all?: Evaluated, drawsOf?: DrawsOf): Choice {
  const draws = drawsOf?.(side) ?? NONE;
  if (side.id === 'asFound') {
    return {
      id: 'found',
      name: AS_FOUND,
      is: assessed(side),
      parts: null,
      found: null,
      draws,
      foundDraws: NONE,
    };
  }
  const own = all?.job.candidate;
  return {
    id: 'hand',
    name: own?.name ?? 'Candidate',
    is: assessed(side),
    parts: own ? partsList(own.parts, all.job.header.units) : NO_PARTS,
    found: all ? assessed(all.asFound) : null,
    draws,
    foundDraws: (all && drawsOf?.(all.asFound)) ?? NONE,
  };
}

/** Candidates put aside as choices, as studied. */
export function asideChoices(
  { job, asFound }: Evaluated,
  study: UpgradeStudy,
  drawsOf: DrawsOf,
): readonly Choice[] {
  const first = job.candidate ? 1 : 0;
  const sides = candidateSides(job);
  return candidatesOf(job)
    .slice(first)
    .map(({ name, parts }, i) => ({
      id: `aside-${i + 1}`,
      name,
      is: study.candidates[first + i]!,
      parts: partsList(parts, job.header.units),
      found: study.found,
      draws: drawsOf(sides[first + i]!),
      foundDraws: drawsOf(asFound),
    }));
}

/** The best set of moves as a choice of its own, where it is none of the candidates as they stand. */
export function bestChoice(
  all: Evaluated,
  { best, budget, found }: UpgradeStudy,
  drawsOf: DrawsOf,
): Choice | null {
  if (!best) return null;
  const moves = movesIn(all.job);
  const set = best.moves.map((i) => moves[i]!);
  const names = new Set(candidatesOf(all.job).map(({ name }) => name));
  if (set.length === 1 && names.has(set[0]!.name)) return null;
  const side = sidesIn(all.job)(best.moves);
  return {
    id: 'best',
    name: budget === null ? 'Best of all combinations' : 'Best within the budget',
    is: assessed(side),
    parts: partsList(together(set).parts, all.job.header.units),
    found,
    draws: drawsOf(side),
    foundDraws: drawsOf(all.asFound),
  };
}

/** Every choice there is, as found first. */
export function choicesOf(
  all: Evaluated,
  study: UpgradeStudy,
  drawsOf: DrawsOf,
): readonly Choice[] {
  const hand = all.candidate ? [choiceOf(all.candidate, all, drawsOf)] : [];
  return [choiceOf(all.asFound, all, drawsOf), ...hand, ...asideChoices(all, study, drawsOf)];
}

const known = new WeakMap<Side, Assessed>();

/** What one side comes to; worked out once. */
export function assessed(side: Side): Assessed {
  let found = known.get(side);
  if (!found) known.set(side, (found = assess(side)));
  return found;
}

/** Degrees it takes off; null where either temperature is not known. */
export function gainOf({ is, found }: Choice, judge: Judge): number | null {
  const T_now = found && judged(judge, found);
  const T_with = judged(judge, is);
  return T_now === null || T_with === null ? null : plan.gainFormula.value({ T_now, T_with });
}

/** Whether it takes off more than a thermometer would show. */
export const takesOff = (gain: number | null): gain is number => gain !== null && gain > LEAST_GAIN;

export const costOf = ({ parts }: Choice): number | null => parts && parts.cost;

/** The same draw by draw; null without draws. */
export const gainDraws = ({ draws, foundDraws }: Choice, judge: Judge): Drawn | null =>
  gains(judgedDraws(judge, foundDraws), judgedDraws(judge, draws));

export function costPerDegree(choice: Choice, judge: Judge): number | null {
  const C = costOf(choice);
  const dT = gainOf(choice, judge);
  return C === null || !takesOff(dT) ? null : plan.costPerDegreeFormula.value({ C, dT });
}

/** Liquid that it adds; null where either volume is not known. */
export function liquidAddedBy({ is, found }: Choice): number | null {
  const { liquidVolume: V_c, liquidDensity: rho } = is;
  const V_f = found && found.liquidVolume;
  return V_c === null || V_f === null || rho === null
    ? null
    : plan.liquidAdded.value({ rho, V_c, V_f });
}

export function massAddedBy(choice: Choice): number | null {
  const m_p = choice.parts && choice.parts.mass;
  const m_off = choice.parts && choice.parts.off;
  const m_l = liquidAddedBy(choice);
  return m_p === null || m_off === null || m_l === null
    ? null
    : plan.massAdded.value({ m_p, m_l, m_off });
}

/** Best for each cost: the sets that no cheaper one matches, each with its ± and beside the one before it. */
import type { Evaluated } from '$lib/job/evaluate';
import {
  coolerThan,
  costsPerDegree,
  gains,
  type Counted,
  type Drawn,
} from '$lib/job/upgrades/spreads';
import { worthTheirMoney, type UpgradeStudy } from '$lib/job/upgrades/upgrades';
import * as plan from '$lib/solver/plan/formulas';
import { say, type Finding } from '../types';
import { takesOff } from './choice';
import { judgedDraws, type DrawsOf } from './draws';
import { inDraws, SURE } from './firstFindings';
import { halfWidth } from './plusMinus';
import { movesIn, sidesIn } from './study';
import { short } from './words';

/** SI; a ± is undefined where it is not drawn. */
export interface FrontRow {
  /** Empty: the loop as found. */
  readonly moves: readonly number[];
  readonly name: string;
  readonly cost: number;
  readonly T: number;
  readonly plusMinus: number | undefined;
  readonly gain: number;
  readonly gainPlusMinus: number | undefined;
  /** Null where nothing is taken off. */
  readonly perDegree: number | null;
  readonly perDegreePlusMinus: number | undefined;
  /** Draws in which it is cooler than the row before; null on the first, or where that is not drawn. */
  readonly cooler: Counted | null;
}

/** Draws of the temperature judged by with a set of moves. */
export function drawnWith(
  { job, asFound }: Pick<Evaluated, 'job' | 'asFound'>,
  { judge }: UpgradeStudy,
  drawsOf: DrawsOf,
): (set: readonly number[]) => Drawn | null {
  const sideOf = sidesIn(job);
  return (set) => judgedDraws(judge, drawsOf(set.length === 0 ? asFound : sideOf(set)));
}

/** In order of cost, the loop as found first. */
export function frontRows(
  { job, asFound }: Evaluated,
  study: UpgradeStudy,
  drawsOf: DrawsOf,
): readonly FrontRow[] {
  const moves = movesIn(job);
  const drawn = drawnWith({ job, asFound }, study, drawsOf);
  const front = worthTheirMoney(study.tried);
  const now = drawn([]);
  const found = study.tried.find((one) => one.moves.length === 0);
  return front.map(({ moves: set, cost, T }, i): FrontRow => {
    const draws = drawn(set);
    const taken = gains(now, draws);
    const gain = found ? plan.gainFormula.value({ T_now: found.T, T_with: T }) : 0;
    const offers = takesOff(gain);
    return {
      moves: set,
      name: set.length === 0 ? 'As found' : set.map((move) => moves[move]!.name).join(' + '),
      cost,
      T,
      plusMinus: halfWidth(draws),
      gain,
      gainPlusMinus: halfWidth(taken),
      perDegree: offers ? plan.costPerDegreeFormula.value({ C: cost, dT: gain }) : null,
      perDegreePlusMinus: offers && taken ? halfWidth(costsPerDegree(cost, taken)) : undefined,
      cooler: i === 0 ? null : coolerThan(draws, drawn(front[i - 1]!.moves)),
    };
  });
}

/** Neighbours of the front that the ± leave undecided, and that all others are decided. */
export function frontFindings(rows: readonly FrontRow[]): Finding[] {
  const pairs = rows.flatMap((row, i) =>
    row.cooler ? [{ row, before: rows[i - 1]!, ...row.cooler }] : [],
  );
  const alike = pairs.filter(({ n, N }) => n < SURE * N);
  const found = alike.map(({ row, before, n, N }): Finding => ({
    code: `alike-${row.moves.join('-')}`,
    level: 'watch',
    sentence: [
      ...say`“${short(row.name, 60)}” and “${short(before.name, 60)}” cannot be told apart by their ±: the dearer is the cooler only `,
      ...inDraws({ n, N }),
      '. Until what is unsure is measured better the cheaper one will do.',
    ],
  }));
  if (pairs.length === 0 || pairs.length < rows.length - 1 || alike.length > 0) return found;
  const least = pairs.reduce((a, b) => (b.n / b.N < a.n / a.N ? b : a));
  return [
    {
      code: 'front-apart',
      level: 'good',
      sentence: [
        ...say`Each dearer choice on the line of the best for the money is truly cooler than the one before it: “${short(least.row.name, 60)}”, the least sure, `,
        ...inDraws(least),
        '. Where their ± overlap, what is unsure moves both alike.',
      ],
    },
  ];
}

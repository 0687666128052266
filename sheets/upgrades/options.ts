/** What could be done by itself, each with what it brings, what it costs, and how sure that is. */
import type { Evaluated } from '$lib/job/evaluate';
import { judged } from '$lib/job/upgrades/assess';
import type { Move } from '$lib/job/upgrades/moves';
import {
  cheapest,
  costsPerDegree,
  gains,
  type Counted,
  type Drawn,
} from '$lib/job/upgrades/spreads';
import type { UpgradeStudy } from '$lib/job/upgrades/upgrades';
import * as plan from '$lib/solver/plan/formulas';
import { costOf, gainDraws, gainOf, takesOff, type Choice } from './choice';
import { judgedDraws, type DrawsOf } from './draws';
import { halfWidth } from './plusMinus';
import { movesIn, sidesIn } from './study';

/** A candidate whole, or one kind of change in it. */
export interface Option {
  /** Of the choice, or of the move. */
  readonly id: string;
  readonly name: string;
  /** What is bought for a kind of change out of a candidate: its name alone does not tell. */
  readonly bought: string | null;
  /** Null: not known. */
  readonly cost: number | null;
  /** What the charge air comes to, K, and the degrees taken off. */
  readonly T: number;
  readonly gain: number;
  /** Cost of each of them; null where none is taken off, or the cost is not known. */
  readonly perDegree: number | null;
  /** Draws of both temperatures and of the gain; null: not drawn. */
  readonly drawn: Drawn | null;
  readonly taken: Drawn | null;
  /** Draws in which its degrees are the cheapest of all; null where that cannot be counted. */
  readonly cheapest: Counted | null;
}

type Plain = Omit<Option, 'perDegree' | 'cheapest'>;

/** Every option of a study: those that take most for the money first, those that take nothing off last. */
export function optionsOf(
  all: Evaluated,
  study: UpgradeStudy,
  choices: readonly Choice[],
  drawsOf: DrawsOf,
): readonly Option[] {
  const wholes = wholeOptions(choices, study);
  const names = new Set(wholes.map(({ name }) => name));
  const singles = singleOptions(all, study, movesIn(all.job), drawsOf).filter(
    ({ name }) => !names.has(name),
  );
  const plain = [...wholes, ...singles];
  const wins = counted(plain);
  return plain
    .map((option) => ({
      ...option,
      perDegree: perDegree(option),
      cheapest: wins.get(option) ?? null,
    }))
    .sort((a, b) => rank(a) - rank(b) || b.gain - a.gain);
}

/** Above every price: what has none, then what takes nothing off. */
const LAST = 1e300;
const rank = ({ perDegree: per, gain }: Option) => per ?? (takesOff(gain) ? LAST : 2 * LAST);

const perDegree = ({ cost: C, gain: dT }: Plain): number | null =>
  C === null || !takesOff(dT) ? null : plan.costPerDegreeFormula.value({ C, dT });

function wholeOptions(choices: readonly Choice[], { judge }: UpgradeStudy): Plain[] {
  return choices.flatMap((choice): Plain[] => {
    const gain = gainOf(choice, judge);
    const T = judged(judge, choice.is);
    if (choice.parts === null || gain === null || T === null) return [];
    const { id, name, draws } = choice;
    const drawn = judgedDraws(judge, draws);
    const taken = gainDraws(choice, judge);
    return [{ id, name, bought: null, cost: costOf(choice), T, gain, drawn, taken }];
  });
}

/** Single moves out of the candidates, as tried. */
function singleOptions(
  all: Evaluated,
  { judge, tried, found }: UpgradeStudy,
  moves: readonly Move[],
  drawsOf: DrawsOf,
): Plain[] {
  const T_now = judged(judge, found);
  if (T_now === null) return [];
  const now = judgedDraws(judge, drawsOf(all.asFound));
  return tried.flatMap(({ moves: set, cost, T }): Plain[] => {
    const move = set.length === 1 ? moves[set[0]!]! : null;
    if (!move) return [];
    const drawn = judgedDraws(judge, drawsOf(sidesIn(all.job)(set)));
    const gain = plan.gainFormula.value({ T_now, T_with: T });
    return [
      {
        id: `move-${move.id}`,
        name: move.name,
        bought: boughtFor(move),
        cost,
        T,
        gain,
        drawn,
        taken: gains(now, drawn),
      },
    ];
  });
}

/** Parts by name; null where the name of the move says it all. */
function boughtFor({ name, parts }: Move): string | null {
  const bought = parts.map(({ what }) => what).join(', ');
  return bought === '' || bought === name ? null : bought;
}

/** How often each has the cheapest degrees of all with a price; none while one of them is not drawn. */
function counted(options: readonly Plain[]): Map<Plain, Counted> {
  const priced = options.filter(({ cost }) => cost !== null);
  const offers = priced.flatMap((option) =>
    option.taken === null ? [] : [{ option, cost: option.cost!, taken: option.taken }],
  );
  const wins = offers.length === priced.length ? cheapest(offers) : null;
  return new Map(wins ? offers.map(({ option }, i) => [option, wins[i]!]) : []);
}

/** ± of what an option brings; each undefined where it is not drawn. */
export const spreadsOf = ({ cost, drawn, taken }: Option) => ({
  T: halfWidth(drawn),
  gain: halfWidth(taken),
  perDegree: cost === null || !taken ? undefined : halfWidth(costsPerDegree(cost, taken)),
});

/** Every candidate of a job, what limits each, and the combinations a budget allows. */
import { LEAST_GAIN, limiting, type Limiting, type Target } from '$lib/solver/loop/limiting';
import { steadyIn } from '$lib/solver/loop/steady';
import { nonDominated } from '$lib/solver/plan/front';
import { assess, chargeAtEndOf, judgedOf, lastPull, type Assessed, type Judge } from './assess';
import { combinations, type Combinations, type Progress, type Tried } from './combine';
import { driveOf } from './drive';
import { evaluate, evaluateAside, requestOf, sideWith, type Side } from '../evaluate';
import { movesOf, together, type Move } from './moves';
import { partsList } from './partsList';
import type { Candidate, Job } from '../types';

/** One step of the way to a combination. */
export interface Step {
  /** The move made; null: the start, as found. */
  readonly move: number | null;
  /** Spent so far. */
  readonly cost: number;
  readonly T: number;
  /** What limits now. */
  readonly limits: Limiting | null;
}

/** Plain data: it crosses from the other thread. Lists of candidates: the one in hand first, then those aside. */
export interface UpgradeStudy {
  readonly judge: Judge;
  readonly budget: number | null;
  readonly found: Assessed;
  readonly foundLimits: Limiting | null;
  readonly candidates: readonly Assessed[];
  readonly limits: readonly (Limiting | null)[];
  readonly tried: readonly Tried[];
  readonly capped: boolean;
  /** The coldest of what is worth its money; null: nothing beats doing nothing. */
  readonly best: Tried | null;
  readonly steps: readonly Step[];
}

/** The candidates a job has: the one in hand, then those put aside. */
export const candidatesOf = ({ candidate, aside }: Job): readonly Candidate[] =>
  candidate ? [candidate, ...aside] : aside;

/** Their sides, in the same order. */
export function candidateSides(job: Job): readonly Side[] {
  const { candidate } = evaluate(job);
  const aside = evaluateAside(job);
  return candidate ? [candidate, ...aside] : aside;
}

export const judgeOf = ({ values }: Side): Judge =>
  values['plan.judge']!.choice === 'pull' ? 'pull' : 'cruise';

/** Money that may be spent, of the job and not of a side; null: not stated. */
export const budgetOf = ({ values }: Side): number | null => values['plan.budget']!.si ?? null;

/** The temperature judged by, of any loop with this side's drive. */
export function targetOf(side: Side, judge: Judge): Target {
  return (ready) => {
    const { cruise } = ready.loop.duties;
    if (judge === 'cruise') return steadyIn(ready, cruise, cruise.vehicleSpeed).chargeOut;
    const request = requestOf(ready, side.values);
    const run = driveOf(ready, side.values, request);
    return chargeAtEndOf(run, request.schedule, lastPull(request.schedule));
  };
}

/** What limits a side, judged so; null where it has no such temperature. */
export const limitsOf = (side: Side, judge: Judge): Limiting | null =>
  side.prepared.ok
    ? limiting(side.prepared.value, targetOf(side, judge), side.values['feed.sourceRunning']!.si!)
    : null;

/** Inputs that move nothing of this: readings, instruments, questions of other sheets, words. */
const ELSEWHERE =
  /^(view|title|measured|probe|meter|log|events(?!\.ice)|instruments|runaway|target)\b/;

/** What the study of a job depends on, as text. */
export const upgradesKey = (job: Job): string =>
  JSON.stringify([
    job.header.units,
    Object.entries(job.asFound).flatMap(([path, { is }]) =>
      ELSEWHERE.test(path) ? [] : [[path, is]],
    ),
    candidatesOf(job).map(({ changes, parts }) => [
      Object.entries(changes).map(([path, { is }]) => [path, is]),
      parts?.map(({ count, price, mass, off, kind }) => [count, price, mass, off, kind]),
    ]),
  ]);

/** Work it all out, telling how far it is on the way. */
export function* upgradeStudy(job: Job): Generator<Progress, UpgradeStudy> {
  const { asFound } = evaluate(job);
  const judge = judgeOf(asFound);
  const budget = budgetOf(asFound);
  const sides = candidateSides(job);
  const moves = movesOf(job);
  const limits: (Limiting | null)[] = [];
  for (const [i, side] of sides.entries()) {
    yield { done: i, of: sides.length };
    limits.push(limitsOf(side, judge));
  }
  const sideOf = setSides(job, moves, asFound);
  const solve = (set: readonly number[]) => judgedOf(sideOf(set), judge);
  const { tried, capped }: Combinations = yield* combinations(moves, budget ?? Infinity, solve);
  const best = worthwhile(tried);
  return {
    judge,
    budget,
    found: assess(asFound),
    foundLimits: limitsOf(asFound, judge),
    candidates: sides.map(assess),
    limits,
    tried,
    capped,
    best,
    steps: best ? stepsTo(best, moves, judge, sideOf, solve) : [],
  };
}

/** Sides by their set of moves; each is solved once. */
export function setSides(job: Job, moves: readonly Move[], asFound: Side) {
  const sides = new Map<string, Side>([['', asFound]]);
  return (set: readonly number[]): Side => {
    const key = set.join();
    let side = sides.get(key);
    if (!side) sides.set(key, (side = sideWith(job, together(set.map((i) => moves[i]!)))));
    return side;
  };
}

/** The last set that is worth its money; none where that is doing nothing. */
function worthwhile(tried: readonly Tried[]): Tried | null {
  const best = worthTheirMoney(tried).at(-1);
  return best && best.moves.length > 0 ? best : null;
}

/** The sets that no cheaper one matches, in order of cost: each takes off at least {@link LEAST_GAIN} more. */
export function worthTheirMoney(tried: readonly Tried[]): readonly Tried[] {
  const front = nonDominated(tried.map((one) => ({ ...one, result: one.T })));
  const worth: Tried[] = [];
  for (const one of front) {
    const last = worth.at(-1);
    if (!last || one.T <= last.T - LEAST_GAIN) worth.push(one);
  }
  return worth;
}

/** From the loop as found to a set of moves, each time the one that brings most, with what limits then. */
function stepsTo(
  best: Tried,
  moves: readonly Move[],
  judge: Judge,
  sideOf: (set: readonly number[]) => Side,
  solve: (set: readonly number[]) => number | null,
): Step[] {
  const rising = (set: readonly number[]) => [...set].sort((a, b) => a - b);
  const at = (set: readonly number[], move: number | null, T: number): Step => ({
    move,
    cost: set.reduce((sum, i) => sum + moves[i]!.cost!, 0),
    T,
    limits: limitsOf(sideOf(set), judge),
  });
  const start = solve([]);
  if (start === null) return [];
  const steps = [at([], null, start)];
  let done: readonly number[] = [];
  while (done.length < best.moves.length) {
    const open = best.moves
      .filter((move) => !done.includes(move))
      .map((move) => ({ move, T: solve(rising([...done, move])) ?? Infinity }));
    const next = open.reduce((a, b) => (b.T < a.T ? b : a));
    done = rising([...done, next.move]);
    if (Number.isFinite(next.T)) steps.push(at(done, next.move, next.T));
  }
  return steps;
}

/** Sets whose ± is told besides the candidates': each move alone, the front, the steps to the best. */
export function toldSets({ tried, steps }: UpgradeStudy): readonly (readonly number[])[] {
  const sets = [
    ...tried.filter(({ moves }) => moves.length === 1),
    ...worthTheirMoney(tried).filter(({ moves }) => moves.length > 1),
  ].map(({ moves }) => moves);
  const way = steps.flatMap(({ move }) => (move === null ? [] : [move]));
  const prefixes = way.map((_, i) => way.slice(0, i + 1).sort((a, b) => a - b));
  return [...new Map([...sets, ...prefixes].map((set) => [set.join(), set])).values()];
}

/** Costs and masses of the candidates, in their order. */
export const partsOfCandidates = (job: Job) =>
  candidatesOf(job).map(({ parts }) => partsList(parts, job.header.units));

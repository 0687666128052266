/** Predictions over fault and severity, solved at a few severities and drawn through them. */
import { Keep } from '$lib/keep';
import { pchip } from '../numerics/interpolate';
import type { Loop } from '../loop/types';
import { DUTY_CHANNELS } from './channels';
import { FAULTS } from './faults';
import { predictor, underConditions } from './predict';
import type { Conditions, DutyChannel, Fault, OnceChannel, Predicted, SettledDuty } from './types';

/** Where in its range of severity a fault is solved: closer to the worst end, where loops give way. */
const NODES = [0, 0.25, 0.5, 0.7, 0.85, 0.95, 1] as const;
/** Severities between which likelihood is summed: the middles of equal parts of the range. */
const PARTS = 36;

/** One fault at one severity: what it shows in each duty, and once. */
export interface Shown {
  readonly severity: number;
  readonly duty: Readonly<Record<SettledDuty, Predicted>>;
  readonly once: Readonly<Record<OnceChannel, number>>;
}

export interface FaultShown {
  readonly fault: Fault;
  /** Equally likely before any measurement. */
  readonly shown: readonly Shown[];
}

export type Grid = readonly FaultShown[];

const kept = new Keep<Grid>(4);

/** What a grid depends on, as text. */
export const gridKey = (loop: Loop, conditions: Conditions): string =>
  JSON.stringify(underConditions(loop, conditions));

export const gridKnown = (key: string): boolean => kept.has(key);

/** Keep a grid that was solved elsewhere: `shown` in the order of the faults. */
export function keepGrid(key: string, shown: readonly (readonly Shown[])[]): void {
  kept.set(
    key,
    FAULTS.map((fault, i) => ({ fault, shown: shown[i]! })),
  );
}

/**
 * The grid of a loop under conditions. Measurements do not enter it, so it is solved once per loop and
 * kept: loops that say the same share it.
 * @throws {@link SolverError} where the loop as described cannot be solved
 */
export const faultGrid = (loop: Loop, conditions: Conditions): Grid =>
  kept.of(gridKey(loop, conditions), () => solveGrid(underConditions(loop, conditions)));

function solveGrid(described: Loop): Grid {
  const predict = predictor(described);
  const both = (fault: Fault, x: number): Shown['duty'] => ({
    traffic: predict.at(fault, x, 'traffic'),
    cruise: predict.at(fault, x, 'cruise'),
  });
  return FAULTS.map((fault): FaultShown => {
    const { severity } = fault;
    if (!severity) {
      return {
        fault,
        shown: [{ severity: NaN, duty: both(fault, NaN), once: predict.once(fault, NaN) }],
      };
    }
    const { from, to } = severity;
    const at = NODES.map((node) => from + (to - from) * node);
    const solved = at.map((x) => both(fault, x));
    const between = {
      traffic: through(
        at,
        solved.map((s) => s.traffic),
      ),
      cruise: through(
        at,
        solved.map((s) => s.cruise),
      ),
    };
    const shown = Array.from({ length: PARTS }, (_, i): Shown => {
      const x = from + ((to - from) * (i + 0.5)) / PARTS;
      const duty = { traffic: between.traffic(x), cruise: between.cruise(x) };
      return { severity: x, duty, once: predict.once(fault, x) };
    });
    return { fault, shown };
  });
}

const MEMBERS = [...(Object.keys(DUTY_CHANNELS) as DutyChannel[]), 'ambient'] as const;

/** Curves through predictions; where a neighbour could not be solved, neither can what lies between. */
function through(at: readonly number[], solved: readonly Predicted[]): (x: number) => Predicted {
  const curves = MEMBERS.map((member) => {
    const values = solved.map((p) => p[member]);
    const whole = values.every(Number.isFinite);
    return [member, whole ? pchip(at, values).value : pieces(at, values)] as const;
  });
  return (x) =>
    Object.fromEntries(curves.map(([member, f]) => [member, f(x)])) as unknown as Predicted;
}

function pieces(at: readonly number[], values: readonly number[]): (x: number) => number {
  return (x) => {
    const i = Math.min(Math.max(at.findIndex((a) => a > x) - 1, 0), at.length - 2);
    const t = (x - at[i]!) / (at[i + 1]! - at[i]!);
    return (1 - t) * values[i]! + t * values[i + 1]!;
  };
}

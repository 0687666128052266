/**
 * Bands round the curves of a plot: the same curves of many loops that the ± of the inputs allow. A plot
 * gives its curves as a function of a side; everything else is here.
 */
import { along, stopsOf, type Points } from '$lib/solver/numerics/polyline';
import { bandOf, type BandPoint } from '$lib/solver/uncertainty/band';
import { propagate, type Model } from '$lib/solver/uncertainty/propagate';
import { SolverError } from '$lib/solver/errors';
import type { Side } from '../../evaluate';
import { drawnSides } from '../drawnSide';
import { finished, SEED, surenessKey } from '../sureness';
import { uncertainOf, type Uncertain } from '../surenessInputs';

/** Loops drawn: each end of a band lies between half a dozen of them. */
export const DRAWN = 256;
/** Where each takes long. */
export const DRAWN_SLOW = 128;
/** Places along a curve; between them a band is straight. */
const PLACES = 41;

/** Plain data: it crosses from the other thread. */
export interface Bands {
  /** By the name of the curve, in order of x; a single value stands at x = 0. Empty: nothing moves it. */
  readonly of: Readonly<Record<string, readonly BandPoint[]>>;
  readonly drawn: number;
  /** Drawn loops that have no such curve and are left out. */
  readonly without: Readonly<Record<string, number>>;
}

/** Where the bands of one or several plots come from. */
export interface BandSource {
  readonly name: string;
  /** What they depend on, as text. */
  keyOf(side: Side, sides: readonly Side[]): string;
  /** Null where nothing has a ±, or where the side as it stands has no curves. */
  bands(side: Side, sides: readonly Side[]): Bands | null;
}

/** Curves by name; a number is a bar or a point. Empty where the side has none. */
export type Curves = Readonly<Record<string, Points | number>>;

interface CurveSet<F> {
  readonly name: string;
  /** What the curves depend on besides the loop and the duty shown; plain data. */
  readonly follows?: (side: Side) => unknown;
  /**
   * How far the curves go, from the sides as they stand: every drawn loop is then drawn as far, however
   * it settles. Plain data.
   */
  readonly frame?: (side: Side, sides: readonly Side[]) => F;
  readonly curves: (side: Side, frame: F) => Curves;
  /** Loops drawn; fewer where one takes long. */
  readonly draws?: number;
  readonly places?: number;
}

const dutyShown = ({ values }: Side) => values['view.duty']!.choice;

/** The bands of curves that are a function of a side. */
export function curveSet<F = null>(set: CurveSet<F>): BandSource & CurveSet<F> {
  const frameOf = (side: Side, sides: readonly Side[]) => set.frame?.(side, sides) ?? (null as F);
  return {
    ...set,
    keyOf: (side, sides) =>
      JSON.stringify([
        surenessKey(side),
        dutyShown(side),
        set.follows?.(side),
        frameOf(side, sides),
      ]),
    bands(side, sides) {
      const inputs = uncertainOf(side.values);
      if (inputs.length === 0 || !side.prepared.ok) return null;
      const frame = frameOf(side, sides);
      const of = (drawn: Side) => orNone(() => set.curves(drawn, frame));
      const drawnAt = drawnSides(side, inputs);
      return bandsRound(
        of(side),
        inputs,
        (x) => {
          const drawn = drawnAt(x);
          return drawn && of(drawn);
        },
        set,
      );
    },
  };
}

/** Narrower than this share of the value is rounding: none of the ± moves the curve. */
const ROUNDING = 1e-7;

const isWide = ([, low, high]: BandPoint) =>
  high - low > ROUNDING * Math.max(Math.abs(low), Math.abs(high));

/** A loop that cannot be solved has no curves. */
function orNone(work: () => Curves): Curves {
  try {
    return work();
  } catch (error) {
    if (error instanceof SolverError) return {};
    throw error;
  }
}

/**
 * Bands round `plain`, at its own places, from the same curves of drawn loops.
 * @param at - the curves at drawn inputs; null where they make no loop
 */
export function bandsRound(
  plain: Curves,
  inputs: readonly Uncertain[],
  at: (x: Float64Array) => Curves | null,
  { draws = DRAWN, places = PLACES }: { readonly draws?: number; readonly places?: number },
): Bands | null {
  const grids = Object.entries(plain)
    .map(([id, curve]) => ({ id, x: typeof curve === 'number' ? [0] : stopsOf(curve, places) }))
    .filter(({ x }) => x.length > 0);
  const outputs = grids.reduce((sum, { x }) => sum + x.length, 0);
  if (outputs === 0) return null;
  const model: Model = (inputsDrawn) => {
    const curves = at(inputsDrawn);
    return (
      curves &&
      grids.flatMap(({ id, x }) => {
        const curve = curves[id];
        if (curve === undefined) return x.map(() => NaN);
        return typeof curve === 'number' ? [curve] : x.map((place) => along(curve, place));
      })
    );
  };
  const study = {
    inputs: inputs.map(({ distribution }) => distribution),
    axes: inputs.map(({ axis }) => axis),
    outputs,
    samples: draws,
    seed: SEED,
  };
  const { results } = finished(propagate(study, model));
  let from = 0;
  const without: Record<string, number> = {};
  const of = Object.fromEntries(
    grids.map(({ id, x }) => {
      const columns = results.slice(from, (from += x.length));
      const there = Array.from({ length: draws }, (_, i) => i).filter((i) =>
        columns.some((column) => !Number.isNaN(column[i]!)),
      );
      without[id] = draws - there.length;
      // Of the loops that have such a curve: less than half of them speak for nothing.
      const enough = there.length >= draws / 2;
      const kept = columns.map((column) => Float64Array.from(there, (i) => column[i]!));
      const band = enough ? bandOf(x, kept) : [];
      return [id, band.some(isWide) ? band : []] as const;
    }),
  );
  return { of, drawn: draws, without };
}

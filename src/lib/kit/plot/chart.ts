/** What a chart is, as data in SI. Drawing it is build.ts; reading it by keyboard is reading.ts. */
import type { Level, Quantity, SideName } from '../types';

export type Point = readonly [x: number, y: number];

/** An axis always carries its quantity, hence its unit. */
export interface Axis {
  readonly name: string;
  readonly quantity: Quantity;
  /** Ends, SI; from the data unless given. */
  readonly domain?: readonly [low: number, high: number];
  /** Zero belongs on this axis even where the data stay away from it. */
  readonly zero?: boolean;
  /** Names of the places 1, 2, … instead of numbers, the first at the top; upright axis only. */
  readonly names?: readonly string[];
}

/** Ink of a mark that is not simply a side's own: a role, or a step of the ramp from cold to hot. */
export type Tone =
  'ink' | 'soft' | 'accent' | 'cold' | 'hot' | Level | `heat-${0 | 1 | 2 | 3 | 4 | 5 | 6}`;

interface Mark {
  /** Colour, line, weight and marker follow the side; as found unless told. */
  readonly side?: SideName;
  /** Overrides the side's colour only; its line stays. */
  readonly tone?: Tone;
}

/** A line through points, labelled at its end. */
export interface Curve extends Mark {
  readonly id: string;
  readonly label: string;
  readonly points: readonly Point[];
  /** A thin line for what stands behind the main ones. */
  readonly thin?: boolean;
  /** No label in the plot; the reading still names it. */
  readonly quiet?: boolean;
}

/** A point that matters, e.g. where two curves cross: marker, label, its two values. */
export interface Spot extends Mark {
  readonly label: string;
  readonly x: number;
  readonly y: number;
  /** Half width of the uncertainty of y, SI: a whisker through it. */
  readonly plusMinus?: number | undefined;
  /** A point nothing rests at: marked by a cross, not by a full disc. */
  readonly open?: boolean;
}

/** Measured points, with ± on y where known. */
export interface Dots extends Mark {
  readonly label: string;
  readonly points: readonly (readonly [x: number, y: number, plusMinus?: number])[];
}

/** A line that should not be passed. */
export interface Limit {
  readonly axis: 'x' | 'y';
  readonly at: number;
  readonly label: string;
  readonly level?: Level;
}

/** ± around a curve. */
export interface Band extends Mark {
  /** Id of its curve, for a reading. */
  readonly of?: string;
  readonly points: readonly (readonly [x: number, low: number, high: number])[];
}

/** A stretch of an axis: hatched where a law does not hold, washed where it only names a span. */
export interface Stretch {
  readonly axis: 'x' | 'y';
  readonly from: number;
  readonly to: number;
  readonly label: string;
  readonly kind: 'outside' | 'span';
}

export interface Chart {
  readonly x: Axis;
  readonly y: Axis;
  readonly curves?: readonly Curve[];
  readonly spots?: readonly Spot[];
  readonly dots?: readonly Dots[];
  readonly limits?: readonly Limit[];
  readonly bands?: readonly Band[];
  readonly stretches?: readonly Stretch[];
}

/** Room the chart has on the page, px. */
export interface Size {
  readonly width: number;
  readonly height: number;
}

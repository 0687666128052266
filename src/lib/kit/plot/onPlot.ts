/** What marks are made in: shown units, by functions that bring SI values into them. */
import type * as Plot from '@observablehq/plot';

export type Marks = Plot.Markish[];

/** SI to shown units, both axes. */
export interface To {
  readonly x: (si: number) => number;
  readonly y: (si: number) => number;
}

/** Ends of both axes in shown units. */
export interface Frame {
  readonly x: readonly [number, number];
  readonly y: readonly [number, number];
}

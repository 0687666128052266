/**
 * What a drawing of the loop holds. Only places and paths: the numbers that hang on them come from
 * the solution. There is one for each order of the two cores, on a wide and on a narrow page.
 */
import { orderOf } from '$lib/solver/loop/order';
import type { LiquidOrder, Loop } from '$lib/solver/loop/types';

/** A corner of a run of hose. */
export type Corner = readonly [x: number, y: number];

/** Where a text hangs, and which way it grows. */
export interface TagPlace {
  readonly x: number;
  readonly y: number;
  readonly anchor: 'start' | 'middle' | 'end';
}

export interface Box {
  readonly x: number;
  readonly y: number;
  readonly w: number;
  readonly h: number;
}

/** Names of the places a tag can hang on. */
export type TagName =
  | 'chargeHot'
  | 'chargeCold'
  | 'chargeHeat'
  | 'toFront'
  | 'fromFront'
  | 'frontHeat'
  | 'ambient'
  | 'reservoir'
  | 'suction'
  | 'pump'
  | 'toCooler'
  | 'fromCooler';

/** Runs of hose in order of flow; which cores they join follows from the order of the cores. */
export const RUNS = ['suction', 'delivery', 'transfer', 'back'] as const;
export type RunName = (typeof RUNS)[number];

/** One drawing: its size, its parts, its runs of hose, each drawn the way the liquid goes. */
export interface Drawing {
  readonly width: number;
  readonly height: number;
  readonly front: Box;
  readonly cooler: Box;
  readonly reservoir: Box;
  readonly pump: { readonly x: number; readonly y: number; readonly r: number };
  readonly pumpName: TagPlace;
  readonly runs: Readonly<Record<RunName, readonly Corner[]>>;
  /** Charge air: from the compressor, through the cooler, to the engine. */
  readonly charge: { readonly x: number; readonly from: number; readonly to: number };
  /** Start of the cooling air's arrows. */
  readonly airFrom: number;
  readonly tags: Readonly<Record<TagName, TagPlace>>;
}

/** A thing drawn for each order and each width of page. */
export type Drawn<T> = Readonly<Record<LiquidOrder, { readonly wide: T; readonly narrow: T }>>;

/** The one of a set that fits this loop and this page. */
export const drawnFor = <T>(
  drawn: Drawn<T>,
  loop: Pick<Loop, 'liquidOrder'>,
  isNarrow: boolean,
): T => drawn[orderOf(loop)][isNarrow ? 'narrow' : 'wide'];

/** SVG path through the corners of a run. */
export function runPath(corners: readonly Corner[]): string {
  return corners.map(([x, y], i) => `${i ? 'L' : 'M'}${x} ${y}`).join('');
}

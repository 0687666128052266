/** Where each quantity stands in the state of a drive with events; features left out take no room. */
import { NODE, STATES } from '../network';
import type { TransientState } from '../types';
import type { EventRequest } from './types';

/** The five nodes, by name. */
export const NODES = [
  'reservoir',
  'chargeLiquid',
  'chargeMetal',
  'frontLiquid',
  'frontMetal',
] as const satisfies readonly (keyof TransientState)[];

export interface Layout {
  readonly dimension: number;
  /** Steam lost, kg; breaker's state less one; bay air, K; -1 where not followed. */
  readonly vapour: number;
  readonly breaker: number;
  readonly bay: number;
  /** Cells in each run; their temperatures, run after run in order of flow, from `firstCell` on. */
  readonly cells: number;
  readonly firstCell: number;
}

/** The first states are those of the plain warm-up, in its order. */
export function layoutOf({ boiling, breaker, underhood, hoseDelay }: EventRequest): Layout {
  let next: number = STATES;
  const place = (wanted: unknown) => (wanted ? next++ : -1);
  const at = { vapour: place(boiling), breaker: place(breaker), bay: place(underhood) };
  const cells = hoseDelay?.cells ?? 0;
  return { ...at, cells, firstCell: next, dimension: next + 4 * cells };
}

/** Absolute tolerance of the breaker's state for each unit of rtol: a trip is told to a millisecond. */
const BREAKER_ATOL = 1e-3;

/** Absolute tolerances: K as in the warm-up; gathered heat does not steer the step. */
export function tolerances(layout: Layout, rtol: number, kelvin: number, perKelvin: number) {
  const atol = new Array<number>(layout.dimension).fill(kelvin * rtol);
  atol[NODE.heatIn] = atol[NODE.heatOut] = Infinity;
  if (layout.vapour >= 0) atol[layout.vapour] = kelvin * rtol * perKelvin;
  if (layout.breaker >= 0) atol[layout.breaker] = BREAKER_ATOL * rtol;
  return atol;
}

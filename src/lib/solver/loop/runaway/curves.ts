/** Both heats sampled over temperature, for the picture. */
import type { Balance } from './balanceAt';

type Point = readonly [temperature: number, heat: number];

export interface HeatCurves {
  readonly entering: readonly Point[];
  readonly leaving: readonly Point[];
}

/** Places of the samples: multiples of this, so that moved knobs share the flows worked out, K. */
const GRID = 2;
/** Ahead of an end where the flow is lost, K. */
const NEAR_END = 0.5;

/** Sample from `from` (or the coldest liquid) up to the end of the balance; no points where it stands. */
export function heatCurves(balance: Balance, from: number): HeatCurves {
  const entering: Point[] = [];
  const leaving: Point[] = [];
  const low = Math.max(from, balance.coldest);
  const look = (T: number) => {
    const at = balance.at(T);
    if (!at) return;
    entering.push([T, at.entering]);
    leaving.push([T, at.leaving]);
  };
  // Near the end the flow may be lost within a degree.
  const last = balance.hottest < balance.prepared.hottest ? [balance.hottest - NEAR_END] : [];
  const end = last[0] ?? balance.hottest;
  for (let k = Math.ceil(low / GRID); k * GRID < end; k++) look(k * GRID);
  for (const T of [...last, balance.hottest]) look(T);
  return { entering, leaving };
}

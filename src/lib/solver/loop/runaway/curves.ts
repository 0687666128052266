/** Both heats sampled over temperature, for the picture. */
import type { Balance } from './balanceAt';

type Point = readonly [temperature: number, heat: number];

export interface HeatCurves {
  readonly entering: readonly Point[];
  readonly leaving: readonly Point[];
}

/** Places of the samples: multiples of this, so that moved knobs share the flows worked out, K. */
const GRID = 2;

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
  for (let k = Math.ceil(low / GRID); k * GRID < balance.hottest; k++) look(k * GRID);
  // Near the end the flow may be lost within a degree.
  if (balance.hottest < balance.prepared.hottest) look(balance.hottest - 0.5);
  look(balance.hottest);
  return { entering, leaving };
}

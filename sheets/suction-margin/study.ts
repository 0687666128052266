/** What the suction sheet asks the solver for, once per side. */
import type { Side } from '$lib/job/evaluate';
import { once } from '$lib/once';
import type { PreparedLoop } from '$lib/solver/loop/prepare';
import type { SteadySolution } from '$lib/solver/loop/types';
import { mapSpan, suctionMap, type SuctionMap } from '$lib/solver/suction/map';
import {
  operatingPath,
  pathPoint,
  pathThrough,
  temperatureOfFirstLoss,
  ventedLoop,
  type FirstLoss,
  type PathPoint,
} from '$lib/solver/suction/path';
import { whatHelps, type Help } from '$lib/solver/suction/whatHelps';
import { settledOf } from '../wiring/duty';

export interface Study {
  readonly s: SteadySolution;
  readonly prepared: PreparedLoop;
  readonly flows: boolean;
  readonly loss: FirstLoss;
  /** Same liquid, no pressure under the cap; null where the reservoir holds none anyway. */
  readonly vented: PathPoint | null;
  readonly ventedLoss: FirstLoss | null;
  readonly ventedPath: readonly PathPoint[];
  readonly path: readonly PathPoint[];
  readonly map: SuctionMap;
  readonly helps: readonly Help[];
}

const known = new WeakMap<Side, Study | null>();

/** The study of a side; null where it could not be solved. The same side gives the same object. */
export function studyOf(side: Side | null): Study | null {
  if (!side) return null;
  let study = known.get(side);
  if (study === undefined) known.set(side, (study = newStudy(side)));
  return study;
}

function newStudy(side: Side): Study | null {
  const s = settledOf(side);
  if (!s || !side.prepared.ok) return null;
  const prepared = side.prepared.value;
  const T = s.liquid.temperature;
  const loss = temperatureOfFirstLoss(prepared);
  const open = side.loop.reservoir.capGauge > 0 ? ventedLoop(prepared) : null;
  const map = once(() => suctionMap(prepared, mapSpan(prepared)));
  const path = once(() => pathThrough(prepared, map().temperatures, loss));
  const ventedPath = once(() =>
    open
      ? operatingPath(
          open,
          map().temperatures.filter((temperature) => temperature <= open.hottest),
        )
      : [],
  );
  return {
    s,
    prepared,
    flows: s.status !== 'no-flow',
    loss,
    vented: open && pathPoint(open, T),
    ventedLoss: open && temperatureOfFirstLoss(open),
    helps: whatHelps(prepared, T),
    // For the plots alone: an edit shows its numbers first.
    get map() {
      return map();
    },
    get path() {
      return path();
    },
    get ventedPath() {
      return ventedPath();
    },
  };
}

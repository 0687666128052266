/** What the plots of the suction side are drawn from; it costs most of what that sheet costs. */
import type { PreparedLoop } from '../loop/prepare';
import { suctionMap, type SuctionMap } from './map';
import {
  operatingPath,
  pathThrough,
  temperatureOfFirstLoss,
  ventedLoop,
  type PathPoint,
} from './path';

export interface SuctionPicture {
  readonly map: SuctionMap;
  readonly path: readonly PathPoint[];
  /** With no pressure under the cap; empty where the reservoir holds none anyway. */
  readonly ventedPath: readonly PathPoint[];
}

/** Map and paths of a loop. @throws what {@link suctionMap} and {@link pathThrough} throw */
export function suctionPicture(prepared: PreparedLoop): SuctionPicture {
  const map = suctionMap(prepared);
  const open = prepared.loop.reservoir.capGauge > 0 ? ventedLoop(prepared) : null;
  return {
    map,
    path: pathThrough(prepared, map.temperatures, temperatureOfFirstLoss(prepared)),
    ventedPath: open
      ? operatingPath(
          open,
          map.temperatures.filter((T) => T <= open.hottest),
        )
      : [],
  };
}

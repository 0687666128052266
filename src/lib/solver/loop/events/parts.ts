/** What of a loop and a request the drive is made of. */
import { HEAT_OF_FUSION, ICE_POINT } from '../../fluids/ice';
import type { PreparedLoop } from '../prepare';
import { capLiftTemperature } from './cap';
import { eventNetwork, type EventNetwork } from './eventNetwork';
import type { SetUp } from './setUp';
import type { EventRequest } from './types';
import type { WatchFacts } from './watch';

/** Share of the reservoir's liquid that may boil off, or freeze, before the pump draws air. Our choice, no source. */
export const DRY_SHARE = 0.9;

export function networkOf(
  prepared: PreparedLoop,
  request: EventRequest,
  parts: SetUp,
): EventNetwork {
  const { loop, boilingPoint } = prepared;
  return eventNetwork({
    ...parts,
    loop,
    boilingPoint,
    breaker: request.breaker?.breaker ?? null,
    breakerOutside: request.breaker?.place === 'outside',
    underhood: request.underhood ?? null,
  });
}

export function watchFacts(
  prepared: PreparedLoop,
  request: EventRequest,
  { layout, reservoirMass, capacity }: SetUp,
  net: EventNetwork,
): WatchFacts {
  const { boilingPoint, coldest, hottest, loop } = prepared;
  const most = DRY_SHARE * reservoirMass;
  return {
    request,
    layout,
    net,
    boilingPoint,
    coldest,
    hottest,
    capLiftsAt: request.boiling ? capLiftTemperature(prepared) : Infinity,
    capGauge: loop.reservoir.capGauge,
    frozenAt: ICE_POINT - (most * HEAT_OF_FUSION) / capacity.reservoir,
    dryAt: most,
  };
}

/** Current of the pump at work, A: on its feed with the liquid at `T`, else power over the volts stated. */
export function pumpCurrent({ loop, hydraulics, liquidAt }: PreparedLoop, T: number): number {
  const { pump, supplied } = hydraulics.settled(liquidAt(T));
  if (supplied) return supplied.status === 'runs' ? supplied.current : 0;
  return loop.pump.volts > 0 ? pump.electricPower / loop.pump.volts : 0;
}

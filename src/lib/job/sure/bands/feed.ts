/** Pump feed: volts and flow over the wire, time to open over the current. */
import { copperArea } from '$lib/solver/feed/gauge';
import { suppliedPump } from '$lib/solver/feed/supply';
import { tripCurveEnd, tripPoints } from '$lib/solver/feed/tripCurves';
import { areasToDraw } from '$lib/solver/feed/wireFor';
import { feedInLoop, FULL, wireCurve } from '$lib/solver/hydraulics/feedInLoop';
import { thinned } from '$lib/solver/numerics/polyline';
import type { Side } from '../../evaluate';
import { toFeed } from '../../models/toFeed';
import { settledOf } from '../../shownDuty';
import { curveSet, type Curves } from './bandSource';

/** Wires tried. */
const WIRES = 17;

function fedIn(side: Side) {
  const supply = toFeed(side.values);
  const liquid = settledOf(side)?.liquid;
  const inLoop = liquid
    ? feedInLoop(side.loop, supply, { rho: liquid.density, mu: liquid.viscosity })
    : null;
  const supplied = inLoop?.supplied ?? suppliedPump(side.loop.pump, supply, FULL);
  return { supply, inLoop, current: supplied.status === 'runs' ? supplied.current : null };
}

export const FEED = curveSet({
  name: 'feed',
  follows: (side) => toFeed(side.values),
  frame(_, sides) {
    const fed = sides.map(fedIn);
    const ends = fed.flatMap(({ supply: { breaker }, current }) =>
      breaker ? [tripCurveEnd(breaker, current ?? 0)] : [],
    );
    return {
      wires: thinned(
        areasToDraw(fed.map(({ supply }) => copperArea(supply.circuit.wire.size))),
        WIRES,
      ),
      current: Math.max(0, ...ends),
    };
  },
  curves(side, frame): Curves {
    const { supply, inLoop, current } = fedIn(side);
    const { breaker } = supply;
    const opening = (start: number) => (breaker ? tripPoints(breaker, start, frame.current) : []);
    return {
      ...wireCurve(side.loop.pump, supply, inLoop, frame.wires),
      cold: opening(0),
      ...(breaker?.thermal.reset === 'automatic' && { warm: opening(breaker.thermal.resetState) }),
      ...(current !== null && { current }),
    };
  },
});

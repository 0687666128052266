/** Suction margin: over the temperature of the liquid, where nothing is left, and what helps. */
import { marginContour, mapSpan, suctionMap } from '$lib/solver/suction/map';
import { operatingPath, ventedLoop } from '$lib/solver/suction/path';
import { whatHelps } from '$lib/solver/suction/whatHelps';
import { spaced } from '$lib/solver/numerics/spaced';
import { solvedOf } from '../../shownDuty';
import { curveSet, DRAWN_SLOW, type Curves } from './bandSource';

const PLACES = 31;

export const SUCTION = curveSet({
  name: 'suction',
  draws: DRAWN_SLOW,
  frame: (side) => (side.prepared.ok ? mapSpan(side.prepared.value) : null),
  curves(side, span): Curves {
    const solved = solvedOf(side);
    if (!solved || !span || solved.s.status === 'no-flow') return {};
    const { ready, s } = solved;
    const temperatures = spaced(...span.temperatures, PLACES).filter(
      (T) => T >= ready.coldest && T <= ready.hottest,
    );
    const margins = (of: typeof ready) =>
      operatingPath(
        of,
        temperatures.filter((T) => T <= of.hottest),
      ).map((at) => [at.temperature, at.margin] as const);
    return {
      margin: margins(ready),
      ...(ready.loop.reservoir.capGauge > 0 && { vented: margins(ventedLoop(ready)) }),
      nothing: marginContour(suctionMap(ready, span), 0),
      ...Object.fromEntries(
        whatHelps(ready, s.liquid.temperature).map(({ id, gain }) => [id, gain]),
      ),
    };
  },
});

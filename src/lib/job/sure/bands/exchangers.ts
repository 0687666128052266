/** Exchangers: heat per degree over air and liquid, cooling of the charge, differences spent. */
import { differencesSpent } from '$lib/solver/cores/resistance';
import {
  axisEnd,
  chargeByAirFlow,
  chargeCooling,
  frontAtSpeed,
  frontByFaceVelocity,
  frontByLiquidFlow,
} from '$lib/solver/loop/exchangerCurves';
import type { Side } from '../../evaluate';
import { solvedOf } from '../../shownDuty';
import { curveSet, type Curves } from './bandSource';

/** Shown at least: face velocity that fans alone reach, m/s, and flow, m³/s (8 gpm). */
const LEAST = { faceVelocity: 2, flow: 5e-4 } as const;

/** Ends of the plots' axes, SI: of all sides together. */
export interface ExchangerEnds {
  readonly faceVelocity: number;
  readonly liquidFlow: number;
  readonly chargeFlow: number;
}

/** The side with its solution, where its liquid moves. */
function movingIn(side: Side) {
  const solved = solvedOf(side);
  return solved && solved.s.status !== 'no-flow' ? solved : null;
}

/** Duties in which the charge is cooled: air flow and {@link chargeCooling} of each. */
export const chargeDuties = (side: Side, duties: readonly ('cruise' | 'pull')[]) =>
  duties.flatMap((duty) => {
    const outcome = side.steady[duty];
    const s = outcome.ok ? outcome.value : null;
    if (!s?.charge || !s.chargeCooler || s.status === 'no-flow') return [];
    return [{ label: duty, x: s.charge.massFlow, y: chargeCooling(s.chargeCooler) }];
  });

export function exchangerEnds(sides: readonly Side[]): ExchangerEnds {
  const moving = sides.flatMap((side) => {
    const solved = movingIn(side);
    return solved ? [{ side, ...solved }] : [];
  });
  const velocities = moving.flatMap(({ side: { loop }, ready, s }) =>
    [loop.duties[s.duty].vehicleSpeed, 0, loop.duties.pull.vehicleSpeed].map(
      (speed) => frontAtSpeed(ready, s, speed).faceVelocity,
    ),
  );
  return {
    faceVelocity: axisEnd(velocities, LEAST.faceVelocity),
    liquidFlow: axisEnd(
      moving.map(({ s }) => s.operating.flow),
      LEAST.flow,
    ),
    chargeFlow: axisEnd(
      moving.flatMap(({ side }) => chargeDuties(side, ['cruise', 'pull']).map(({ x }) => x)),
      Math.max(0, ...moving.map(({ side }) => side.loop.chargeCooler.rating.airMassFlow)),
    ),
  };
}

export const EXCHANGERS = curveSet({
  name: 'exchangers',
  frame: (_, sides) => exchangerEnds(sides),
  curves(side, ends): Curves {
    const moving = movingIn(side);
    if (!moving) return {};
    const { ready, s } = moving;
    const spent = (of: 'front' | 'chargeCooler') => {
      const state = s[of];
      const parts = state && differencesSpent(state);
      if (!parts) return {};
      const { air, liquid, rest } = parts;
      return { [`${of} air`]: air, [`${of} liquid`]: liquid, [`${of} rest`]: rest };
    };
    return {
      velocity: frontByFaceVelocity(ready, s, ends.faceVelocity),
      flow: frontByLiquidFlow(ready, s, ends.liquidFlow),
      charge: chargeByAirFlow(ready, s, ends.chargeFlow),
      ...spent('front'),
      ...spent('chargeCooler'),
    };
  },
});

/** Fans and face airflow: pressures over flow, face velocities over vehicle speed. */
import {
  askedOfFans,
  faceSweep,
  fanSetCurve,
  freeDeliveryOfAll,
  FULL_SWEEP,
  pathSweep,
  standingFlow,
  zoneSweep,
} from '$lib/solver/airside/curves';
import { heldBackPressure } from '$lib/solver/loop/faceAir';
import type { Side } from '../../evaluate';
import { settledOf } from '../../shownDuty';
import { curveSet, type Curves } from './bandSource';

const speedOf = (side: Side): number | null => {
  const s = settledOf(side);
  return s && side.loop.duties[s.duty].vehicleSpeed;
};

export const FACE = curveSet({
  name: 'face',
  curves({ loop }): Curves {
    const zones = zoneSweep(loop, FULL_SWEEP);
    return {
      asIs: faceSweep(loop, FULL_SWEEP).asIs,
      ...(zones.shrouded && { shrouded: zones.shrouded }),
      ...(zones.open && { open: zones.open }),
      ...pathSweep(loop, FULL_SWEEP),
    };
  },
});

export const FANS = curveSet({
  name: 'fans',
  frame(side, sides) {
    const flowOf = (one: Side) => {
      const speed = speedOf(one);
      return speed === null ? 0 : (fanSetCurve(one.loop, speed).at(-1)?.[0] ?? 0);
    };
    return { own: flowOf(side), all: Math.max(0, ...sides.map(flowOf)) };
  },
  curves(side, { own, all }): Curves {
    const s = settledOf(side);
    if (!s) return {};
    const speed = side.loop.duties[s.duty].vehicleSpeed;
    const [shrouded] = s.air.zones;
    return {
      ...(own > 0 && {
        fans: fanSetCurve(side.loop, speed, own),
        asked: askedOfFans(side.loop, speed, all),
        free: freeDeliveryOfAll(side.loop),
        standing: standingFlow(side.loop),
      }),
      core: shrouded!.coreLoss,
      stack: shrouded!.stackLoss,
      held: heldBackPressure(shrouded!),
    };
  },
});

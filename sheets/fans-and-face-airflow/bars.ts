/** Rows of this sheet's bars. */
import type { Side } from '$lib/job/evaluate';
import { freeDeliveryOfAll, standingFlow } from '$lib/solver/airside/curves';
import { heldBackPressure } from '$lib/solver/loop/faceAir';
import type { SteadySolution } from '$lib/solver/loop/types';

/** Where the pressure that drives the air is lost behind the shroud. */
export function pressureRows(s: SteadySolution, planned: SteadySolution | null) {
  const here = s.air.zones[0]!;
  const there = planned?.air.zones[0];
  return [
    {
      id: 'core',
      label: 'Core',
      found: here.coreLoss,
      ...(there && { candidate: there.coreLoss }),
    },
    {
      id: 'stack',
      label: 'Other cores',
      found: here.stackLoss,
      ...(there && { candidate: there.stackLoss }),
    },
    ...(heldBackPressure(here) > 0 || (there && heldBackPressure(there) > 0)
      ? [
          {
            id: 'fans',
            label: 'Fans, being in the way',
            found: heldBackPressure(here),
            ...(there && { candidate: heldBackPressure(there) }),
          },
        ]
      : []),
  ];
}

/** What the box says and what the core gets. */
export function flowRows(found: Side, candidate: Side | null) {
  return [
    {
      id: 'free',
      label: 'Free air of all fans',
      remark: 'at their volts, no core',
      found: freeDeliveryOfAll(found.loop),
      ...(candidate && { candidate: freeDeliveryOfAll(candidate.loop) }),
    },
    {
      id: 'standing',
      label: 'Through this stack',
      remark: 'vehicle standing',
      found: standingFlow(found.loop),
      ...(candidate && { candidate: standingFlow(candidate.loop) }),
    },
  ];
}

/** Loop balance: both heats over temperature, and each heat that enters. */
import { balanceSpan, heatBalanceCurves } from '$lib/solver/loop/balanceCurves';
import { dutyOf, solvedOf } from '../../shownDuty';
import { curveSet, type Curves } from './bandSource';

export const BALANCE = curveSet({
  name: 'balance',
  frame: (side) => {
    const solved = solvedOf(side);
    return solved && balanceSpan(solved.ready, solved.s);
  },
  curves(side, span): Curves {
    const solved = solvedOf(side);
    if (!solved || !span) return {};
    const { ready, s } = solved;
    const sampled = heatBalanceCurves(ready, dutyOf(side), span);
    if (!sampled) return {};
    const heats = ['charge', 'engineSoak', 'hoseSoak', 'reservoirSoak', 'pump'] as const;
    return {
      entering: sampled.entering,
      leaving: sampled.leaving,
      // A bar has no left side: a heat that leaves the liquid is drawn by its size.
      ...Object.fromEntries(heats.map((id) => [id, Math.abs(s.ledger[id])])),
    };
  },
});

/** Plots of the loop balance: where each heat comes from, and how the settling point moves. */
import type { Side } from '$lib/job/evaluate';
import { heatBalanceCurves } from '$lib/solver/loop/balanceCurves';
import { marks, type BothBands } from '../bands/marks';
import { dutyOf } from '../wiring/duty';
import type { Chart, Curve, SideName, Spot } from '$lib/kit';

/** Heat entering and heat leaving against the temperature of the liquid; they cross where it settles. */
export function balanceChart(found: Side, candidate: Side | null, bands: BothBands = []): Chart {
  const curves: Curve[] = [];
  const spots: Spot[] = [];
  const draw = (side: Side, name: SideName) => {
    if (!side.prepared.ok) return;
    const sampled = heatBalanceCurves(side.prepared.value, dutyOf(side));
    if (!sampled) return;
    curves.push(
      { id: `${name}-in`, label: 'enters', side: name, tone: 'hot', points: sampled.entering },
      { id: `${name}-out`, label: 'leaves', side: name, tone: 'cold', points: sampled.leaving },
    );
    if (sampled.crossing) {
      spots.push({
        label: name === 'found' ? 'settles' : 'candidate settles',
        side: name,
        x: sampled.crossing[0],
        y: sampled.crossing[1],
      });
    }
  };
  draw(found, 'found');
  if (candidate) draw(candidate, 'candidate');
  return {
    x: { name: 'Liquid leaving the reservoir', quantity: 'temperature' },
    y: { name: 'Heat', quantity: 'heat', zero: true },
    curves,
    bands: [
      ...marks(bands, 'entering', { tone: 'hot', id: 'in' }),
      ...marks(bands, 'leaving', { tone: 'cold', id: 'out' }),
    ],
    spots,
  };
}

/** How far above ambient the loop stands, and where to look for it in either order of the cores. */
import type { Side } from '$lib/job/evaluate';
import { isFrontFirst } from '$lib/solver/loop/order';
import { approach, HEALTHY_APPROACH } from '$lib/solver/loop/readings';
import type { SteadySolution } from '$lib/solver/loop/types';
import { q, say, type Finding } from '../types';

/** Against loops that are well. */
export function approachFinding(s: SteadySolution, { loop }: Side): Finding[] {
  if (s.status !== 'balanced' || s.duty === 'pull') return [];
  const above = approach(s, loop);
  const healthy = HEALTHY_APPROACH[s.duty === 'traffic' ? 'traffic' : 'moving'];
  const where = s.duty === 'traffic' ? 'in traffic' : 'moving';
  const what = isFrontFirst(loop)
    ? say`The liquid reaches the charge cooler`
    : say`The reservoir settles`;
  return [
    above > healthy
      ? {
          code: 'approach-high',
          level: 'act',
          sentence: [
            ...what,
            ...say` ${q(above, 'temperatureDifference')} above ambient; a street loop that is well stays within ${q(healthy, 'temperatureDifference')} ${where} (common practice).`,
          ],
        }
      : {
          code: 'approach-healthy',
          level: 'good',
          sentence: [
            ...what,
            ...say` ${q(above, 'temperatureDifference')} above ambient, within the ${q(healthy, 'temperatureDifference')} of a loop that is well ${where} (common practice).`,
          ],
        },
  ];
}

/** With the cooler on the way back, a hot tank by itself says nothing. */
export function orderFinding(s: SteadySolution, { loop }: Side): Finding[] {
  if (!isFrontFirst(loop) || s.status !== 'balanced') return [];
  const { reservoir, chargeCoolerIn } = s.temperatures;
  return [
    {
      code: 'front-first',
      level: 'info',
      sentence: say`The liquid comes back from the charge cooler, so the reservoir holds it at its hottest, ${q(reservoir, 'temperature')}; what meets the charge has been through the front exchanger and is at ${q(chargeCoolerIn, 'temperature')}. A tank too hot to touch is here no fault in itself, but the pump works in that liquid: see its suction margin.`,
    },
  ];
}

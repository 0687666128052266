/** How sure the heat is against how good the probes are. */
import type { Chart } from '$lib/kit';
import { heatShareCurve } from '$lib/solver/instruments/plan/accuracy';
import type { Study } from './study';

/** Wide enough for hand-held thermometers, K. */
const MOST = 3;

/** Null where no drop is to be read. */
export function heatChart({ heat, probe, flowShare, heatWanted, pairFound }: Study): Chart | null {
  if (!heat) return null;
  const curve = heatShareCurve(flowShare, heat.drop, Math.max(MOST, probe));
  return {
    x: { name: '± of each probe', quantity: 'temperatureDifference', zero: true },
    y: { name: '± of the heat', quantity: 'percent', zero: true },
    curves: [{ id: 'heat', label: 'two probes as they are', points: curve }],
    limits: [{ axis: 'y', at: heatWanted, label: 'wanted', level: 'info' }],
    // A pair matched in a bath lies below the curve: it errs together.
    spots: [{ label: pairFound ? 'matched pair' : 'these probes', x: probe, y: heat.share }],
  };
}

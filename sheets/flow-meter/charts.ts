/** K of each run against its flow, with what one K-factor and the slip say. */
import type { Chart, Curve } from '$lib/kit';
import { kBand, kSpots, slipBand, slipCurve } from '$lib/solver/instruments/meter/lowFlow';
import type { Study } from './study';

/** Null without runs. */
export function kChart({ meter, test, slip, range: { from, to } }: Study): Chart | null {
  if (!test?.ok) return null;
  const factor = test.value;
  const curves: Curve[] = slip
    ? [{ id: 'slip', label: 'with its slip', points: slipCurve(factor, slip), side: 'candidate' }]
    : [];
  return {
    x: { name: 'Flow', quantity: 'volumeFlow', zero: true },
    y: { name: 'Pulses per volume', quantity: 'pulsesPerVolume' },
    curves,
    bands: slip
      ? [{ side: 'candidate', of: 'slip', points: slipBand(factor, slip) }]
      : [{ tone: 'good', points: kBand(factor) }],
    dots: [{ label: 'runs', side: 'found', points: kSpots(factor) }],
    stretches:
      from.flow < to.flow
        ? [{ axis: 'x', from: from.flow, to: to.flow, label: 'to be believed', kind: 'span' }]
        : [],
    limits: [
      { axis: 'y', at: factor.K, label: 'K by all runs', level: 'good' },
      { axis: 'y', at: meter.statedK, label: 'set in the reader', level: 'info' },
    ],
  };
}

/** Error over the range before and after the trim; the probe's worst case as a sound circuit. */
import type { Chart, Curve } from '$lib/kit';
import { errorSpots } from '$lib/solver/instruments/probe/trim/error';
import type { Study } from './study';

/** Null where no circuit is known to draw. */
export function errorChart({ job, trims, trim, setup, goodEnough, verdict }: Study): Chart | null {
  if (!trims?.ok || !setup || (!verdict && !job.readerBiasKnown)) return null;
  const { error, presentBand } = trims.value;
  const curve = (id: string, label: string, bias: number, side: Curve['side']): Curve[] => {
    const points = error.curve(bias).map(({ T, error: off }) => [T, off] as const);
    return points.length > 1 ? [{ id, label, points, ...(side && { side }) }] : [];
  };
  const readings = errorSpots([job.ice, job.boil].filter((r) => r !== null));
  return {
    x: { name: 'True temperature', quantity: 'temperature' },
    y: { name: 'Reader shows too much by', quantity: 'temperatureDifference', zero: true },
    curves: [
      ...curve('before', trim ? 'as it is' : 'the circuit', setup.divider.bias, 'found'),
      ...(trim ? curve('after', 'trimmed', trim.bias, 'candidate') : []),
    ],
    bands: [
      { side: 'found', of: 'before', points: error.between(...presentBand) },
      ...(trim
        ? [{ side: 'candidate', of: 'after', points: error.between(...trim.biasBand) } as const]
        : []),
    ],
    dots: readings.length > 0 ? [{ label: 'your readings', side: 'found', points: readings }] : [],
    limits: [
      { axis: 'y', at: goodEnough, label: 'good enough', level: 'info' },
      { axis: 'y', at: -goodEnough, label: '', level: 'info' },
    ],
  };
}

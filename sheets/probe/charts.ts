/** Over the range, before and after the trim: what is shown, its error, how fine one count is. */
import type { Band, Chart, Curve } from '$lib/kit';
import { countSteps, countStepsBetween } from '$lib/solver/instruments/probe/fineness';
import { errorSpots, shownSpots } from '$lib/solver/instruments/probe/trim/error';
import type { Trims } from '$lib/solver/instruments/probe/trim/trims';
import type { ReadSetup } from '$lib/solver/instruments/probe/reader';
import type { Study } from './study';
import { tried } from './tried';

type Points = Curve['points'];
type BandPoints = Band['points'];
type BiasBand = readonly [low: number, high: number];

/** What can be drawn over the range; null where no circuit is known. */
function drawn({ job, trims, setup, verdict }: Study): { setup: ReadSetup; found: Trims } | null {
  if (!trims?.ok || !setup || (!verdict && !job.readerBiasKnown)) return null;
  return { setup, found: trims.value };
}

/** The circuit as it is and as trimmed: one curve and one band of its resistors' tolerances for each. */
function beforeAfter(
  { trim }: Study,
  setup: ReadSetup,
  presentBand: BiasBand,
  points: (bias: number) => Points,
  between: (biases: BiasBand) => BandPoints,
): Required<Pick<Chart, 'curves' | 'bands'>> {
  const curve = (id: string, label: string, bias: number, side: 'found' | 'candidate'): Curve[] => {
    const drawn = points(bias);
    return drawn.length > 1 ? [{ id, label, points: drawn, side }] : [];
  };
  return {
    curves: [
      ...curve('before', trim ? 'as it is' : 'the circuit', setup.divider.bias, 'found'),
      ...(trim ? curve('after', 'trimmed', trim.bias, 'candidate') : []),
    ],
    bands: [
      { side: 'found', of: 'before', points: between(presentBand) },
      ...(trim
        ? [{ side: 'candidate', of: 'after', points: between(trim.biasBand) } as const]
        : []),
    ],
  };
}

const readings = ({ job }: Study) => [job.ice, job.boil].filter((r) => r !== null);
const dots = (points: readonly (readonly [number, number, number])[]): Chart['dots'] & object =>
  points.length > 0 ? [{ label: 'your readings', side: 'found', points }] : [];

const TRUE = { name: 'True temperature', quantity: 'temperature' } as const;

/** Null where no circuit is known to draw. */
export function errorChart(study: Study): Chart | null {
  const known = drawn(study);
  if (!known) return null;
  const { error, presentBand } = known.found;
  const { goodEnough } = study;
  return {
    x: TRUE,
    y: { name: 'Reader shows too much by', quantity: 'temperatureDifference', zero: true },
    ...beforeAfter(
      study,
      known.setup,
      presentBand,
      (bias) => error.curve(bias).map(({ T, error: off }) => [T, off] as const),
      ([low, high]) => error.between(low, high),
    ),
    dots: dots(errorSpots(readings(study))),
    limits: [
      { axis: 'y', at: goodEnough, label: 'good enough', level: 'info' },
      { axis: 'y', at: -goodEnough, label: '', level: 'info' },
    ],
  };
}

/** What the reader shows against the truth; null where neither a circuit nor a reading is known. */
export function readingChart(study: Study): Chart | null {
  const known = drawn(study);
  const spots = shownSpots(readings(study));
  if (!known && spots.length === 0) return null;
  const { from, to } = study;
  const ideal: Curve = {
    id: 'ideal',
    label: 'ideal',
    points: [
      [from, from],
      [to, to],
    ],
    tone: 'soft',
    thin: true,
  };
  const made = known
    ? beforeAfter(
        study,
        known.setup,
        known.found.presentBand,
        (bias) => known.found.error.shown(bias).map(({ T, shown }) => [T, shown] as const),
        ([low, high]) => known.found.error.shownBetween(low, high),
      )
    : { curves: [], bands: [] };
  return {
    x: TRUE,
    y: { name: 'Reader shows', quantity: 'temperature' },
    curves: [ideal, ...made.curves],
    bands: made.bands,
    dots: dots(spots),
  };
}

/** What one count stands for; null where the probe's law does not reach over the range. */
export function countChart(study: Study): Chart | null {
  const { job, from, to, setup, trims } = study;
  const circuit = setup ?? job.setup;
  const { bias } = circuit.divider;
  // Without a circuit found out, the one described has a step all the same.
  const band: BiasBand = trims?.ok ? trims.value.presentBand : [bias, bias];
  const made = tried(() =>
    beforeAfter(
      study,
      circuit,
      band,
      (R_b) => countSteps(circuit, R_b, from, to),
      (biases) => countStepsBetween(circuit, biases, from, to),
    ),
  );
  if (!made.ok) return null;
  return {
    x: TRUE,
    y: { name: 'One count', quantity: 'temperatureDifference', zero: true },
    curves: made.value.curves,
    // Tolerances are taken round a circuit that is known, not round the one described.
    bands: trims?.ok ? made.value.bands : [],
  };
}

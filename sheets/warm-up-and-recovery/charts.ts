/** Plots of the drive: temperatures and heats over time, what each part holds. */
import type { Side } from '$lib/job/evaluate';
import type { Chart, Curve, SideName, Spot, Stretch } from '$lib/kit';
import { storedByPart } from '$lib/solver/loop/drive';
import { points } from '$lib/solver/loop/history';
import type { ThermalMass, WarmUpHistory } from '$lib/solver/loop/types';
import { marks, type BothBands } from '../bands/marks';
import { driveOf } from './study';

type Column = Exclude<keyof WarmUpHistory, 't'>;

interface Shown {
  readonly column: Column;
  readonly label: string;
  readonly tone?: NonNullable<Curve['tone']>;
  readonly thin?: true;
}

const PLACES: readonly Shown[] = [
  { column: 'chargeOut', label: 'charge air', tone: 'hot' },
  { column: 'chargeLiquid', label: 'liquid, charge cooler out', tone: 'soft', thin: true },
  { column: 'reservoir', label: 'reservoir', tone: 'ink' },
  { column: 'frontLiquid', label: 'liquid, front exchanger out', tone: 'cold', thin: true },
];
/** Of a candidate only what the limits are about, so that the plot stays readable. */
const CANDIDATE_PLACES: readonly Shown[] = [
  { column: 'chargeOut', label: 'charge air, candidate' },
  { column: 'reservoir', label: 'reservoir, candidate' },
];

/** Pulls and traffic as washed stretches; what lies between is cruise. */
function stretches(side: Side): Stretch[] {
  const drive = driveOf(side);
  if (!drive) return [];
  const { segmentStarts, endTime } = drive.run;
  return segmentStarts.flatMap((from, i) => {
    const { duty } = drive.schedule[i]!;
    if (duty === 'cruise') return [];
    const to = segmentStarts[i + 1] ?? endTime;
    return [{ axis: 'x', from, to, label: duty, kind: 'span' } as const];
  });
}

function curvesOf(side: Side, name: SideName, shown: readonly Shown[]): Curve[] {
  const drive = driveOf(side);
  if (!drive || drive.run.history.t.length < 2) return [];
  return shown.flatMap(({ column, ...look }) => {
    const sampled = points(drive.run.history, column);
    // Charge air is not known where the heat is stated outright.
    if (!sampled.some(([, y]) => Number.isFinite(y))) return [];
    return [{ id: `${name}-${column}`, side: name, points: sampled, ...look }];
  });
}

/** Temperatures by place over the drive, peaks marked, limits dashed; 95 of 100 loops within the bands. */
export function temperatureChart(
  found: Side,
  candidate: Side | null,
  bands: BothBands = [],
): Chart {
  const spots: Spot[] = [];
  const mark = (side: Side, name: SideName) => {
    const drive = driveOf(side);
    if (!drive?.run.peakCharge) return;
    const { t, value } = drive.run.peakCharge;
    spots.push({ label: 'peak', side: name, x: t, y: value });
  };
  mark(found, 'found');
  if (candidate) mark(candidate, 'candidate');
  return {
    x: { name: 'Time', quantity: 'time', zero: true },
    y: { name: 'Temperature', quantity: 'temperature' },
    curves: [
      ...curvesOf(found, 'found', PLACES),
      ...(candidate ? curvesOf(candidate, 'candidate', CANDIDATE_PLACES) : []),
    ],
    spots,
    bands: [
      ...marks(bands, 'chargeOut', { id: 'chargeOut', tone: 'hot', only: 'found' }),
      ...marks(bands, 'reservoir', { id: 'reservoir', tone: 'ink', only: 'found' }),
      ...marks(bands, 'chargeOut', { id: 'chargeOut', only: 'candidate' }),
      ...marks(bands, 'reservoir', { id: 'reservoir', only: 'candidate' }),
    ],
    stretches: stretches(found),
    limits: [
      { axis: 'y', at: found.limits.charge, label: 'charge air not above' },
      {
        axis: 'y',
        at: found.limits.reservoir,
        label: 'reservoir not above',
        level: 'watch',
      },
    ],
  };
}

/** Heat in and heat out over the drive: where they part, the loop warms or cools. */
export function heatChart(found: Side, candidate: Side | null, bands: BothBands = []): Chart {
  const shown: readonly Shown[] = [
    { column: 'heatIn', label: 'heat in', tone: 'hot' },
    { column: 'heatOut', label: 'heat out', tone: 'cold' },
  ];
  return {
    x: { name: 'Time', quantity: 'time', zero: true },
    y: { name: 'Heat', quantity: 'heat', zero: true },
    curves: [
      ...curvesOf(found, 'found', shown),
      ...(candidate
        ? curvesOf(
            candidate,
            'candidate',
            shown.map((s) => ({ ...s, label: `${s.label}, candidate` })),
          )
        : []),
    ],
    bands: [
      ...marks(bands, 'heatIn', { id: 'heatIn', tone: 'hot' }),
      ...marks(bands, 'heatOut', { id: 'heatOut', tone: 'cold' }),
    ],
    stretches: stretches(found),
  };
}

const MASS_WORD: Readonly<Record<ThermalMass['part'], string>> = {
  reservoirLiquid: 'Reservoir, liquid',
  reservoirMetal: 'Reservoir, metal',
  chargeLiquid: 'Charge cooler, liquid',
  chargeMetal: 'Charge cooler, metal',
  frontLiquid: 'Front exchanger, liquid',
  frontMetal: 'Front exchanger, metal',
  hoses: 'Hoses, liquid',
};

/** Heat capacity by part, both sides. */
export function massRows(found: Side, candidate: Side | null) {
  const planned = candidate && driveOf(candidate);
  return (driveOf(found)?.run.thermalMass ?? []).map(({ part, capacity }) => {
    const other = planned?.run.thermalMass.find((mass) => mass.part === part);
    return {
      id: part,
      label: MASS_WORD[part],
      found: capacity,
      ...(other && { candidate: other.capacity }),
    };
  });
}

const NODE_WORD = {
  reservoir: 'Reservoir and return hose',
  chargeLiquid: 'Liquid to and in the charge cooler',
  chargeMetal: 'Metal of the charge cooler',
  frontLiquid: 'Liquid to and in the front exchanger',
  frontMetal: 'Metal of the front exchanger',
} as const;

const storedOf = (side: Side | null) => {
  const drive = side && driveOf(side);
  if (!drive || !side.prepared.ok) return null;
  return storedByPart(side.prepared.value, drive.request.start, drive.run.end);
};

/** Heat stored by part at the end; none where a part has given heat up, which a bar cannot show. */
export function storedRows(found: Side, candidate: Side | null) {
  const parts = storedOf(found);
  const planned = storedOf(candidate);
  if (!parts || [...parts, ...(planned ?? [])].some(({ heat }) => heat < 0)) return [];
  return parts.map(({ node, heat }) => {
    const other = planned?.find((part) => part.node === node);
    return {
      id: node,
      label: NODE_WORD[node],
      found: heat,
      ...(other && { candidate: other.heat }),
    };
  });
}

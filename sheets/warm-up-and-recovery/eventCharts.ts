/** Plots of the drive with events: temperatures with numbered marks, flow, volts, ice. */
import type { Side } from '$lib/job/evaluate';
import type { Chart, Curve, Limit, SideName, Stretch } from '$lib/kit';
import { segmentAt } from '$lib/solver/loop/drive';
import { bands, eventPoints } from '$lib/solver/loop/events/plots';
import type { EventDrive } from '$lib/job/models/toDrive';
import type { EventHistory } from '$lib/solver/loop/events/types';
import { points } from '$lib/solver/loop/history';
import { marks, type BothBands } from '../bands/marks';
import { eventsOf } from './eventStudy';
import { told } from './eventWords';
import { driveOf } from './study';

type Column = Exclude<keyof EventHistory, 't'>;
interface Shown {
  readonly column: Column;
  readonly label: string;
  readonly tone?: NonNullable<Curve['tone']>;
  readonly thin?: true;
}

const TIME = { name: 'Time', quantity: 'time', zero: true } as const;

const driven = (side: Side | null): EventDrive | null => {
  const outcome = side && eventsOf(side);
  return outcome?.ok ? outcome.value : null;
};

const both = (found: Side, candidate: Side | null) =>
  (
    [
      ['found', driven(found)],
      ['candidate', driven(candidate)],
    ] as const
  ).flatMap(([name, drive]) =>
    drive && drive.run.history.t.length > 1 ? [{ name: name as SideName, drive }] : [],
  );

const named = (label: string, name: SideName) =>
  name === 'candidate' ? `${label}, candidate` : label;

function curves({ run }: EventDrive, name: SideName, shown: readonly Shown[]): Curve[] {
  return shown.flatMap(({ column, label, ...look }) => {
    const sampled = eventPoints(run.history, column);
    // Charge air is not known where the heat is stated outright.
    if (!sampled.every(([, y]) => Number.isFinite(y))) return [];
    return [
      {
        id: `${name}-${column}`,
        label: named(label, name),
        side: name,
        points: sampled,
        ...(name === 'found' && look),
      },
    ];
  });
}

/** When the pump moves nothing, washed; its reason stands in the list. */
const stands = ({ run }: EventDrive): Stretch[] => {
  const still = bands(
    { ...run.history, pumpOn: run.history.flow.map((flow) => (flow > 0 ? 1 : 0)) },
    'pumpOn',
    0,
  );
  return still.map(({ from, until }) => ({
    axis: 'x',
    from,
    to: until,
    // The caption says it; up there stand the numbers of the events.
    label: '',
    kind: 'span',
  }));
};

const PLACES: readonly Shown[] = [
  { column: 'chargeOut', label: 'charge air', tone: 'hot' },
  { column: 'chargeCoolerIn', label: 'liquid into the charge cooler', tone: 'cold', thin: true },
  { column: 'reservoir', label: 'reservoir', tone: 'ink' },
];
const CANDIDATE_PLACES: readonly Shown[] = [
  { column: 'chargeOut', label: 'charge air' },
  { column: 'reservoir', label: 'reservoir' },
];

export function eventTemperatures(
  found: Side,
  candidate: Side | null,
  bands: BothBands = [],
): Chart {
  const drives = both(found, candidate);
  const own = drives.find(({ name }) => name === 'found')?.drive;
  const plain = driveOf(found);
  return {
    x: TIME,
    y: { name: 'Temperature', quantity: 'temperature' },
    curves: [
      ...(plain
        ? [
            {
              id: 'plain',
              label: 'reservoir, nothing happening',
              tone: 'soft' as const,
              thin: true,
              quiet: true,
              points: points(plain.run.history, 'reservoir'),
            },
          ]
        : []),
      ...drives.flatMap(({ name, drive }) =>
        curves(drive, name, name === 'found' ? PLACES : CANDIDATE_PLACES),
      ),
    ],
    bands: [
      ...marks(bands, 'chargeOut', { id: 'chargeOut', tone: 'hot', only: 'found' }),
      ...marks(bands, 'reservoir', { id: 'reservoir', tone: 'ink', only: 'found' }),
      ...marks(bands, 'chargeOut', { id: 'chargeOut', only: 'candidate' }),
      ...marks(bands, 'reservoir', { id: 'reservoir', only: 'candidate' }),
    ],
    stretches: own ? stands(own) : [],
    limits: [
      { axis: 'y', at: found.limits.charge, label: 'charge air not above' },
      ...(own ? eventMarks(own) : []),
    ],
  };
}

/** Marks closer than this share of the drive share one line. */
const APART = 0.04;

/** The numbers of the list, each at its time; neighbours together. */
function eventMarks(drive: EventDrive): Limit[] {
  const apart = APART * drive.run.endTime;
  const groups: { at: number; first: number; last: number }[] = [];
  for (const { number, t } of told(drive)) {
    if (number === null) continue;
    const group = groups.at(-1);
    if (group && t - group.at < apart) group.last = number;
    else groups.push({ at: t, first: number, last: number });
  }
  return groups.map(({ at, first, last }) => ({
    axis: 'x',
    at,
    label: first === last ? `${first}` : `${first}–${last}`,
    level: 'info',
  }));
}

function strip(
  found: Side,
  candidate: Side | null,
  axis: { name: string; quantity: 'volumeFlow' | 'voltage' | 'mass' },
  label: 'flow' | 'volts' | 'ice',
  bands: BothBands,
  of: (drive: EventDrive) => readonly (readonly [number, number])[],
): Chart {
  return {
    x: TIME,
    y: { ...axis, zero: true },
    curves: both(found, candidate).map(({ name, drive }) => ({
      id: `${name}-${label}`,
      label: named(label, name),
      side: name,
      points: of(drive),
    })),
    bands: marks(bands, label, { id: label }),
  };
}

export const flowStrip = (found: Side, candidate: Side | null, bands: BothBands = []): Chart =>
  strip(found, candidate, { name: 'Flow', quantity: 'volumeFlow' }, 'flow', bands, ({ run }) =>
    eventPoints(run.history, 'flow'),
  );

export const voltsStrip = (found: Side, candidate: Side | null, bands: BothBands = []): Chart =>
  strip(
    found,
    candidate,
    { name: 'Volts at the pump’s plug', quantity: 'voltage' },
    'volts',
    bands,
    ({ run, volts }) => Array.from(run.history.t, (t, i) => [t, volts[i]!] as const),
  );

export const iceStrip = (found: Side, candidate: Side | null, bands: BothBands = []): Chart =>
  strip(found, candidate, { name: 'Ice in the tank', quantity: 'mass' }, 'ice', bands, ({ run }) =>
    eventPoints(run.history, 'iceMass'),
  );

export const hasIce = (found: Side, candidate: Side | null): boolean =>
  both(found, candidate).some(({ drive }) => drive.request.ice !== undefined);

/** The list under the plots, as found. */
export const listOf = (side: Side) => {
  const drive = driven(side);
  if (!drive) return [];
  return told(drive).map((event) => ({
    ...event,
    duty: drive.request.schedule[segmentAt(drive.run, event.t)]!.duty,
  }));
};

/** Plots of the air side: fans against face, face velocity against vehicle speed, zone by zone. */
import type { Side } from '$lib/job/evaluate';
import type { Chart, Curve, Limit, SideName, Spot } from '$lib/kit';
import {
  askedOfFans,
  faceSweep,
  fanSetCurve,
  fanHandover,
  fanSetPoint,
  pathSweep,
  zoneSweep,
  FULL_SWEEP,
} from '$lib/solver/airside/curves';
import { marks, type BothBands } from '../bands/marks';
import { settledOf } from '../wiring/duty';

const FACE_VELOCITY = { name: 'Face velocity', quantity: 'faceVelocity', zero: true } as const;
const VEHICLE = { name: 'Vehicle speed', quantity: 'speed', zero: true } as const;

/** The sides that can be drawn. */
function drawn(found: Side, candidate: Side | null) {
  return [
    { name: 'found' as SideName, side: found },
    { name: 'candidate' as SideName, side: candidate },
  ].flatMap(({ name, side }) => {
    const s = settledOf(side);
    return side && s
      ? [{ name, loop: side.loop, air: s.air, speed: side.loop.duties[s.duty].vehicleSpeed }]
      : [];
  });
}

const spotLabel = (name: SideName) => (name === 'found' ? 'as found' : 'candidate');

/** Pressure of the fans, and what core and stack ask of them at this speed and standing. */
export function fanChart(found: Side, candidate: Side | null, bands: BothBands = []): Chart {
  const sides = drawn(found, candidate)
    .filter(({ loop }) => loop.fans.count > 0)
    .map((side) => ({
      ...side,
      fans: fanSetCurve(side.loop, side.speed),
      point: fanSetPoint(side.loop, side.air),
    }));
  const flowMax = Math.max(0, ...sides.flatMap(({ fans }) => fans.map(([flow]) => flow)));
  if (!(flowMax > 0)) return { x: AIR_FLOW, y: PRESSURE };
  const curves = sides.flatMap(({ name, loop, speed, fans }): Curve[] => [
    { id: `${name}-fans`, label: 'fans', side: name, points: fans },
    {
      id: `${name}-asked`,
      label: speed > 0 ? 'stack, less the wind' : 'stack',
      side: name,
      points: askedOfFans(loop, speed, flowMax),
    },
  ]);
  const [first] = sides;
  if (sides.length === 1 && first && first.speed > 0) {
    curves.push({
      id: 'asked-standing',
      label: 'stack, standing',
      tone: 'soft',
      thin: true,
      points: askedOfFans(first.loop, 0, flowMax),
    });
  }
  return {
    x: AIR_FLOW,
    y: PRESSURE,
    curves,
    bands: [...marks(bands, 'fans', { id: 'fans' }), ...marks(bands, 'asked', { id: 'asked' })],
    spots: sides.map(({ name, point: [x, y] }): Spot => ({
      label: spotLabel(name),
      side: name,
      x,
      y,
    })),
    limits: [{ axis: 'y', at: 0, label: 'below: fans in the way', level: 'info' }],
  };
}

const AIR_FLOW = { name: 'Air behind the shroud', quantity: 'airFlow', zero: true } as const;
const PRESSURE = { name: 'Pressure', quantity: 'airPressure', zero: true } as const;

/** Mean face velocity against vehicle speed: fans as they are, standing, and taken off. */
export function speedChart(found: Side, candidate: Side | null, bands: BothBands = []): Chart {
  const sides = drawn(found, candidate);
  const curves = sides.flatMap(({ name, loop }): Curve[] => {
    const sweep = faceSweep(loop, FULL_SWEEP);
    const running = loop.fans.volts > 0 && loop.fans.count > 0;
    const main: Curve = {
      id: `${name}-as-is`,
      label: running ? 'fans running' : loop.fans.count > 0 ? 'fans standing' : 'no fans',
      side: name,
      points: sweep.asIs,
    };
    if (loop.fans.count === 0) return [main];
    const without: Curve = {
      id: `${name}-without`,
      label: 'no fans',
      side: name,
      thin: true,
      points: sweep.without,
      ...(name === 'found' && { tone: 'ink' }),
    };
    const standing: Curve = {
      id: 'standing',
      label: 'fans standing',
      tone: 'soft',
      thin: true,
      points: sweep.standing,
    };
    return [main, ...(running && name === 'found' ? [standing] : []), without];
  });
  const limits = sides.flatMap(({ loop }): Limit[] => {
    const handover = fanHandover(loop);
    if (!handover || handover.speed > FULL_SWEEP) return [];

    return [{ axis: 'x', at: handover.speed, label: 'fans in the way', level: 'info' }];
  });
  return {
    x: VEHICLE,
    y: FACE_VELOCITY,
    curves,
    bands: marks(bands, 'asIs', { id: 'as-is' }),
    limits,
    spots: sides.map(({ name, air, speed }): Spot => ({
      label: spotLabel(name),
      side: name,
      x: speed,
      y: air.meanFaceVelocity,
    })),
  };
}

/** Face velocity of each part of the face; empty where neither side leaves any of it open. */
export function zoneChart(found: Side, candidate: Side | null, bands: BothBands = []): Chart {
  const sides = drawn(found, candidate);
  return {
    x: VEHICLE,
    y: FACE_VELOCITY,
    curves: sides.flatMap(({ name, loop }): Curve[] => {
      const { shrouded, open } = zoneSweep(loop, FULL_SWEEP);
      return [
        { id: `${name}-shrouded`, label: 'behind the shroud', side: name, points: shrouded! },
        ...(open
          ? [{ id: `${name}-open`, label: 'open face', side: name, thin: true, points: open }]
          : []),
      ];
    }),
    bands: [
      ...marks(bands, 'shrouded', { id: 'shrouded' }),
      ...marks(bands, 'open', { id: 'open' }),
    ],
  };
}

/** Face velocity behind the shroud where other cores cover the face, and where it is clear of them. */
export function pathChart(found: Side, candidate: Side | null, bands: BothBands = []): Chart {
  return {
    x: VEHICLE,
    y: FACE_VELOCITY,
    curves: drawn(found, candidate).flatMap(({ name, loop }): Curve[] => {
      const paths = pathSweep(loop, FULL_SWEEP);
      if (!paths) return [];
      return [
        { id: `${name}-clear`, label: 'clear', side: name, points: paths.clear },
        { id: `${name}-covered`, label: 'covered', side: name, thin: true, points: paths.covered },
      ];
    }),
    bands: [
      ...marks(bands, 'clear', { id: 'clear' }),
      ...marks(bands, 'covered', { id: 'covered' }),
    ],
  };
}

/** Whether a zone chart has anything to compare. */
export const hasOpenFace = (...sides: (Side | null)[]): boolean =>
  sides.some((side) => side !== null && side.loop.fans.coverage < 1);

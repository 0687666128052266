/** Plots of runaway: both heats over temperature, and the settling temperature over the knob moved last. */
import type { Side } from '$lib/job/evaluate';
import type { Chart, Curve, SideName, Spot } from '$lib/kit';
import type { Branch, BranchPoint } from '$lib/solver/loop/runaway/branches';
import { heatCurves } from '$lib/solver/loop/runaway/curves';
import type { Knob } from '$lib/solver/loop/runaway/types';
import { marks, type BothBands } from '../bands/marks';
import { studyOf, type Setting, type Study } from './study';

const LIQUID = { name: 'Liquid leaving the reservoir', quantity: 'temperature' } as const;
const HEAT = { name: 'Heat', quantity: 'heat', zero: true } as const;

const studied = (side: Side | null): Study | null => {
  const outcome = side && studyOf(side);
  return outcome?.ok ? outcome.value : null;
};

export function heatChart(found: Side, candidate: Side | null, bands: BothBands = []): Chart {
  const s = studied(found);
  if (!s) return { x: LIQUID, y: HEAT };
  const c = studied(candidate);
  return {
    x: LIQUID,
    y: HEAT,
    curves: [
      ...(s.moved ? ghost(s) : []),
      ...pair(s.now, 'found'),
      ...(c ? pair(c.now, 'candidate') : []),
    ],
    bands: [
      ...marks(bands, 'entering', { tone: 'hot', id: 'in' }),
      ...marks(bands, 'leaving', { tone: 'cold', id: 'out' }),
    ],
    spots: [...crossingSpots(s.now, 'found'), ...(c ? crossingSpots(c.now, 'candidate') : [])],
    limits: [
      {
        axis: 'x',
        at: Math.min(s.now.balance.boilingPoint, s.now.balance.prepared.hottest),
        label: endWord(s.now),
        level: 'act',
      },
    ],
  };
}

/** The liquid is described to 120 °C; under pressure it boils later. */
const endWord = ({ balance }: Setting) =>
  balance.boilingPoint <= balance.prepared.hottest ? 'boils' : 'liquid described to here';

/** From the day's temperature up: colder liquid would take heat from the air. */
function pair({ balance }: Setting, side: SideName): Curve[] {
  const { entering, leaving } = heatCurves(balance, balance.ambient);
  const words =
    side === 'found' ? ['enters', 'leaves'] : ['enters, candidate', 'leaves, candidate'];
  const curves: Curve[] = [
    { id: `${side}-in`, label: words[0]!, side, tone: 'hot', points: entering },
    { id: `${side}-out`, label: words[1]!, side, tone: 'cold', points: leaving },
  ];
  return curves.filter(({ points }) => points.length > 0);
}

/** The loop as described, behind: what the knobs have moved is the distance between the two. */
function ghost(s: Study): Curve[] {
  const { entering, leaving } = heatCurves(s.neutral.balance, s.neutral.balance.ambient);
  const curves: Curve[] = [
    {
      id: 'ghost-in',
      label: 'enters, as described',
      tone: 'soft',
      thin: true,
      quiet: true,
      points: entering,
    },
    {
      id: 'ghost-out',
      label: 'leaves, as described',
      tone: 'soft',
      thin: true,
      quiet: true,
      points: leaving,
    },
  ];
  return curves.filter(({ points }) => points.length > 0);
}

const crossingSpots = ({ found }: Setting, side: SideName): Spot[] =>
  found.all.map((crossing) => ({
    label: `${side === 'found' ? '' : 'candidate '}${crossing.stable ? 'stable' : 'unstable'}`,
    side,
    x: crossing.T,
    y: crossing.leaving,
    ...(!crossing.stable && { open: true, tone: 'act' as const }),
  }));

const KNOB_AXIS: Readonly<Record<Knob, Chart['x']>> = {
  flow: { name: 'Flow', quantity: 'percent' },
  fan: { name: 'Fan volts', quantity: 'percent' },
  ambientShift: { name: 'Ambient above described', quantity: 'temperatureDifference' },
  load: { name: 'Load', quantity: 'percent' },
};

/** Every crossing while one knob goes from end to end. */
export function branchChart(found: Side, candidate: Side | null): Chart {
  const s = studied(found);
  const y = { ...LIQUID, name: 'Crossing' };
  if (!s) return { x: KNOB_AXIS.ambientShift, y };
  const c = studied(candidate);
  return {
    x: KNOB_AXIS[s.knob],
    y,
    curves: [
      ...branchCurves(s.branches, 'found'),
      ...(c ? branchCurves(c.branches, 'candidate') : []),
    ],
    spots: [
      ...presentSpot(s, 'found'),
      ...(c ? presentSpot(c, 'candidate') : []),
      ...s.branches.flatMap(({ folds }): Spot[] =>
        folds.map(({ knob, T }) => ({ label: 'fold', x: knob, y: T, open: true, tone: 'act' })),
      ),
    ],
    limits: [
      {
        axis: 'y',
        at: Math.min(s.now.balance.boilingPoint, s.now.balance.prepared.hottest),
        label: endWord(s.now),
        level: 'act',
      },
    ],
  };
}

/** Of the crossing met from cold; the branches themselves may turn back. */
export const branchBands = (bands: BothBands) => marks(bands, 'cold');

function presentSpot({ now, knob, knobs }: Study, side: SideName): Spot[] {
  const { fromCold } = now.found;
  return fromCold
    ? [{ label: side === 'found' ? 'now' : 'candidate now', side, x: knobs[knob], y: fromCold.T }]
    : [];
}

/** Stretches of one stability; neighbours share the point between them. */
function branchCurves(branches: readonly Branch[], side: SideName): Curve[] {
  const named = new Set<string>();
  return branches.flatMap(({ points }, b) =>
    stretches(points).map(({ stable, part }, i): Curve => {
      const label = `${stable ? 'stable' : 'unstable'}${side === 'candidate' ? ', candidate' : ''}`;
      const quiet = named.has(label);
      named.add(label);
      return {
        id: `${side}-${b}-${i}`,
        label,
        side,
        quiet,
        points: part.map(({ knob, T }) => [knob, T]),
        ...(!stable && { thin: true, tone: 'act' }),
      };
    }),
  );
}

function stretches(points: readonly BranchPoint[]) {
  const out: { stable: boolean; part: BranchPoint[] }[] = [];
  for (const point of points) {
    const last = out.at(-1);
    if (last?.stable === point.stable) last.part.push(point);
    else {
      const joint = last?.part.at(-1);
      out.push({ stable: point.stable, part: joint ? [joint, point] : [point] });
    }
  }
  return out.filter(({ part }) => part.length > 1);
}

/** Plots of both exchangers; the curves are sampled by the solver. */
import type { Side } from '$lib/job/evaluate';
import { chargeDuties, type ExchangerEnds } from '$lib/job/sure/bands/exchangers';
import type { Chart, Limit, Spot } from '$lib/kit';
import {
  chargeByAirFlow,
  frontAtSpeed,
  frontByFaceVelocity,
  frontByLiquidFlow,
  frontWithoutLiquidResistance,
} from '$lib/solver/loop/exchangerCurves';
import { frontChanged } from '$lib/solver/loop/frontWhatIf';
import { differencesSpent, type Resistances } from '$lib/solver/cores/resistance';
import type { PreparedLoop } from '$lib/solver/loop/prepare';
import type { DutyId, SteadySolution } from '$lib/solver/loop/types';
import { marks, type BothBands } from '../bands/marks';

/** One side whose liquid moves in the duty shown. */
interface Solved {
  readonly side: 'found' | 'candidate';
  readonly job: Side;
  readonly ready: PreparedLoop;
  readonly s: SteadySolution;
}

/** The sides that have curves: liquid that moves. */
export function solvedSides(found: Side, candidate: Side | null): Solved[] {
  return [found, ...(candidate ? [candidate] : [])].flatMap((job): Solved[] => {
    const outcome = job.steady[job.values['view.duty']!.choice as DutyId];
    if (!job.prepared.ok || !outcome.ok || outcome.value.status === 'no-flow') return [];
    return [
      {
        side: job.id === 'asFound' ? 'found' : 'candidate',
        job,
        ready: job.prepared.value,
        s: outcome.value,
      },
    ];
  });
}

/** Heat per kelvin against face velocity: even air as a curve, the air as it really is as spots. */
export function velocityChart(
  sides: readonly Solved[],
  ends: ExchangerEnds,
  bands: BothBands = [],
): Chart {
  const places = sides.map(({ ready, s, job }) => {
    const { duties } = job.loop;
    const at = (label: string, speed: number) => ({ label, ...frontAtSpeed(ready, s, speed) });
    const held = at(s.duty, duties[s.duty].vehicleSpeed);
    const still = at('fans only', 0);
    const pull = at('pull', duties.pull.vehicleSpeed);
    // Two sides side by side: few labels, or none can be read.
    if (sides.length > 1) return s.duty === 'pull' ? [still, held] : [held, pull];
    return s.duty === 'cruise'
      ? [still, held, pull]
      : s.duty === 'pull'
        ? [still, held]
        : [held, pull];
  });
  return {
    x: { name: 'Mean face velocity', quantity: 'faceVelocity', zero: true },
    y: { name: 'Heat per degree above fresh air', quantity: 'conductance', zero: true },
    curves: sides.map(({ side, ready, s }) => ({
      id: `${side}-even`,
      side,
      label: sides.length > 1 ? 'even, fresh air' : 'with even, fresh air',
      points: frontByFaceVelocity(ready, s, ends.faceVelocity),
    })),
    bands: marks(bands, 'velocity', { id: 'even' }),
    spots: places.flatMap((list, i) =>
      list.map(({ label, faceVelocity, conductance }): Spot => ({
        side: sides[i]!.side,
        label,
        x: faceVelocity,
        y: conductance,
      })),
    ),
  };
}

/** Heat per kelvin against liquid flow: where more flow stops helping. */
export function flowChart(
  sides: readonly Solved[],
  ends: ExchangerEnds,
  bands: BothBands = [],
): Chart {
  return {
    x: { name: 'Liquid flow', quantity: 'volumeFlow', zero: true },
    y: { name: 'Heat per degree above fresh air', quantity: 'conductance', zero: true },
    curves: sides.map(({ side, ready, s }) => ({
      id: `${side}-flow`,
      side,
      label: 'this air',
      points: frontByLiquidFlow(ready, s, ends.liquidFlow),
    })),
    bands: marks(bands, 'flow', { id: 'flow' }),
    spots: sides.map(({ side, ready, s }) => ({
      side,
      label: 'now',
      x: s.operating.flow,
      y: frontChanged(ready, s).conductance,
    })),
    limits: sides.map(({ side, ready, s }): Limit => ({
      axis: 'y',
      at: frontWithoutLiquidResistance(ready, s),
      label:
        sides.length > 1
          ? `${side === 'found' ? 'as found' : 'candidate'}: all this air can take`
          : 'all this air can take',
      level: 'info',
    })),
  };
}

/** Effectiveness of the charge cooler against air flow, its duties marked. */
export function chargeChart(
  sides: readonly Solved[],
  ends: ExchangerEnds,
  bands: BothBands = [],
): Chart {
  const duties = sides.map(({ job }) =>
    // At cruise both sides lie on each other.
    chargeDuties(job, job.id === 'asFound' ? ['cruise', 'pull'] : ['pull']),
  );
  return {
    x: { name: 'Charge air', quantity: 'airMassFlow', zero: true },
    y: { name: 'Cooling of the charge, of what is possible', quantity: 'percent', domain: [0, 1] },
    curves: sides.map(({ side, ready, s }) => ({
      id: `${side}-charge`,
      side,
      label: 'charge cooler',
      points: chargeByAirFlow(ready, s, ends.chargeFlow),
    })),
    bands: marks(bands, 'charge', { id: 'charge' }),
    spots: duties.flatMap((list, i) => list.map((spot) => ({ ...spot, side: sides[i]!.side }))),
  };
}

/** One row of the bars that show what each resistance takes of the temperature difference. */
export interface DifferenceRow {
  readonly id: string;
  readonly label: string;
  readonly found: number;
  readonly candidate?: number;
}

/** A clean core in even air loses nothing to either; less than this is rounding, K. */
const SHOWN = 0.01;

const PARTS = ['air', 'liquid', 'rest'] as const satisfies readonly (keyof Resistances)[];

/** Rows of one core; none where a side has nothing to show. */
export function differenceRows(
  sides: readonly Solved[],
  core: 'chargeCooler' | 'front',
): DifferenceRow[] {
  const parts = sides.map(({ s }) => {
    const state = s[core];
    return state && differencesSpent(state);
  });
  const [found, candidate] = parts;
  if (sides[0]?.side !== 'found' || !found) return [];
  const label = {
    air: 'air side',
    liquid: 'liquid side',
    rest: core === 'front' ? 'dirt and uneven air' : 'dirt',
  };
  return PARTS.filter(
    (part) => part !== 'rest' || found.rest > SHOWN || (candidate?.rest ?? 0) > SHOWN,
  ).map((part) => ({
    id: part,
    label: label[part],
    found: found[part],
    ...(candidate && { candidate: candidate[part] }),
  }));
}

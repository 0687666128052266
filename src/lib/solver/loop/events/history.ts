/** A finished drive over time. */
import { HEAT_OF_FUSION, ICE_POINT } from '../../fluids/ice';
import type { DenseSolution } from '../../numerics/dense';
import { NODE } from '../network';
import type { NodeCapacities } from '../thermalMass';
import type { EventNetwork } from './eventNetwork';
import type { Layout } from './layout';
import type { Mode } from './mode';
import { turns, type Switches } from './switches';
import type { EventHistory } from './types';

/** One stretch between events; `lastStep` below `firstStep` when it ended where it began. */
export interface Stretch {
  readonly mode: Mode;
  readonly switches: Switches;
  readonly from: number;
  readonly to: number;
  readonly firstStep: number;
  readonly lastStep: number;
}

export interface FinishedRun {
  /** The pump runs when it is given current. */
  readonly runs: boolean;
  readonly net: EventNetwork;
  readonly dense: DenseSolution;
  readonly stretches: readonly Stretch[];
  readonly layout: Layout;
  readonly capacity: NodeCapacities;
  readonly cellCapacity: readonly number[];
  readonly start: Float64Array;
  readonly end: Float64Array;
  readonly boilingPoint: number;
  readonly specificHeat: number;
}

/** Evenly spaced points of the history, besides both sides of every event. */
const POINTS = 600;
/** Missing heat of the reservoir over the heat of fusion, kg. */
export function iceOf({ capacity }: FinishedRun, mode: Mode, y: Float64Array): number {
  if (!mode.melting) return 0;
  return Math.max(0, ((ICE_POINT - y[NODE.reservoir]!) * capacity.reservoir) / HEAT_OF_FUSION);
}

const COLUMNS = [
  't',
  'reservoir',
  'chargeLiquid',
  'chargeMetal',
  'frontLiquid',
  'frontMetal',
  'pumpIn',
  'chargeCoolerIn',
  'frontIn',
  'returning',
  'chargeOut',
  'bayAir',
  'flow',
  'pumpOn',
  'fansOn',
  'breakerState',
  'iceMass',
  'vapourLost',
  'heatIn',
  'heatOut',
] as const satisfies readonly (keyof EventHistory)[];

/** Times to sample: both ends of every stretch, and evenly between. */
export function historyOf(run: FinishedRun): EventHistory {
  const { dense, stretches, net, layout, end, runs } = run;
  const spacing = (stretches.at(-1)?.to ?? 0) / POINTS;
  const most = POINTS + 3 * stretches.length + 2;
  const columns = Object.fromEntries(
    COLUMNS.map((name) => [name, new Float64Array(most)]),
  ) as unknown as EventHistory;
  const y = new Float64Array(layout.dimension);
  let n = 0;
  for (const { mode, switches, from, to, firstStep, lastStep } of stretches) {
    let step = firstStep;
    const pumpOn = runs && turns(switches) ? 1 : 0;
    const fansOn = switches.fansOn ? 1 : 0;
    const sample = (t: number) => {
      while (step < lastStep && dense.endOf(step) < t) step++;
      if (lastStep < firstStep) y.set(end);
      else dense.at(step, t, y);
      const r = net.read(mode, y);
      columns.t[n] = t;
      columns.reservoir[n] = r.reservoir;
      columns.chargeLiquid[n] = y[NODE.chargeLiquid]!;
      columns.chargeMetal[n] = y[NODE.chargeMetal]!;
      columns.frontLiquid[n] = y[NODE.frontLiquid]!;
      columns.frontMetal[n] = y[NODE.frontMetal]!;
      columns.pumpIn[n] = r.T_out;
      columns.chargeCoolerIn[n] = r.coolerIn;
      columns.frontIn[n] = r.frontIn;
      columns.returning[n] = r.returning;
      columns.chargeOut[n] = r.chargeOut;
      columns.bayAir[n] = r.bayAir;
      columns.flow[n] = r.flow;
      columns.pumpOn[n] = pumpOn;
      columns.fansOn[n] = fansOn;
      columns.breakerState[n] = layout.breaker >= 0 ? y[layout.breaker]! + 1 : NaN;
      columns.iceMass[n] = iceOf(run, mode, y);
      columns.vapourLost[n] = layout.vapour >= 0 ? y[layout.vapour]! : 0;
      columns.heatIn[n] = r.heatIn;
      columns.heatOut[n] = r.heatOut;
      n++;
    };
    sample(from);
    if (spacing > 0) {
      for (let i = Math.floor(from / spacing) + 1; i * spacing < to; i++) sample(i * spacing);
    }
    if (to > from) sample(to);
  }
  const filled = COLUMNS.map((name) => [name, columns[name].slice(0, n)]);
  return Object.fromEntries(filled) as unknown as EventHistory;
}

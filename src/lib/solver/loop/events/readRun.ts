/** What is read off a finished drive: histories, peaks, times, the ledger of heat. */
import { HEAT_OF_FUSION, ICE_POINT } from '../../fluids/ice';
import type { DenseSolution } from '../../numerics/dense';
import { maximum } from '../../numerics/maximum';
import { NODE } from '../network';
import type { NodeCapacities } from '../thermalMass';
import type { TransientState } from '../types';
import type { EventNetwork, Mode } from './eventNetwork';
import type { Layout } from './layout';
import { NODES } from './setUp';
import { moves, turns, type Switches } from './switches';
import type { EventHistory, EventLedger, EventSolution } from './types';

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
/** A peak between two points is placed this sharply, s. */
const SHARP = 1e-3;

export function readRun(
  run: FinishedRun,
): Pick<
  EventSolution,
  | 'history'
  | 'end'
  | 'peakCharge'
  | 'peakReservoir'
  | 'flowTime'
  | 'fanTime'
  | 'iceLeft'
  | 'vapourLost'
  | 'ledger'
> {
  const { net, stretches, layout, end } = run;
  const last = stretches.at(-1)!;
  const history = historyOf(run);
  const time = (counts: (stretch: Stretch) => boolean) =>
    stretches.reduce((sum, x) => sum + (counts(x) ? x.to - x.from : 0), 0);
  const state = Object.fromEntries(NODES.map((node) => [node, end[NODE[node]]!]));
  return {
    history,
    end: { ...(state as unknown as TransientState), reservoir: net.reservoir(last.mode, end) },
    peakCharge: peak(run, history, 'chargeOut'),
    peakReservoir: peak(run, history, 'reservoir')!,
    flowTime: time(({ switches }) => moves(switches)),
    fanTime: time(({ switches }) => switches.fansOn),
    iceLeft: iceOf(run, last.mode, end),
    vapourLost: layout.vapour >= 0 ? end[layout.vapour]! : 0,
    ledger: ledgerOf(run),
  };
}

/** Missing heat of the reservoir over the heat of fusion, kg. */
function iceOf({ capacity }: FinishedRun, mode: Mode, y: Float64Array): number {
  if (!mode.melting) return 0;
  return Math.max(0, ((ICE_POINT - y[NODE.reservoir]!) * capacity.reservoir) / HEAT_OF_FUSION);
}

function ledgerOf(run: FinishedRun): EventLedger {
  const { net, layout, capacity, cellCapacity, stretches, start, end, boilingPoint } = run;
  const rise = (i: number) => end[i]! - start[i]!;
  const stored = NODES.reduce((sum, node) => sum + capacity[node] * rise(NODE[node]), 0);
  const melting =
    HEAT_OF_FUSION *
    (iceOf(run, stretches[0]!.mode, start) - iceOf(run, stretches.at(-1)!.mode, end));
  let hoses = 0;
  cellCapacity.forEach((C, index) => {
    for (let i = 0; i < layout.cells; i++)
      hoses += C * rise(layout.firstCell + index * layout.cells + i);
  });
  const steam =
    layout.vapour >= 0
      ? rise(layout.vapour) * (net.latent + run.specificHeat * (boilingPoint - ICE_POINT))
      : 0;
  const heatIn = rise(NODE.heatIn);
  const heatOut = rise(NODE.heatOut);
  const residual = heatIn - heatOut - stored - hoses - steam;
  const largest = Math.max(...[heatIn, heatOut, stored, hoses, melting, steam].map(Math.abs), 1);
  return {
    heatIn,
    heatOut,
    sensible: stored - melting,
    hoses,
    melting,
    steam,
    residual,
    relative: Math.abs(residual) / largest,
  };
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
function historyOf(run: FinishedRun): EventHistory {
  const { dense, stretches, net, layout, end } = run;
  const spacing = (stretches.at(-1)?.to ?? 0) / POINTS;
  const most = POINTS + 3 * stretches.length + 2;
  const columns = Object.fromEntries(
    COLUMNS.map((name) => [name, new Float64Array(most)]),
  ) as unknown as EventHistory;
  const y = new Float64Array(layout.dimension);
  let n = 0;
  for (const { mode, switches, from, to, firstStep, lastStep } of stretches) {
    let step = firstStep;
    const pumpOn = turns(switches) ? 1 : 0;
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

/** Highest value of a history, sharpened between its neighbours within the stretch. */
function peak(
  { net, dense, stretches, layout }: FinishedRun,
  history: EventHistory,
  what: 'chargeOut' | 'reservoir',
): { readonly t: number; readonly value: number } | null {
  let best = -1;
  history[what].forEach((value, i) => {
    if (value > (best < 0 ? -Infinity : history[what][best]!)) best = i;
  });
  if (best < 0) return null;
  const found = { t: history.t[best]!, value: history[what][best]! };
  const stretch = stretches.find(({ from, to }) => found.t > from && found.t < to);
  if (!stretch) return found;
  const y = new Float64Array(layout.dimension);
  const read = (t: number) => {
    dense.at(Math.min(Math.max(dense.stepAt(t), stretch.firstStep), stretch.lastStep), t, y);
    return net.read(stretch.mode, y)[what];
  };
  const low = Math.max(stretch.from, history.t[best - 1] ?? found.t);
  const high = Math.min(stretch.to, history.t[best + 1] ?? found.t);
  const sharp = maximum(read, low, high, SHARP);
  return sharp.value > found.value ? { t: sharp.x, value: sharp.value } : found;
}

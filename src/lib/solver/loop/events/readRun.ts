/** What is read off a finished drive: peaks, times, the ledger of heat. */
import { HEAT_OF_FUSION, ICE_POINT } from '../../fluids/ice';
import { maximum } from '../../numerics/maximum';
import { NODE } from '../network';
import type { TransientState } from '../types';
import { historyOf, iceOf, type FinishedRun, type Stretch } from './history';
import { NODES } from './layout';
import { moves } from './switches';
import type { EventHistory, EventLedger, EventSolution } from './types';

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
    flowTime: run.runs ? time(({ switches }) => moves(switches)) : 0,
    fanTime: time(({ switches }) => switches.fansOn),
    iceLeft: iceOf(run, last.mode, end),
    vapourLost: layout.vapour >= 0 ? end[layout.vapour]! : 0,
    ledger: ledgerOf(run),
  };
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

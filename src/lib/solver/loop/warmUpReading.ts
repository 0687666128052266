/** What is read off a finished transient: histories, peaks, limits, recovery. */
import type { DenseSolution } from '../numerics/dense';
import { maximum } from '../numerics/maximum';
import { brent } from '../numerics/root';
import type { Forcing } from './forcing';
import { NODE, STATES, type Network } from './network';
import type { PreparedLoop } from './prepare';
import type { HardestSegment, WarmUpHistory, WarmUpRequest, WarmUpSolution } from './types';

/** One segment as it was run; `lastStep` below `firstStep` when it ended where it began. */
export interface Run {
  readonly forcing: Forcing;
  readonly from: number;
  readonly to: number;
  readonly firstStep: number;
  readonly lastStep: number;
}

interface Finished {
  readonly prepared: PreparedLoop;
  readonly net: Network;
  readonly dense: DenseSolution;
  readonly runs: readonly Run[];
  readonly request: WarmUpRequest;
  readonly end: Float64Array;
}

/** Evenly spaced points of the history, unless told. */
const POINTS = 600;
/** Points looked at inside each step when searching for peaks and crossings. */
const LOOKS = 4;
/** Peaks and crossings are placed this sharply, s. */
const SHARP = 1e-6;

/** The two quantities that are searched, at the times looked at in one run. */
interface Looks {
  readonly run: Run;
  readonly t: readonly number[];
  readonly chargeOut: readonly number[];
  readonly reservoir: readonly number[];
}

type Searched = 'chargeOut' | 'reservoir';

/** A quantity at any time of a run. */
type Reader = (run: Run, what: Searched) => (t: number) => number;

export function readOut(
  finished: Finished,
): Pick<
  WarmUpSolution,
  'history' | 'peakCharge' | 'peakReservoir' | 'timeToLimit' | 'hardest' | 'recoveryTime'
> {
  const { request, dense, net } = finished;
  const y = new Float64Array(STATES);
  const reader: Reader = (run, what) => (t) => {
    at(finished, run, Math.max(run.firstStep, dense.stepAt(t)), t, y);
    return what === 'reservoir' ? y[NODE.reservoir]! : net.read(run.forcing, y).chargeOut;
  };
  const looks = finished.runs.map((run) => looksOf(finished, run));
  const hardest = hardestSegment(finished, looks, reader);
  return {
    history: history(finished),
    peakCharge: peak(looks, 'chargeOut', reader),
    peakReservoir: peak(looks, 'reservoir', reader)!,
    timeToLimit: firstAbove(looks, request.chargeLimit, reader),
    hardest,
    recoveryTime: hardest && recovery(request, hardest, looks, reader),
  };
}

/** State at `t` on a step of the run; a run without steps is its end state. */
function at({ dense, end }: Finished, run: Run, step: number, t: number, y: Float64Array): void {
  if (run.lastStep < run.firstStep) y.set(end);
  else dense.at(Math.min(step, run.lastStep), t, y);
}

function looksOf(finished: Finished, run: Run): Looks {
  const { dense, net } = finished;
  const looks = { t: [] as number[], chargeOut: [] as number[], reservoir: [] as number[] };
  const y = new Float64Array(STATES);
  const look = (t: number, step: number) => {
    at(finished, run, step, t, y);
    looks.t.push(t);
    looks.chargeOut.push(net.read(run.forcing, y).chargeOut);
    looks.reservoir.push(y[NODE.reservoir]!);
  };
  look(run.from, run.firstStep);
  for (let step = run.firstStep; step <= run.lastStep; step++) {
    const start = dense.startOf(step);
    const length = dense.endOf(step) - start;
    for (let i = 1; i < LOOKS; i++) look(start + (length * i) / LOOKS, step);
    look(step === run.lastStep ? run.to : start + length, step);
  }
  return { run, ...looks };
}

/** The highest value over all runs, found between its neighbours; null where it is never a number. */
function peak(
  looks: readonly Looks[],
  what: Searched,
  reader: Reader,
): { readonly t: number; readonly value: number } | null {
  let found: { readonly of: Looks; readonly index: number } | null = null;
  let highest = -Infinity;
  for (const of of looks) {
    of[what].forEach((value, index) => {
      if (!(value > highest)) return;
      highest = value;
      found = { of, index };
    });
  }
  if (!found) return null;
  const { of, index } = found as { of: Looks; index: number };
  const [low, high] = [of.t[Math.max(0, index - 1)]!, of.t[index + 1] ?? of.run.to];
  const sharp = maximum(reader(of.run, what), low, high, SHARP);
  return sharp.value > highest
    ? { t: sharp.x, value: sharp.value }
    : { t: of.t[index]!, value: highest };
}

/** First time the charge is hotter than `limit`. */
function firstAbove(looks: readonly Looks[], limit: number, reader: Reader): number | null {
  for (const { run, t, chargeOut } of looks) {
    const index = chargeOut.findIndex((value) => value > limit);
    if (index >= 0) {
      return crossing(reader(run, 'chargeOut'), limit, t[Math.max(0, index - 1)]!, t[index]!);
    }
  }
  return null;
}

/** Where `read` passes `limit` between two times, one on each side; equal times are their own answer. */
function crossing(read: (t: number) => number, limit: number, a: number, b: number): number {
  if (a === b) return a;
  const surplus = (t: number) => read(t) - limit;
  const fa = surplus(a);
  const fb = surplus(b);
  return fa > 0 === fb > 0 ? b : brent(surplus, a, b, { fa, fb, xtol: SHARP }).x;
}

/** The segment with the most heat per second, and what it does to the reservoir. */
function hardestSegment(
  { dense, runs }: Finished,
  looks: readonly Looks[],
  reader: Reader,
): HardestSegment | null {
  const y = new Float64Array(STATES);
  const heatAt = (t: number) => {
    dense.value(t, y);
    return y[NODE.heatIn]!;
  };
  let index = -1;
  let most = -Infinity;
  runs.forEach(({ from, to }, i) => {
    if (!(to > from)) return;
    const mean = (heatAt(to) - heatAt(from)) / (to - from);
    if (mean > most) [most, index] = [mean, i];
  });
  if (index < 0) return null;
  const { from, to } = runs[index]!;
  return {
    index,
    from,
    to,
    before: looks[index]!.reservoir[0]!,
    peak: peak(looks.slice(index, index + 2), 'reservoir', reader)!.value,
  };
}

/**
 * From the end of the hardest segment until the reservoir, no longer rising, is within the band of its
 * temperature before that segment; 0 when it never left the band.
 */
function recovery(
  { recoveryBand }: WarmUpRequest,
  { index, to, before: start }: HardestSegment,
  looks: readonly Looks[],
  reader: Reader,
): number | null {
  const level = start + recoveryBand;
  let before = to;
  let T_before = looks[index]!.reservoir.at(-1)!;
  let left = T_before > level;
  for (const { run, t, reservoir } of looks.slice(index + 1)) {
    for (let i = 0; i < t.length; i++) {
      const T = reservoir[i]!;
      if (T > level) left = true;
      else if (t[i]! > before && T <= T_before) {
        return left ? crossing(reader(run, 'reservoir'), level, before, t[i]!) - to : 0;
      }
      before = t[i]!;
      T_before = T;
    }
  }
  return null;
}

function history({ dense, net, runs, end, request }: Finished): WarmUpHistory {
  const columns = {
    t: [] as number[],
    reservoir: [] as number[],
    chargeLiquid: [] as number[],
    chargeMetal: [] as number[],
    frontLiquid: [] as number[],
    frontMetal: [] as number[],
    chargeOut: [] as number[],
    heatIn: [] as number[],
    heatOut: [] as number[],
    flow: [] as number[],
  };
  const y = new Float64Array(STATES);
  const spacing = (runs.at(-1)?.to ?? 0) / (request.points ?? POINTS);
  for (const run of runs) {
    let step = run.firstStep;
    const sample = (t: number) => {
      while (step < run.lastStep && dense.endOf(step) < t) step++;
      if (run.lastStep < run.firstStep) y.set(end);
      else dense.at(step, t, y);
      const reading = net.read(run.forcing, y);
      columns.t.push(t);
      columns.reservoir.push(y[NODE.reservoir]!);
      columns.chargeLiquid.push(y[NODE.chargeLiquid]!);
      columns.chargeMetal.push(y[NODE.chargeMetal]!);
      columns.frontLiquid.push(y[NODE.frontLiquid]!);
      columns.frontMetal.push(y[NODE.frontMetal]!);
      columns.chargeOut.push(reading.chargeOut);
      columns.heatIn.push(reading.heatIn);
      columns.heatOut.push(reading.heatOut);
      columns.flow.push(reading.flow);
    };
    sample(run.from);
    const first = Math.floor(run.from / spacing) + 1;
    for (let k = first; k * spacing < run.to; k++) sample(k * spacing);
    if (run.to > run.from) sample(run.to);
  }
  const out = {} as Record<keyof WarmUpHistory, Float64Array>;
  for (const name of Object.keys(columns) as (keyof WarmUpHistory)[]) {
    out[name] = Float64Array.from(columns[name]);
  }
  return out;
}

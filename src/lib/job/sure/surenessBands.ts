/** Bands round the curves of the sheets: the same curve for many loops that the ± of the inputs allow. */
import { readAt } from '$lib/solver/loop/history';
import { settle } from '$lib/solver/loop/settle';
import type { DutyId, WarmUpHistory } from '$lib/solver/loop/types';
import { warmUp } from '$lib/solver/loop/warmUp';
import { spaced } from '$lib/solver/numerics/spaced';
import { bandOf, type BandPoint } from '$lib/solver/uncertainty/band';
import { propagate, type Model } from '$lib/solver/uncertainty/propagate';
import { requestOf, type Side } from '../evaluate';
import { fieldAt } from '../fields';
import { finished, SEED, surenessKey } from './sureness';
import { uncertainOf, type Uncertain } from './surenessInputs';
import { loopModel, preparedModel } from './surenessModel';
import { toSchedule, toStart } from '../models/toLoop';

/** Curves drawn: each end of the band lies between a few of them. */
const CURVES = 128;
/** Places along a curve. */
const PLACES = { time: 121, flow: 31, ambient: 13 } as const;
/** Points a drive is followed by, besides its edges. */
const DRIVE_POINTS = 150;

/** Sorted by place, so that plain data cross from the other thread. */
type Points = readonly BandPoint[];

function drawn(inputs: readonly Uncertain[], outputs: number, model: Model): Float64Array[] {
  const study = {
    inputs: inputs.map(({ distribution }) => distribution),
    axes: inputs.map(({ axis }) => axis),
    outputs,
    samples: CURVES,
    seed: SEED,
  };
  return [...finished(propagate(study, model)).results];
}

export interface DriveBands {
  readonly reservoir: Points;
  /** Empty where the heat is stated outright. */
  readonly chargeOut: Points;
}

export const driveBandsKey = (side: Side): string =>
  JSON.stringify([surenessKey(side), toSchedule(side.values), toStart(side.values)]);

/** Temperatures over the drive; null where nothing has a ±, or where the drive cannot be followed. */
export function driveBands(side: Side): DriveBands | null {
  const inputs = uncertainOf(side.values);
  if (inputs.length === 0 || !side.warmUp.ok) return null;
  const t = spaced(0, side.warmUp.value.endTime, PLACES.time);
  const read = (history: WarmUpHistory, column: 'reservoir' | 'chargeOut') =>
    // A draw that boils on the way says nothing of the rest.
    t.map((time) => (time > history.t.at(-1)! + 1e-9 ? NaN : readAt(history, column, time)));
  const model = preparedModel(side.values, inputs, (ready) => {
    const asked = { ...requestOf(ready, side.values), points: DRIVE_POINTS };
    const { history } = warmUp(ready, asked);
    return [...read(history, 'reservoir'), ...read(history, 'chargeOut')];
  });
  const columns = drawn(inputs, 2 * t.length, model);
  return {
    reservoir: bandOf(t, columns.slice(0, t.length)),
    chargeOut: bandOf(t, columns.slice(t.length)),
  };
}

export interface HeadBands {
  readonly pump: Points;
  readonly loop: Points;
}

const dutyShown = ({ values }: Side) => values['view.duty']!.choice as DutyId;

export const headBandsKey = (side: Side): string =>
  JSON.stringify([surenessKey(side), dutyShown(side)]);

/** Head of the pump and head the loop asks, each with the liquid as warm as that loop settles. */
export function headBands(side: Side): HeadBands | null {
  const inputs = uncertainOf(side.values);
  const duty = dutyShown(side);
  const settled = side.steady[duty];
  if (inputs.length === 0 || !side.prepared.ok || !settled.ok) return null;
  const { pump } = side.prepared.value.hydraulics;
  const flows = spaced(0, pump.runOut, PLACES.flow);
  const none = new Float64Array(2 * flows.length).fill(NaN);
  const model = preparedModel(side.values, inputs, (ready) => {
    const of = ready.loop.duties[duty];
    const found = settle(ready, of, ready.airAt(of.vehicleSpeed))?.found;
    if (!found) return none;
    const { hydraulics } = ready;
    const lifts = hydraulics.settled(found.liquid, found.T).pump;
    return [
      ...flows.map((flow) => (flow <= lifts.runOut ? lifts.head(flow) : 0)),
      ...flows.map((flow) => hydraulics.systemHead(flow, found.liquid)),
    ];
  });
  const columns = drawn(inputs, 2 * flows.length, model);
  return {
    pump: bandOf(flows, columns.slice(0, flows.length)),
    loop: bandOf(flows, columns.slice(flows.length)),
  };
}

/** Against the ambient air, in the duty shown. */
export interface AmbientBand {
  readonly charge: Points;
  readonly reservoir: Points;
}

const AMBIENT = 'site.ambient';
/** Cold morning to desert noon, K; what most tables of weather hold (common practice, no source). */
const AMBIENTS = [283.15, 318.15] as const;

/** Where the loop settles on days of one temperature or another, all else as unsure as it is. */
export function ambientBand(side: Side): AmbientBand | null {
  const others = uncertainOf(side.values).filter(({ path }) => path !== AMBIENT);
  if (others.length === 0 || !side.prepared.ok) return null;
  const field = fieldAt(AMBIENT);
  const ends = field.kind === 'quantity' ? ([field.min, field.max] as const) : AMBIENTS;
  const days = spaced(
    Math.max(AMBIENTS[0], ends[0]),
    Math.min(AMBIENTS[1], ends[1]),
    PLACES.ambient,
  );
  const ambient: Uncertain = {
    path: AMBIENT,
    distribution: { kind: 'normal', mean: side.values[AMBIENT]!.si!, sd: 0 },
    ends,
    axis: 0,
  };
  const duty = dutyShown(side);
  const inner = loopModel(side.values, [...others, ambient], (solve) => {
    const { chargeOut, reservoir } = solve(duty);
    return [chargeOut ?? NaN, reservoir];
  });
  const x = new Float64Array(others.length + 1);
  const model: Model = (given) => {
    x.set(given);
    const all = days.map((day) => {
      x[others.length] = day;
      return inner(x) ?? [NaN, NaN];
    });
    return [...all.map((y) => y[0]!), ...all.map((y) => y[1]!)];
  };
  const columns = drawn(others, 2 * days.length, model);
  return {
    charge: bandOf(days, columns.slice(0, days.length)),
    reservoir: bandOf(days, columns.slice(days.length)),
  };
}

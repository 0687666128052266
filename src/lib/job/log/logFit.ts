/** From channels at one pace to what the job keeps of a fit. */
import { filled } from '$lib/log/resample';
import type { Paced, Stretch } from '$lib/log/worker/messages';
import { instrumentShare, type InstrumentErrors } from '$lib/solver/loop/identify/instruments';
import {
  identify,
  type Identified,
  type IdentifyRequest,
} from '$lib/solver/loop/identify/identify';
import { proposals } from '$lib/solver/loop/identify/separate';
import { askLog, type Asked } from '$lib/solver/loop/fromLog/request';
import type { Logged, Sought } from '$lib/solver/loop/fromLog/types';
import type { PreparedLoop } from '$lib/solver/loop/prepare';
import type { DutyId } from '$lib/solver/loop/types';
import type { ParameterName } from '$lib/solver/loop/identify/types';
import type { LogFit } from './logRecord';
import { triedOut } from './logTrial';
import type { Span } from './span';

/** Rows the fit is brought to at most. */
export const FIT_ROWS = 900;
/** Residuals kept of each channel. */
const KEPT = 100;

const DRIVES = [
  'chargeAirIn',
  'ambient',
  'flow',
  'vehicleSpeed',
  'engineSpeed',
  'manifold',
  'airFlow',
  'heat',
] as const satisfies readonly (keyof Logged)[];
const READS = [
  'reservoir',
  'chargeCoolerOut',
  'frontIn',
  'frontOut',
  'chargeAirOut',
] as const satisfies readonly (keyof Logged)[];

export type { Span };

const isIn = (t: number, { from, to }: Stretch) => t >= from && t <= to;

/** What drives the loop is filled across gaps; what was read is not. */
function loggedOf({ t, channels }: Paced): Logged {
  const some = (x: Float64Array | undefined) => x !== undefined && x.some(Number.isFinite);
  const drives = DRIVES.filter((key) => some(channels[key])).map((key) => [
    key,
    filled(channels[key]!, t),
  ]);
  const reads = READS.filter((key) => some(channels[key])).map((key) => [key, channels[key]!]);
  return { t, ...Object.fromEntries([...drives, ...reads]) };
}

/** What is sought beside the conductances, and how sure the instruments are. */
export interface FitWish {
  readonly sought: Sought;
  readonly errors: InstrumentErrors;
}

/**
 * Fit the loop described to the spans.
 * @param onStep - called as the fit goes on
 * @throws as {@link askLog} and `identify`
 */
export function fitLog(
  prepared: PreparedLoop,
  duty: DutyId,
  paced: Paced,
  spans: readonly Span[],
  { sought, errors }: FitWish,
  onStep: () => void = () => {},
): LogFit {
  const logged = loggedOf(paced);
  const { t } = logged;
  const fit = spans.filter(({ use }) => use === 'fit');
  const used = (row: number) => fit.some((span) => isIn(t[row]!, span));
  const asked = askLog(prepared, duty, logged, sought, used);
  const request: IdentifyRequest = {
    ...asked.request,
    leaveOut: (_channel, row) => !used(row),
    cancelled: () => {
      onStep();
      return false;
    },
  };
  const found = identify(request);
  const off = instrumentShare(request, found, errors);
  const shown = (row: number) => spans.some((span) => isIn(t[row]!, span));
  return {
    spans: fit.map(({ from, to }) => ({ from, to })),
    model: {
      charge: logged.heat ? 'heat' : 'UA',
      flow: asked.means.flow === null ? 'sought' : 'logged',
      speed: asked.means.speed === null ? 'of the duty' : 'logged',
    },
    step: t.length > 1 ? t[1]! - t[0]! : 0,
    rows: found.channels.reduce((sum, { rows }) => sum + rows.length, 0),
    ...readings(found, asked, off, prepared.loop.duties[duty].vehicleSpeed),
    weak: found.separability.weak.map(({ parameters, deviation }) => ({
      parameters: [...parameters],
      deviation: orNull(deviation),
    })),
    proposals: proposals(request, found)
      .slice(0, 3)
      .map(({ says, worst }) => ({ says, worst: orNull(worst) })),
    heldOut: triedOut(request, found, spans),
    residuals: found.channels.map(({ channel, residuals }) =>
      thinned(channel, t, residuals, shown),
    ),
    notes: found.notes
      .filter(({ code }) => code !== 'fit-not-separated')
      .map(({ message }) => message),
  };
}

const orNull = (x: number) => (Number.isFinite(x) ? x : null);

/** Half of an interval with the instruments' part in it: both independent, so by squares. */
const withInstruments = (half: number, off: number) => Math.hypot(half, off);

function readings(
  found: Identified,
  { request, means, perFlow }: Asked,
  off: readonly number[],
  speed: number,
) {
  const { parameters: p, estimates } = found;
  const { liquidTemperature, ambient, frontAirRate } = means;
  return {
    estimates: estimates.parameters.map(({ name, value, deviation, low, high }, i) => ({
      name,
      value,
      deviation: orNull(deviation),
      low: orNull(value - withInstruments(value - low, off[i]!)),
      high: orNull(value + withInstruments(high - value, off[i]!)),
      instruments: orNull(off[i]!),
      entered: name.endsWith('Start') ? null : request.from[name as ParameterName],
    })),
    at: {
      liquidTemperature,
      ambient,
      frontAirRate,
      speed: means.speed ?? speed,
      flow: means.flow ?? p.capacityRate / perFlow,
      chargeAirFlow: means.chargeAirFlow,
    },
    widened: found.widened,
    channels: found.channels.map(({ channel, rms, noise, rows }) => ({
      channel,
      rms,
      noise,
      count: rows.length,
    })),
  };
}

/** Largest of each share of the rows, so that what stands out stays. */
function thinned(
  channel: string,
  t: Float64Array,
  residuals: Float64Array,
  shown: (row: number) => boolean,
) {
  const rows: number[] = [];
  residuals.forEach((r, row) => Number.isFinite(r) && shown(row) && rows.push(row));
  const share = Math.max(1, rows.length / KEPT);
  const kept: number[] = [];
  for (let i = 0; i < rows.length; i += share) {
    const some = rows.slice(Math.floor(i), Math.max(Math.floor(i) + 1, Math.floor(i + share)));
    kept.push(some.reduce((a, b) => (Math.abs(residuals[b]!) > Math.abs(residuals[a]!) ? b : a)));
  }
  return {
    channel,
    t: kept.map((row) => Number(t[row]!.toFixed(2))),
    r: kept.map((row) => Number(residuals[row]!.toFixed(4))),
  };
}

/** From channels at one pace to what the job keeps of a fit. */
import { filled } from '$lib/log/resample';
import type { Paced, Stretch } from '$lib/log/worker/messages';
import { heldOut, type HeldOut } from '$lib/solver/loop/identify/heldOut';
import {
  identify,
  type Identified,
  type IdentifyRequest,
} from '$lib/solver/loop/identify/identify';
import { proposals } from '$lib/solver/loop/identify/separate';
import { askLog, type Asked } from '$lib/solver/loop/fromLog/request';
import type { Logged, MassesSought } from '$lib/solver/loop/fromLog/types';
import type { PreparedLoop } from '$lib/solver/loop/prepare';
import type { DutyId } from '$lib/solver/loop/types';
import type { ParameterName } from '$lib/solver/loop/identify/types';
import type { LogFit } from './logRecord';

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

export interface Span extends Stretch {
  readonly use: 'fit' | 'hold-out';
}

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
  masses: MassesSought,
  onStep: () => void = () => {},
): LogFit {
  const logged = loggedOf(paced);
  const { t } = logged;
  const fit = spans.filter(({ use }) => use === 'fit');
  const hold = spans.filter(({ use }) => use === 'hold-out');
  const used = (row: number) => fit.some((span) => isIn(t[row]!, span));
  const asked = askLog(prepared, duty, logged, masses, used);
  const held = hold[0];
  const request: IdentifyRequest = {
    ...asked.request,
    leaveOut: (_channel, row) => !(used(row) || (held && isIn(t[row]!, held))),
    cancelled: () => {
      onStep();
      return false;
    },
  };
  const check = held ? heldOut(request, held) : null;
  const found = check?.found ?? identify(request);
  return {
    spans: fit.map(({ from, to }) => ({ from, to })),
    model: {
      charge: logged.heat ? 'heat' : 'UA',
      flow: asked.means.flow === null ? 'sought' : 'logged',
      speed: asked.means.speed === null ? 'of the duty' : 'logged',
    },
    step: t.length > 1 ? t[1]! - t[0]! : 0,
    rows: found.channels.reduce((sum, { rows }) => sum + rows.length, 0),
    ...readings(found, asked, prepared.loop.duties[duty].vehicleSpeed),
    weak: found.separability.weak.map(({ parameters, deviation }) => ({
      parameters: [...parameters],
      deviation: orNull(deviation),
    })),
    proposals: proposals(request, found)
      .slice(0, 3)
      .map(({ says, worst }) => ({ says, worst: orNull(worst) })),
    heldOut: check && held ? heldOf(check, held) : null,
    residuals: found.channels.map(({ channel, residuals }) =>
      thinned(channel, t, residuals, (row) => used(row) || (!!held && isIn(t[row]!, held))),
    ),
    notes: found.notes
      .filter(({ code }) => code !== 'fit-not-separated')
      .map(({ message }) => message),
  };
}

const orNull = (x: number) => (Number.isFinite(x) ? x : null);

function readings(found: Identified, { request, means, perFlow }: Asked, speed: number) {
  const { parameters: p, estimates } = found;
  const { liquidTemperature, ambient, frontAirRate } = means;
  return {
    estimates: estimates.parameters.map(({ name, value, deviation, low, high }) => ({
      name,
      value,
      deviation: orNull(deviation),
      low: orNull(low),
      high: orNull(high),
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

const heldOf = (check: HeldOut, { from, to }: Stretch) => ({
  from,
  to,
  overSeen: check.overSeen,
  overNoise: check.overNoise,
  channels: check.channels
    .filter(({ count }) => count > 0)
    .map(({ channel, unseen, noise, count }) => ({ channel, unseen, noise, count })),
});

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

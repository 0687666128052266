/** What instruments that read a little off, all the time, do to what a fit finds. */
import { covarianceOf } from '../../fit/estimates';
import { ringProblem, type Noise } from './problem';
import type { Identified, IdentifyRequest } from './identify';
import type { ChannelName, Channels, Drive } from './types';

/** ± of each instrument, the same all through the log. */
export interface InstrumentErrors {
  /** Of each temperature, K. */
  readonly temperature: number;
  /** Of the flow, a share of its reading. */
  readonly flow: number;
}

/**
 * How far each parameter may be off, with every instrument off by its own ± and independently of the
 * others: the shifts (JᵀJ)⁻¹ Jᵀ Δr that each brings, added by squares. Readings that are off alike cannot
 * be told from another loop, so no length of log makes this smaller.
 *
 * @returns SI, in the order of `free`, at the confidence of the ± given
 * @source GUM (JCGM 100:2008), 5.1.2, with the linear response of least squares
 */
export function instrumentShare(
  request: IdentifyRequest,
  found: Identified,
  { temperature, flow }: InstrumentErrors,
): readonly number[] {
  const { free, fit, parameters } = found;
  const n = free.length;
  const m = fit.residuals.length;
  const { covariance: H } = covarianceOf(fit.jacobian, n, 1);
  const noise: Noise = Object.fromEntries(found.channels.map((c) => [c.channel, c.noise]));
  const residuals = (channels: Channels, drive: Drive): Float64Array => {
    const known = { ...request, channels, drive, noise, used: found.channels, known: parameters };
    const out = new Float64Array(m);
    ringProblem(known).residuals(fit.parameters, out);
    return out;
  };
  const { channels, drive } = request;
  const at = residuals(channels, drive);
  const off = (column: Float64Array | undefined) => column?.map((T) => T + temperature);
  const cases: readonly (readonly [Channels, Drive])[] = [
    ...found.channels
      .map(({ channel }) => offChannel(channels, channel, off))
      .map((moved) => [moved, drive] as const),
    [channels, { ...drive, ambient: off(drive.ambient)! }],
    [channels, { ...drive, chargeAirIn: off(drive.chargeAirIn) }],
    [channels, { ...drive, liquidRate: drive.liquidRate?.map((C) => C * (1 + flow)) }],
  ];
  const squares = new Float64Array(n);
  for (const [read, driven] of cases) {
    const moved = residuals(read, driven);
    const g = new Float64Array(n);
    for (let j = 0; j < n; j++)
      for (let i = 0; i < m; i++) g[j] = g[j]! + fit.jacobian[j * m + i]! * (moved[i]! - at[i]!);
    for (let j = 0; j < n; j++) {
      let shift = 0;
      for (let i = 0; i < n; i++) shift += H[j * n + i]! * g[i]!;
      squares[j] = squares[j]! + shift * shift;
    }
  }
  return Array.from(squares, Math.sqrt);
}

const offChannel = (
  channels: Channels,
  channel: ChannelName,
  off: (column: Float64Array | undefined) => Float64Array | undefined,
): Channels => ({ ...channels, [channel]: off(channels[channel]) });

/** A log as a least-squares problem: residuals of every reading over its noise. */
import type { LeastSquaresProblem } from '../../fit/types';
import { simulator, type Prediction } from './simulate';
import type { ChannelName, Channels, Drive, ParameterName, Parameters, LogModel } from './types';

export type Noise = Readonly<Partial<Record<ChannelName, number>>>;

/** Where each residual comes from: rows used of each channel, one channel after the other. */
export interface Used {
  readonly channel: ChannelName;
  readonly rows: Int32Array;
}

export interface RingProblem extends LeastSquaresProblem {
  readonly names: readonly ParameterName[];
  readonly used: readonly Used[];
  /** All parameters with those sought put in. */
  whole(p: ArrayLike<number>): Parameters;
  predict(p: Parameters): Prediction;
}

/** Rows of each channel that hold a number and are not left out. */
export function usedRows(
  channels: Channels,
  leaveOut?: (channel: ChannelName, row: number) => boolean,
): Used[] {
  return (Object.keys(channels) as ChannelName[]).map((channel) => {
    const values = channels[channel]!;
    const rows: number[] = [];
    values.forEach((x, k) => {
      if (Number.isFinite(x) && !leaveOut?.(channel, k)) rows.push(k);
    });
    return { channel, rows: Int32Array.from(rows) };
  });
}

export function ringProblem({
  model,
  drive,
  channels,
  used,
  noise,
  known,
  free,
}: {
  readonly model: LogModel;
  readonly drive: Drive;
  readonly channels: Channels;
  readonly used: readonly Used[];
  readonly noise: Noise;
  readonly known: Parameters;
  readonly free: readonly ParameterName[];
}): RingProblem {
  const predict = simulator(model, drive);
  const whole = (p: ArrayLike<number>): Parameters => {
    const all: Record<ParameterName, number> = { ...known };
    free.forEach((name, j) => (all[name] = p[j]!));
    return all;
  };
  return {
    names: free,
    count: used.reduce((sum, { rows }) => sum + rows.length, 0),
    used,
    whole,
    predict,
    residuals(p, out) {
      const prediction = predict(whole(p));
      let i = 0;
      for (const { channel, rows } of used) {
        const predicted = prediction[channel];
        const read = channels[channel]!;
        const sigma = noise[channel]!;
        for (const row of rows) out[i++] = (predicted[row]! - read[row]!) / sigma;
      }
    },
  };
}

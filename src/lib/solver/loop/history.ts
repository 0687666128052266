/** A history of the loop as points for a plot. */
import type { WarmUpHistory } from './types';

type Column = Exclude<keyof WarmUpHistory, 't'>;

/** One column over time, (s, SI). */
export const points = ({ t, ...columns }: WarmUpHistory, column: Column): [number, number][] =>
  Array.from(t, (time, i) => [time, columns[column][i]!]);

/** Temperature of the reservoir over time. */
export const reservoirPoints = (history: WarmUpHistory) => points(history, 'reservoir');

/** A column at time `t`, straight between its points. At an edge of two segments: as the first ends. */
export function readAt<C extends Column>(
  history: Pick<WarmUpHistory, 't' | C>,
  column: C,
  t: number,
): number {
  const times = history.t;
  const values: Float64Array = history[column];
  const i = times.findIndex((time) => time >= t);
  if (i < 0) return values.at(-1)!;
  if (i === 0) return values[0]!;
  const share = (t - times[i - 1]!) / (times[i]! - times[i - 1]!);
  return values[i - 1]! + share * (values[i]! - values[i - 1]!);
}

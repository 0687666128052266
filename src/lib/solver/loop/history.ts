/** A history of the loop as points for a plot. */
import type { WarmUpHistory } from './types';

type Column = Exclude<keyof WarmUpHistory, 't'>;

/** One column over time, (s, SI). */
export const points = ({ t, ...columns }: WarmUpHistory, column: Column): [number, number][] =>
  Array.from(t, (time, i) => [time, columns[column][i]!]);

/** Temperature of the reservoir over time. */
export const reservoirPoints = (history: WarmUpHistory) => points(history, 'reservoir');

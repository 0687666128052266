/** A drive with events as data for plots. */
import type { EventHistory, EventSolution, LoopEvent } from './types';

type Column = Exclude<keyof EventHistory, 't'>;

/** One column over time, (s, SI); both sides of every jump are there. */
export const eventPoints = ({ t, ...columns }: EventHistory, column: Column): [number, number][] =>
  Array.from(t, (time, i) => [time, columns[column][i]!]);

/** A stretch of time, s. */
export interface Band {
  readonly from: number;
  readonly until: number;
}

/** When a switch was at 1 (or at 0): bands to lay behind a plot. */
export function bands(
  { t, ...columns }: EventHistory,
  column: 'pumpOn' | 'fansOn',
  at: 0 | 1 = 1,
): Band[] {
  const found: { from: number; until: number }[] = [];
  let open = false;
  for (let i = 0; i < t.length; i++) {
    const here = columns[column][i] === at;
    if (here && !open) found.push({ from: t[i]!, until: t[i]! });
    if (here) found.at(-1)!.until = t[i]!;
    open = here;
  }
  return found.filter(({ from, until }) => until > from);
}

/** What happened, without the edges of the schedule. */
export const happenings = ({ events }: Pick<EventSolution, 'events'>): readonly LoopEvent[] =>
  events.filter(({ kind }) => kind !== 'segment');

/** How hot the charge got in each time that no liquid moved, (s, K): the teeth of a cycling breaker. */
export function teeth(history: EventHistory): [number, number][] {
  const peaks: [number, number][] = [];
  let standing = false;
  history.flow.forEach((flow, i) => {
    const value = history.chargeOut[i]!;
    if (flow === 0) {
      if (!standing || value > peaks.at(-1)![1]) {
        if (standing) peaks.pop();
        peaks.push([history.t[i]!, value]);
      }
    }
    standing = flow === 0;
  });
  return peaks;
}

/** A column at time `t`, straight between its points; at a jump, as it was before. */
export function eventValueAt({ t: times, ...columns }: EventHistory, column: Column, t: number) {
  const values = columns[column];
  const i = times.findIndex((time) => time >= t);
  if (i < 0) return values.at(-1)!;
  if (i === 0) return values[0]!;
  const share = (t - times[i - 1]!) / (times[i]! - times[i - 1]!);
  return values[i - 1]! + share * (values[i]! - values[i - 1]!);
}

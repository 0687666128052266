/** Moving and stretching the view of a time axis. */
import type { TimeStretch } from './types';

/** A closer view than this shows nothing more, s. */
const CLOSEST = 0.5;

/** `factor` below 1 zooms in; `about` stays where it is. The whole is never left. */
export function zoomed(
  { from, to }: TimeStretch,
  whole: number,
  factor: number,
  about = 0.5 * (from + to),
): TimeStretch {
  const length = Math.min(whole, Math.max(CLOSEST, (to - from) * factor));
  const share = (about - from) / (to - from || 1);
  return held(about - share * length, length, whole);
}

/** Move by a share of the view. */
export const moved = ({ from, to }: TimeStretch, whole: number, share: number): TimeStretch =>
  held(from + share * (to - from), to - from, whole);

function held(from: number, length: number, whole: number): TimeStretch {
  const start = Math.min(Math.max(0, from), Math.max(0, whole - length));
  return { from: start, to: start + length };
}

/** The part of an input's range worth drawing: the present value, the one found, and what lies around. */
import type { Inversion } from './inversion';
import type { TriedInput } from './invertInputs';

/** Room beyond what matters, as a factor of it, or as a share of the range where it may pass zero. */
const BEYOND = 1.6;
const SHARE = 0.12;
/** Without a value found: this far round the present one. */
const ALONE = 3;

export interface Drawn {
  readonly answer: Inversion;
  readonly input: TriedInput;
}

/** Ends of the stretch drawn, SI; one for all sides. */
export function windowOf(sides: readonly Drawn[]): readonly [number, number] {
  const spans = sides.map(spanOf);
  return [Math.min(...spans.map(([low]) => low)), Math.max(...spans.map(([, high]) => high))];
}

function spanOf({ answer, input }: Drawn): readonly [number, number] {
  const { range, only, present, quantity } = input;
  if (only) return range;
  const [low, high] = range;
  const held = (x: number) => Math.min(high, Math.max(low, x));
  const matter = [present, ...(answer.value === null ? [] : [answer.value])];
  const [least, most] = [Math.min(...matter), Math.max(...matter)];
  if (low < 0 || quantity === 'temperature' || quantity === 'percent' || !(most > 0)) {
    const room = SHARE * (high - low);
    return [held(least - room), held(most + room)];
  }
  const factor = answer.value === null ? ALONE : BEYOND;
  return [held(least / factor), held(most * factor)];
}

/** Looks inside the window, straight to its ends; a gap is a NaN between two points. */
export function pointsIn(
  { looks }: Inversion,
  [low, high]: readonly [number, number],
): (readonly [number, number])[] {
  return looks.flatMap(({ x, y }, i) => {
    if (x >= low && x <= high) return [[x, y] as const];
    const next = looks[i + 1];
    const before = looks[i - 1];
    const ends = [];
    if (x < low && next && next.x > low) ends.push([low, along(looks[i]!, next, low)] as const);
    if (x > high && before && before.x < high)
      ends.push([high, along(before, looks[i]!, high)] as const);
    return ends;
  });
}

type Look = Inversion['looks'][number];
const along = (p: Look, q: Look, x: number) => p.y + ((q.y - p.y) * (x - p.x)) / (q.x - p.x);

/** What of a stretch of the input lies in the window; null: nothing. */
export function clipped(
  from: number,
  to: number,
  [low, high]: readonly [number, number],
): readonly [number, number] | null {
  const ends = [Math.max(from, low), Math.min(to, high)] as const;
  return ends[1] > ends[0] ? ends : null;
}

/** Which of the values that were found is the one asked for. */
import type { Crossing, Stretch, Survey } from '$lib/solver/numerics/survey';
import type { Gap, Inversion } from './inversion';
import type { TriedInput } from './invertInputs';
import { byFactors } from './invertPlaces';
import type { Gone, Tried } from './invertResults';

/** Nearest by factors where the input is walked so. */
function distance({ range, present }: TriedInput): (x: number) => number {
  return present > 0 && byFactors(range)
    ? (x) => Math.abs(Math.log(x / present))
    : (x) => Math.abs(x - present);
}

type Answer = Pick<Inversion, 'verdict' | 'value' | 'end'>;

export function answerOf(
  input: TriedInput,
  present: number | null,
  { looks, shape }: Survey,
  found: readonly Crossing[],
  meets: readonly Stretch[],
  wanted: Inversion['wanted'],
): Answer {
  const none: Answer = { verdict: 'none', value: null, end: null };
  if (shape === 'none') return { ...none, verdict: 'unsolved' };
  const far = distance(input);
  const nearest = <T>(all: readonly T[], x: (one: T) => number): T | undefined =>
    all.toSorted((a, b) => far(x(a)) - far(x(b)))[0];
  if (wanted === 'on') {
    const best = nearest(
      found.filter(({ jump }) => !jump),
      ({ x }) => x,
    );
    return best ? { verdict: 'found', value: best.x, end: 'crossing' } : none;
  }
  if (meets.length === 0) return none;
  const isIn = ({ from, to }: Stretch) => input.present >= from && input.present <= to;
  const own = present === null ? undefined : meets.find(isIn);
  const gap = (s: Stretch) => Math.min(far(s.from), far(s.to));
  const stretch = own ?? meets.toSorted((a, b) => gap(a) - gap(b))[0]!;
  const ends = (
    [
      [stretch.from, stretch.fromEnd],
      [stretch.to, stretch.toEnd],
    ] as const
  ).flatMap(([x, end]) => (end === 'range' ? [] : [{ x, end }]));
  // Of a loop that meets the target one asks what may be given up, not where the part gets too good to be.
  const given = ({ x, end }: (typeof ends)[number]) => {
    const y = looks.find((look) => look.x === x)?.y;
    return end !== 'edge' || y === undefined || (wanted === 'below' ? y > present! : y < present!);
  };
  const end = nearest(own ? ends.filter(given) : ends, ({ x }) => x);
  if (!end) return { verdict: 'any', value: null, end: null };
  return {
    verdict: own ? 'already' : 'found',
    value: end.x,
    end: input.only ? 'entry' : end.end,
  };
}

/** Stretches without a result, each with the reason met first in it. */
export function gapsOf({ looks }: Survey, at: (x: number) => Tried): Gap[] {
  const gaps: { from: number; to: number; gone: Gone }[] = [];
  looks.forEach(({ x, y }, i) => {
    if (!Number.isNaN(y)) return;
    const gone = at(x).gone!;
    const last = gaps.at(-1);
    const before = looks[i - 1];
    const next = looks[i + 1];
    const to = next && !Number.isNaN(next.y) ? next.x : x;
    if (last && before && Number.isNaN(before.y) && alike(last.gone, gone)) last.to = to;
    else gaps.push({ from: before && !Number.isNaN(before.y) ? before.x : x, to, gone });
  });
  return gaps;
}

const alike = (a: Gone, b: Gone) => a.code === b.code && a.path === b.path;

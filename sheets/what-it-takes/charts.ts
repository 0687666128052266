/** The result against the input over its range, and the bars beside it. */
import { clipped, pointsIn, windowOf } from '$lib/job/invert/invertWindow';
import type { Chart, Curve, Dots, Spot, Stretch } from '$lib/kit';
import { marks, type BothBands } from '../bands/marks';
import type { Study } from './study';
import { goneWords, RUNG } from './words';

type SideName = 'found' | 'candidate';
interface Drawn {
  readonly side: SideName;
  readonly study: Study;
}

const LABEL: Readonly<Record<SideName, string>> = { found: 'as found', candidate: 'candidate' };

const drawn = (found: Study, candidate: Study | null): Drawn[] => [
  { side: 'found', study: found },
  ...(candidate ? [{ side: 'candidate' as const, study: candidate }] : []),
];

export function resultChart(found: Study, candidate: Study | null, bands: BothBands = []): Chart {
  const sides = drawn(found, candidate);
  const view = windowOf(sides.map(({ study }) => study));
  const { input, kind } = found;
  const one = sides.length === 1;
  return {
    x: { name: input.name, quantity: input.quantity, domain: view },
    y: { name: kind.name, quantity: kind.quantity },
    curves: sides.map(({ side, study }): Curve => ({
      id: side,
      side,
      label: one ? '' : LABEL[side],
      points: pointsIn(study.answer, view),
      ...(input.only && { thin: true }),
    })),
    bands: marks(bands, 'result'),
    dots: input.only
      ? sides.map(({ side, study }): Dots => ({
          side,
          label: `${LABEL[side]}, sizes`,
          points: pointsIn(study.answer, view).filter(([, y]) => !Number.isNaN(y)),
        }))
      : [],
    spots: sides.flatMap(({ side, study }) => spotsOf(side, study, view)),
    limits: targets(sides),
    stretches: gaps(sides, view),
  };
}

function spotsOf(side: SideName, { answer }: Study, view: readonly [number, number]): Spot[] {
  const { present, at, value } = answer;
  const inside = (x: number) => x >= view[0] && x <= view[1];
  const spots: Spot[] = [];
  if (present.tried.y !== null && inside(present.x))
    spots.push({ side, label: 'now', x: present.x, y: present.tried.y });
  if (value !== null && at && inside(at.x)) spots.push({ side, label: 'value found', ...at });
  for (const { x, jump } of value === null ? [] : answer.crossings) {
    if (!jump && x !== value && inside(x) && answer.level !== null)
      spots.push({ side, label: '', x, y: answer.level, open: true });
  }
  return spots;
}

/** One line where both sides have the same target. */
function targets(sides: readonly Drawn[]): NonNullable<Chart['limits']> {
  const all = sides.flatMap(({ side, study: { answer } }) =>
    answer.level === null ? [] : [{ side, at: answer.level }],
  );
  const same = all.every(({ at }) => at === all[0]!.at);
  return (same ? all.slice(0, 1) : all).map(({ side, at }) => ({
    axis: 'y' as const,
    at,
    label: same ? 'target' : `target, ${LABEL[side]}`,
    level: 'watch' as const,
  }));
}

/** Where nothing can be solved; on the candidate only what the loop as found does not have too. */
function gaps(sides: readonly Drawn[], view: readonly [number, number]): Stretch[] {
  const seen = new Set<string>();
  const found: (readonly [number, number])[] = [];
  return sides.flatMap(({ side, study: { answer } }) =>
    answer.gaps.flatMap(({ from, to, gone }): Stretch[] => {
      const ends = clipped(from, to, view);
      const words = goneWords(gone);
      const key = `${words} ${ends?.join(' ')}`;
      if (!ends || seen.has(key)) return [];
      seen.add(key);
      const over = found.some(([a, b]) => a < ends[1] && b > ends[0]);
      found.push(ends);
      // Where two overlap, the end of its curve tells the other.
      const own = sides.length > 1 ? `${LABEL[side]}: ${SHORT[gone.code]}` : SHORT[gone.code];
      const label = over ? '' : own;
      return [{ axis: 'x', from: ends[0], to: ends[1], label, kind: 'outside' }];
    }),
  );
}

/** Few words for a hatched stretch; the findings say the rest. */
const SHORT = {
  boils: 'boils',
  freezes: 'freezes',
  'no-flow': 'no flow',
  'no-air': 'air not known',
  'pump-stopped': 'pump stopped',
  'not-back': 'not back',
  refused: 'no such part',
} as const;

/** From ambient to the result, step by step. */
export const rungRows = (found: Study, candidate: Study | null) =>
  found.answer.rungs.map(({ id, by }) => ({
    id,
    label: RUNG[id].name,
    found: Math.max(0, by),
    ...(candidate && {
      candidate: Math.max(0, candidate.answer.rungs.find((rung) => rung.id === id)?.by ?? 0),
    }),
  }));

/** Rows of each side that are shown. */
const MOST = 4;

/** What a tenth of another input would be worth. */
export function rivalRows(found: Study, candidate: Study | null) {
  const all = [found, candidate].flatMap((study) => study?.answer.rivals.slice(0, MOST) ?? []);
  const ids = [...new Set(all.map(({ id }) => id))];
  const of = (study: Study, id: string) =>
    study.answer.rivals.find((rival) => rival.id === id)?.gain ?? 0;
  return ids.map((id) => {
    const { name, change } = all.find((rival) => rival.id === id)!;
    return {
      id,
      label: `${name}, ${change}`,
      found: of(found, id),
      ...(candidate && { candidate: of(candidate, id) }),
    };
  });
}

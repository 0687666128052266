/** Plots and bars of how sure. */
import type { Side } from '$lib/job/evaluate';
import type { Doubts, Studied } from '$lib/job/sureness';
import { worded, type Chart, type UnitSystem } from '$lib/kit';
import { cumulative } from '$lib/solver/uncertainty/propagate';
import { studyOf, SUBJECT } from './study';
import { wordsOf } from './words';

/** Share of the loops that the ± allow below each value; the limit as a line. */
export function chanceChart(found: Side, candidate: Side | null, id: Studied): Chart {
  const { quantity, limit } = SUBJECT[id];
  const sides = [
    { side: 'found' as const, of: found },
    ...(candidate ? [{ side: 'candidate' as const, of: candidate }] : []),
  ].flatMap(({ side, of }) => {
    const study = studyOf(of);
    return study ? [{ side, points: cumulative(study.draws[id]) }] : [];
  });
  return {
    x: { name: 'Temperature', quantity },
    y: { name: 'Share of the loops below', quantity: 'percent', zero: true },
    curves: sides.map(({ side, points }) => ({
      id: side,
      side,
      label: side === 'found' ? 'as found' : 'candidate',
      points,
    })),
    limits: limit
      ? [{ axis: 'x', at: found.limits[limit], label: 'limit', level: 'watch' as const }]
      : [],
  };
}

/** Inputs shown; the rest is little. */
const MOST = 8;

/** Shares of the variance, greatest first; both sides beside one another, errors in words. */
export function shareRows(
  found: Doubts | null,
  candidate: Doubts | null,
  which: 'first' | 'total',
  both: boolean,
  system: UnitSystem,
) {
  const of = (doubts: Doubts | null, path: string) =>
    doubts?.shares?.find((d) => d.path === path) ?? null;
  const all = [found, candidate].flatMap((doubts) => doubts?.shares ?? []);
  const error = which === 'first' ? 'firstError' : 'totalError';
  const greatest = (path: string) =>
    Math.max(...all.filter((d) => d.path === path).map(({ total }) => total));
  return [...new Set(all.map(({ path }) => path))]
    .sort((a, b) => greatest(b) - greatest(a))
    .slice(0, MOST)
    .map((path) => {
      const [one, other] = [of(found, path), of(candidate, path)];
      const pm = [one, other].flatMap((d) => (d ? [worded(2 * d[error], 'percent', system)] : []));
      // An estimate of next to nothing may fall below nothing; a bar cannot.
      return {
        id: path,
        label: wordsOf(path),
        found: Math.max(0, one?.[which] ?? 0),
        ...(both && { candidate: Math.max(0, other?.[which] ?? 0) }),
        remark: `± ${pm.join(' and ')}`,
      };
    });
}

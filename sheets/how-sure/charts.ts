/** Plots and bars of how sure. */
import type { Side } from '$lib/job/evaluate';
import { DOUBTED, type Doubts, type Studied } from '$lib/job/sure/sureness';
import type { DutyId } from '$lib/solver/loop/types';
import type { Chart, UnitSystem } from '$lib/kit';
import { decimalsOf } from '$lib/kit/format';
import { marks, type BothBands } from '../bands/marks';
import { cumulative } from '$lib/solver/uncertainty/propagate';
import { studyOf, SUBJECT } from './study';
import { roughly, shownShare, wordsOf } from './words';

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

/** The result of the duty shown on days of one temperature or another: middle of the band, and the band. */
export function ambientChart(
  found: Side,
  candidate: Side | null,
  duty: DutyId,
  bands: BothBands,
): Chart {
  const id = DOUBTED[duty];
  const { limit } = SUBJECT[id];
  const column = id === 'reservoir-traffic' ? 'reservoir' : 'charge';
  const sides = [
    { side: 'found' as const, points: bands[0]?.of[column] ?? [], label: 'as found' },
    ...(candidate
      ? [{ side: 'candidate' as const, points: bands[1]?.of[column] ?? [], label: 'candidate' }]
      : []),
  ].filter(({ points }) => points.length > 1);
  return {
    x: { name: 'Ambient air', quantity: 'temperature' },
    y: { name: SUBJECT[id].name, quantity: 'temperature' },
    curves: sides.map(({ side, points, label }) => ({
      id: side,
      side,
      label,
      points: points.map(([x, , , middle]) => [x, middle] as const),
    })),
    bands: marks(bands, column),
    limits: limit ? [{ axis: 'y', at: found.limits[limit], label: 'limit', level: 'watch' }] : [],
  };
}

/** Inputs shown at most, and the share from which one is: the rest is little. */
const MOST = 8;
const LITTLE = 0.005;

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
    .filter((path, i) => i === 0 || greatest(path) > LITTLE)
    .slice(0, MOST)
    .map((path) => {
      const [one, other] = [of(found, path), of(candidate, path)];
      const pm = [one, other].flatMap((d) => (d ? [roughly(2 * d[error], system)] : []));
      return {
        id: path,
        label: wordsOf(path),
        found: shownShare(one?.[which] ?? 0),
        ...(both && { candidate: shownShare(other?.[which] ?? 0) }),
        remark: `± ${pm.join(' and ')}`,
        // A ± in whole per cents leaves the share no decimal.
        decimals: Math.min(1, ...pm.map((text) => decimalsOf(text.split('\u00a0')[0]!))),
      };
    });
}

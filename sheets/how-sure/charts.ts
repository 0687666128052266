/** Plots and bars of how sure. */
import type { Side } from '$lib/job/evaluate';
import { FIELD_GROUPS, fieldAt } from '$lib/job/fields';
import type { Studied, Sureness } from '$lib/job/sureness';
import type { Chart } from '$lib/kit';
import { cumulative } from '$lib/solver/uncertainty/propagate';
import { studyOf, SUBJECT } from './study';

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

/** Shares of the variance, greatest first; both sides beside one another. */
export function shareRows(found: Sureness | null, candidate: Sureness | null, both: boolean) {
  const of = (study: Sureness | null, path: string) =>
    study?.doubts?.find((d) => d.path === path)?.share ?? 0;
  const paths = [
    ...new Set([...(found?.doubts ?? []), ...(candidate?.doubts ?? [])].map(({ path }) => path)),
  ];
  return paths
    .map((path) => ({ path, found: of(found, path), candidate: of(candidate, path) }))
    .sort((a, b) => Math.max(b.found, b.candidate) - Math.max(a.found, a.candidate))
    .slice(0, MOST)
    .map(({ path, found: value, candidate: other }) => ({
      id: path,
      label: wordsOf(path),
      found: value,
      ...(both && { candidate: other }),
    }));
}

function wordsOf(path: string): string {
  const field = fieldAt(path);
  const home = FIELD_GROUPS.find((group) => group.fields.includes(field));
  return home && !field.label.includes(home.title) ? `${home.title}: ${field.label}` : field.label;
}

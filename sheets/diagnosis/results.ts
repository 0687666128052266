/** Results of the diagnosis: the leading cause, how bad, how sure, what to measure next. */
import type { Result } from '../types';
import type { Study } from './study';
import { causeName, readingName } from './words';

/** The same rows where nothing was read. */
export const noResults = (absent: string): Result[] =>
  (
    [
      ['leading', 'Likeliest cause', 'P_1', 'percent'],
      ['severity', 'How bad', 'x', 'percent'],
      ['none-of-these', 'None of the known faults, or two at once', 'P_0', 'percent'],
      ['set-size', 'Causes that make up nine chances in ten', 'n_{90}', 'count'],
      ['next-doubt', 'Doubt that the next reading removes', 'I', 'percent'],
    ] as const
  ).map(([id, name, symbol, quantity]) => ({ id, name, symbol, value: null, absent, quantity }));

export function results({ diagnosis, next }: Study): Result[] {
  const [first] = diagnosis.causes;
  const unknown = diagnosis.causes.find((c) => !c.fault)!;
  const severity = first!.fault?.severity;
  const best = next[0];
  return [
    {
      id: 'leading',
      name: `Likeliest: ${causeName(first!)}`,
      symbol: 'P_1',
      value: first!.probability,
      quantity: 'percent',
    },
    {
      id: 'severity',
      name: severity ? `How bad: ${severity.name}` : 'How bad',
      symbol: 'x',
      value: first!.severity?.mean ?? null,
      absent: 'it has no degrees',
      quantity: severity?.quantity ?? 'percent',
    },
    {
      id: 'none-of-these',
      name: 'None of the known faults, or two at once',
      symbol: 'P_0',
      value: unknown.probability,
      quantity: 'percent',
    },
    {
      id: 'set-size',
      name: 'Causes that make up nine chances in ten',
      symbol: 'n_{90}',
      value: diagnosis.set.length,
      quantity: 'count',
    },
    {
      id: 'next-doubt',
      name: best
        ? `Doubt that the next reading removes: ${readingName(best)}`
        : 'Doubt that the next reading removes',
      symbol: 'I',
      value: best?.doubt ?? null,
      absent: 'nothing is left that would tell the causes apart',
      quantity: 'percent',
    },
  ];
}

/** Results: the value found, the present one, what both give. */
import { overPresent } from '$lib/solver/loop/targetFormulas';
import type { Result } from '../types';
import type { Study } from './study';

const ABSENT = {
  none: 'no value can',
  any: 'any value does',
  flat: 'it does nothing here',
  unsolved: 'not solved',
} as const;

/** Why there is no value; for the loop that meets its target whatever the input. */
const absentOf = ({ answer: { verdict } }: Study): string =>
  verdict === 'found' || verdict === 'already' ? '' : ABSENT[verdict];

/** A target is neither better nor worse. */
const withoutBetter = ({ better: _, ...rest }: Result): Result => rest;

export function results(study: Study): Result[] {
  const { answer, input, kind } = study;
  const { present, value, best, level } = answer;
  const absent = absentOf(study);
  const result = (id: string, name: string, y: number | null, missing = absent): Result => ({
    id,
    name,
    symbol: kind.symbol,
    value: y,
    absent: missing || 'not solved',
    quantity: kind.quantity,
    differenceQuantity: kind.difference,
    better: kind.better,
  });
  return [
    {
      id: 'value',
      name: answer.verdict === 'already' ? `May go to: ${input.name}` : input.name,
      symbol: 'x',
      value,
      absent,
      quantity: input.quantity,
    },
    {
      id: 'present',
      name: `Now: ${input.name}`,
      symbol: 'x_0',
      value: present.x,
      quantity: input.quantity,
    },
    ...(input.quantity === 'temperature'
      ? []
      : [
          {
            id: 'ratio',
            name: 'Value found over the present one',
            symbol: 'k',
            value:
              value === null || !(present.x > 0)
                ? null
                : overPresent(input.quantity).value({ x: value, x_0: present.x }),
            absent: absent || 'the present one is zero',
            quantity: 'ratio' as const,
          },
        ]),
    result('result-now', `${kind.name}, now`, present.tried.y, 'not solved'),
    result(
      'result-found',
      `${kind.name}, with the value found`,
      value === null ? null : (answer.at?.y ?? null),
    ),
    result('result-best', `${kind.name}, best this input can do`, best?.y ?? null, 'not solved'),
    withoutBetter(result('target', 'Target', level, 'not solved')),
  ];
}

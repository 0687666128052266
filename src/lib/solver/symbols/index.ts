/**
 * What every symbol of every formula means, its usual range and where it is measured, by kind of
 * quantity and name of the term. Words for a reader; no law depends on them.
 */
import type { Quantity } from '../quantity';
import { ANYWHERE } from './anywhere';
import type { Explanation, Row, Shelf } from './book';
import * as electrics from './electrics';
import * as flows from './flows';
import * as heats from './heats';
import * as pressures from './pressures';
import * as properties from './properties';
import * as ratios from './ratios';
import * as shares from './shares';
import * as sizes from './sizes';
import * as temperatures from './temperatures';
import * as times from './times';

export type { Explanation, Usual } from './book';

export const SHELVES: Readonly<Partial<Record<Quantity, Shelf>>> = {
  ...electrics,
  ...flows,
  ...heats,
  ...pressures,
  ...properties,
  ...ratios,
  ...shares,
  ...sizes,
  ...temperatures,
  ...times,
};

const fits = (name: string) => (known: string | RegExp) =>
  typeof known === 'string' ? known === name : known.test(name);

/** Exact names come before patterns, wherever they stand. */
const rowOf = (shelf: Shelf, name: string): Row | undefined =>
  shelf.find(([names]) => names.includes(name)) ?? shelf.find(([names]) => names.some(fits(name)));

/** What is said of a term on request; undefined where nobody has written it. */
export function explain(term: {
  readonly quantity: Quantity;
  readonly name: string;
}): Explanation | undefined {
  const row = rowOf(SHELVES[term.quantity] ?? [], term.name) ?? rowOf(ANYWHERE, term.name);
  if (!row) return undefined;
  const [, means, usual, where] = row;
  return {
    means,
    usual:
      typeof usual === 'string'
        ? usual
        : { from: usual[0], to: usual[1], standing: usual[2] ?? 'common practice' },
    where,
  };
}

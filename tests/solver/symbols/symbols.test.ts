import { describe, expect, it } from 'vitest';
import type { Formula } from '../../../src/lib/solver/formula';
import { SI_UNIT, type Quantity } from '../../../src/lib/solver/quantity';
import { explain, SHELVES } from '../../../src/lib/solver/symbols';

const MODULES = import.meta.glob<Record<string, unknown>>('../../../src/lib/solver/**/*.ts', {
  eager: true,
});
const TEXTS = import.meta.glob<string>(
  ['../../../src/lib/solver/**/*.ts', '../../../sheets/**/*.ts', '!**/symbols/**'],
  { eager: true, query: '?raw', import: 'default' },
);

const isFormula = (value: unknown): value is Formula =>
  typeof value === 'object' &&
  value !== null &&
  'expr' in value &&
  'terms' in value &&
  'gives' in value;

/** Every formula that a module of the solver exports as it stands. */
const FORMULAS = Object.values(MODULES).flatMap((module) =>
  Object.values(module).filter(isFormula),
);

describe('every symbol explains itself', () => {
  it('finds the formulas', () => expect(FORMULAS.length).toBeGreaterThan(200));

  it('each term of each formula, and what it gives', () => {
    const untold = FORMULAS.flatMap(({ id, terms, gives }) =>
      [...Object.values(terms), gives]
        .filter((term) => explain(term) === undefined)
        .map(({ quantity, name }) => `${id}: ${quantity}, ${name}`),
    );
    expect([...new Set(untold)]).toEqual([]);
  });

  it('the same of a name of no formula is not made up', () =>
    expect(explain({ quantity: 'temperature', name: 'a name nobody uses' })).toBeUndefined());

  it('an input by its label points back to it', () =>
    expect(explain({ quantity: 'heat', name: 'Front exchanger: rated heat' })?.where).toMatch(
      /beside the input/,
    ));
});

describe.each(Object.entries(SHELVES))('%s', (quantity, shelf) => {
  it('is a kind of quantity', () => expect(SI_UNIT).toHaveProperty(quantity));

  it('has sentences, ranges with two ends, and each name once', () => {
    const names = shelf.flatMap(([names]) => names.map(String));
    expect(new Set(names).size).toBe(names.length);
    for (const [names, means, usual, where] of shelf) {
      const label = String(names[0]);
      expect(names.length, label).toBeGreaterThan(0);
      for (const sentence of [means, where]) expect(sentence, label).toMatch(/^\S.*[.)]$/);
      if (typeof usual === 'string') expect(usual, label).toMatch(/\.$/);
      else {
        expect(usual[1], label).toBeGreaterThan(usual[0]);
        expect(usual.slice(0, 2).every(Number.isFinite), label).toBe(true);
      }
    }
  });

  it('has no name that no formula uses', () => {
    const all = Object.values(TEXTS).join('\n');
    const known = new Set(
      FORMULAS.flatMap(({ terms, gives }) => [...Object.values(terms), gives])
        .filter((term) => term.quantity === (quantity as Quantity))
        .map(({ name }) => name),
    );
    const idle = shelf.flatMap(([names]) =>
      names.filter((name) =>
        typeof name === 'string'
          ? !known.has(name) && !all.includes(`'${name}'`) && !all.includes(`\`${name}\``)
          : false,
      ),
    );
    expect(idle).toEqual([]);
  });
});

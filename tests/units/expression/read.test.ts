import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readExpression, readUnitProduct } from '$lib/units/expression/read';
import { amountOf, evaluateTree, naturally, printAs, treeTex } from '$lib/units/expression';

const SYMBOLS = new Map([
  ['Q', amountOf(700, 'heat')],
  ['T_a', amountOf(308.15, 'temperature')],
  ['s', amountOf(0.8, 'ratio')],
]);
const read = (text: string) =>
  readExpression(text, (name) => (SYMBOLS.has(name) ? 'symbol' : 'unknown'));

/** What reaches outside, or would take the machine down. */
const ATTACKS: readonly string[] = [
  'constructor',
  'prototype',
  '__proto__',
  'toString',
  'hasOwnProperty',
  'x.constructor',
  'Q.constructor',
  'Q.constructor("return 1")()',
  'Q["constructor"]',
  'sqrt.constructor',
  'cos.constructor("alert(1)")()',
  'constructor()',
  '(1).constructor',
  'import({a: 1})',
  'import(1)',
  'config(1)',
  'createUnit("foo")',
  'createUnit(Q)',
  'evaluate("1")',
  'evaluate(1)',
  'eval(1)',
  'parse("1")',
  'parser()',
  'compile(1)',
  'typed(1)',
  'simplify(Q)',
  'derivative(Q, Q)',
  'resolve(Q)',
  'f(x) = x',
  'f(x) = f(x)',
  'a = 1',
  'Q = 1',
  '1; 2',
  '1\n2',
  '"text"',
  "'text'",
  '[1, 2]',
  '[1:1e9]',
  '1:1e9',
  'ones(1e6, 1e6)',
  'zeros(100000)',
  '{a: 1}',
  'Q > 1',
  'Q == Q',
  'true',
  'null',
  'NaN',
  'Infinity',
  'undefined',
  'true ? 1 : 2',
  '170!',
  '9!!!!!!!!!!',
  '99999999!',
  'gamma(1e9)',
  'factorial(1e9)',
  'combinations(1000, 500)',
  'Q to W',
  'Q in W',
  'Q W',
  '5 mod 3',
  '5 % 3',
  'not 1',
  '1 and 1',
  '1 << 40',
  '1 | 1',
  "Q'",
  'Q.^2',
  'i',
  '3i',
  'end',
  'random()',
  'print(1)',
  'unit("5 m")',
  'bignumber(1)',
  'chain(1)',
  '$',
  'Q\\W',
  '#',
  '１ + 1',
  '\u202e1',
  'sqrt()',
  'sqrt(1, 2)',
  'max()',
  'sqrt',
  'sin cos',
  '1e400',
  '1e16',
  '2 3',
  'Q 2',
  'Q (2)',
  '2 m^99',
  '(',
  ')',
  ')(',
  '1 +',
  '',
  '   ',
];

describe('what a calculation lets in', () => {
  it.each(ATTACKS)('refuses %j, with words', (text) => {
    const result = read(text);
    expect(result.ok).toBe(false);
    if (!result.ok) {
      expect(result.message.length).toBeGreaterThan(10);
      expect(result.message).not.toMatch(/undefined|NaN|\[object/);
    }
  });

  it('refuses a long text, deep brackets and many steps before doing any work', () => {
    const code = (text: string) => {
      const result = read(text);
      return result.ok ? 'taken' : result.code;
    };
    expect(code('1'.repeat(1_000_000))).toBe('too-long');
    expect(code(`${'1+'.repeat(500_000)}1`)).toBe('too-long');
    expect(code(`${'('.repeat(190)}1${')'.repeat(190)}`)).toBe('too-deep');
    expect(code(`${'sqrt('.repeat(60)}1${')'.repeat(60)}`)).toBe('too-deep');
    expect(code('-'.repeat(390) + '1')).toBe('too-deep');
    expect(code(`1${'+1'.repeat(180)}`)).toBe('too-deep');
    expect(code(`min(1${',1'.repeat(180)})`)).toBe('too-many');
    expect(code(`2${'^2'.repeat(100)}`)).toMatch(/too/);
  });

  it('leaves nothing behind: a refused text defines no unit and no name', () => {
    read('createUnit("zork", "3 m")');
    read('zork = 3');
    expect(read('3 zork').ok).toBe(false);
    expect(({} as Record<string, unknown>).zork).toBeUndefined();
  });

  it.each([
    '2 * Q',
    '-Q^2 / (3 W)',
    'Q / (T_a - 20 degC)',
    'min(Q, 1 kW, 3 Btu/h)',
    'round(Q / W)',
    '1/2 inch',
    '50 %',
    'pi * (3 in)^2 / 4',
    '5 kg/(m^2 second)',
    '20 °C',
    '3 × 4 − 2 ÷ 5',
  ])('takes %j', (text) => expect(read(text)).toMatchObject({ ok: true }));

  it('asks which is meant where a name is a unit and a symbol', () => {
    expect(read('5 m/s')).toMatchObject({ ok: false, code: 'ambiguous' });
    expect(read('3 s')).toMatchObject({ ok: false, code: 'ambiguous' });
    expect(read('5 m/second')).toMatchObject({ ok: true });
    expect(read('3 * s')).toMatchObject({ ok: true });
    expect(read('(5 m)/s')).toMatchObject({ ok: true });
  });

  it('takes names of units only where a unit is asked for', () => {
    for (const unit of ['W', 'Btu/h', 'kg/(m^3 s)', 'L/min', '1/s'.slice(2), 'degF'])
      expect(readUnitProduct(unit).ok, unit).toBe(true);
    for (const text of ['3 W', 'W + W', 'W(2)', 'zork', 'W^99', '(', ''])
      expect(readUnitProduct(text).ok, text).toBe(false);
  });
});

describe('any text', () => {
  const PIECES = [
    ...['Q', 'T_a', 's', '2', '0', '3.5', '1e12', 'W', 'm', 'degC', 'K', 'pi', 'x', 'in'],
    ...['+', '-', '*', '/', '^', '(', ')', ' ', ',', '.', '%', '!', '=', '"', '[', ':', '°F'],
    ...['sqrt(', 'exp(', 'log(', 'min(', 'round(', 'constructor', 'import('],
  ];
  const texts = fc.oneof(
    fc.string({ maxLength: 60 }),
    fc.array(fc.constantFrom(...PIECES), { maxLength: 14 }).map((parts) => parts.join('')),
  );

  it('is refused in words or gives a finite result that prints; it never throws', () => {
    let taken = 0;
    fc.assert(
      fc.property(texts, (text) => {
        const result = read(text);
        if (!result.ok) return result.message !== '';
        taken++;
        const tex = treeTex(result.tree, (name) => name);
        const done = evaluateTree(result.tree, SYMBOLS);
        if (!done.ok) return done.message !== '' && !/NaN|Infinity|undefined/.test(tex);
        const shown = naturally(done.amount);
        const put = treeTex(result.tree, (name) => name, done.parts);
        const printed = shown.ok ? printAs(done.amount.si, shown.shown, 'US').text : '';
        return (
          Number.isFinite(done.amount.si) && !/NaN|Infinity|undefined/.test(tex + put + printed)
        );
      }),
      { numRuns: 4000 },
    );
    expect(taken).toBeGreaterThan(50);
  });
});

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { math } from '$lib/math';
import type { Quantity } from '$lib/solver/quantity';
import {
  amountOf,
  evaluateTree,
  naturally,
  printAs,
  readExpression,
  shownIn,
  type Amount,
} from '$lib/units/expression';

const SYMBOLS: ReadonlyMap<string, Amount> = new Map(
  (
    [
      ['Q', 700, 'heat'],
      ['P', 75, 'electricPower'],
      ['C', 500, 'conductance'],
      ['T_a', 308.15, 'temperature'],
      ['T_b', 318.15, 'temperature'],
      ['T_1', 350, 'absoluteTemperature'],
      ['dT', 10, 'temperatureDifference'],
      ['p_1', 100_000, 'pressure'],
      ['p_2', 180_000, 'pressure'],
      ['dp', 20_000, 'pressureDrop'],
      ['k', 0.2, 'ratio'],
      ['n', 3, 'count'],
    ] as const satisfies readonly (readonly [string, number, Quantity])[]
  ).map(([name, si, quantity]) => [name, amountOf(si, quantity)]),
);

function worked(text: string): Amount {
  const read = readExpression(text, (name) => (SYMBOLS.has(name) ? 'symbol' : 'unknown'));
  if (!read.ok) throw new Error(read.message);
  const done = evaluateTree(read.tree, SYMBOLS);
  if (!done.ok) throw new Error(done.message);
  return done.amount;
}
function shown(text: string, unit = ''): string {
  const amount = worked(text);
  const choice = shownIn(amount, unit);
  if (!choice.ok) throw new Error(choice.message);
  const printed = printAs(amount.si, choice.shown, 'SI');
  return `${printed.text} ${printed.unit}`.trim();
}

describe('dimensions', () => {
  it.each([
    ['Q + T_a', /You add a temperature \(K\) to a heat flow \(W\)/],
    ['Q - C', /You subtract a conductance \(W\/K\) from a heat flow \(W\)/],
    ['1 + Q', /You add a heat flow \(W\) to a bare number/],
    ['exp(Q)', /exp takes a bare number, not a heat flow \(W\)/],
    ['sin(dT)', /sin takes a bare number/],
    ['log(-k)', /not above nought/],
    ['sqrt(-k)', /square root of a negative/],
    ['round(Q)', /divide by the unit first/],
    ['2 ^ Q', /exponent is a heat flow/],
    ['Q ^ k', /written out/],
    ['k ^ 50', /at most 20/],
    ['(-k) ^ 0.5', /negative number/],
    ['min(Q, dT)', /min compares a heat flow \(W\) with a temperature difference \(K\)/],
    ['Q / (T_a - T_a)', /divides by nought/],
    ['1e15^4', /too large/],
  ])('%s is told in plain words', (text, words) => expect(() => worked(text)).toThrow(words));

  it('refuses a unit that does not fit and says what was expected', () => {
    expect(() => shown('Q', 'gpm')).toThrow('“gpm” measures m^3/s. The result is a heat flow (W).');
    expect(() => shown('k', 'W')).toThrow(/bare number: leave the unit empty/);
    expect(() => shown('Q', 'zork')).toThrow(/not a unit known here/);
    expect(() => shown('Q', 'constructor')).toThrow(/not a unit/);
  });

  // 1 Btu/h = 0.293 071 07 W and 1 Btu/(h °F) = 0.527 52793 W/K: NIST SP 811, app. B (from memory).
  it('shows the result in the unit asked for', () => {
    expect(shown('1 kW', 'Btu/h')).toBe('3,412 Btu/h');
    expect(shown('Q / (10 K)', 'Btu/(h degF)')).toBe('132.7 Btu/(h °F)');
    expect(shown('k', '%')).toBe('20.00 %');
    expect(shown('Q', 'kW')).toBe('0.7000 kW');
  });

  it('keeps the kind of quantity where the dimensions allow it', () => {
    const kind = (text: string) => naturally(worked(text));
    const of = (quantity: Quantity) => ({ ok: true, shown: { as: 'quantity', quantity } });
    expect(kind('2 * P')).toEqual(of('electricPower'));
    expect(kind('p_2 - p_1')).toEqual(of('pressureDrop'));
    expect(kind('p_1 + dp')).toEqual(of('pressure'));
    expect(kind('C * dT')).toEqual(of('heat'));
    expect(kind('Q * 10 minute')).toEqual(of('energy'));
    expect(shown('n / 2')).toBe('1.500');
    expect(shown('sqrt(Q)')).toBe('26.46 kg^0.5·m·s^-1.5');
  });
});

describe('temperatures', () => {
  it('differ by a difference, and a difference shifts a temperature', () => {
    expect(shown('T_b - T_a')).toBe('10.00 K');
    expect(shown('T_a + dT')).toBe('45.0 °C');
    expect(shown('dT + T_a', 'degF')).toBe('113.0 °F');
    expect(shown('T_a - 20 degC')).toBe('15.00 K');
    expect(shown('T_b - T_a', 'degF')).toBe('18.00 Δ°F');
    expect(shown('T_a - 9 deltaF')).toBe('30.0 °C');
    expect(shown('max(T_a, T_b)')).toBe('45.0 °C');
  });
  it('have a mean but no sum', () => {
    expect(shown('(T_a + T_b) / 2')).toBe('40.0 °C');
    expect(shown('T_a/2 + T_b/2')).toBe('40.0 °C');
    expect(shown('0.25 * T_a + 0.75 * T_b')).toBe('42.5 °C');
    expect(() => shown('T_a + T_b')).toThrow(/mean is \(a \+ b\) \/ 2/);
    expect(() => worked('C * (T_a + T_b)')).toThrow(/mean/);
    expect(() => worked('max(T_a, dT)')).toThrow(/difference of temperatures/);
  });
  it('count from absolute zero where they are multiplied', () => {
    expect(shown('T_a * (1 + k)')).toBe('369.8 K');
    expect(shown('T_a * (1 + k)', 'degC')).toBe('96.63 °C');
    expect(shown('T_1 / T_a')).toBe('1.136');
    expect(shown('T_1 - T_a')).toBe('41.85 K');
    expect(shown('T_a / (300 K)')).toBe('1.027');
    expect(shown('Q / (20 degC)', 'W/K')).toBe('2.388 W/K');
  });
});

describe('beside mathjs', () => {
  // A second implementation: mathjs works the same text out on its own units.
  const literal = fc.tuple(
    fc.double({ min: 0.1, max: 100, noNaN: true }).map((x) => Number(x.toPrecision(4))),
    fc.constantFrom('W', 'kW', 'BTU/hour', 'hp', 'gpm', 'L/minute', 'kg', 'lbm', 'psi', 'kPa', 's'),
  );
  const text = fc.oneof(
    fc
      .tuple(literal, literal, fc.constantFrom('*', '/'))
      .map(([[x, u], [y, v], op]) => `(${x} ${u}) ${op} (${y} ${v})`),
    fc
      .tuple(literal, literal)
      .filter(([[, u], [, v]]) => math.unit(1, u).equalBase(math.unit(1, v)))
      .map(([[x, u], [y, v]]) => `(${x} ${u} + ${y} ${v}) * 3 - ${y} ${v}`),
    literal.map(([x, u]) => `sqrt((${x} ${u})^2) / 4`),
  );
  it('comes to the same amount', () => {
    fc.assert(
      fc.property(text, (expression) => {
        const theirs = math.parse(expression).evaluate() as number | { value: number };
        const value = typeof theirs === 'number' ? theirs : theirs.value;
        return Math.abs(worked(expression).si - value) <= 1e-9 * Math.abs(value);
      }),
      { numRuns: 400 },
    );
  });
});

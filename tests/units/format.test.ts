import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { math } from '$lib/math';
import { SI_UNIT } from '$lib/solver/quantity';
import {
  DISPLAY,
  formatQuantity,
  fromShown,
  parseQuantity,
  printNumber,
  showQuantity,
  toShown,
  type Quantity,
} from '$lib/units';
import { ALL_SPELLINGS } from '$lib/units/names';
import { dimensionsOf, scaleOf, siOf } from '$lib/units/scale';

const QUANTITIES = Object.keys(SI_UNIT) as Quantity[];
const evaluate = (expr: string) => math.parse(expr).compile().evaluate() as unknown;

describe('factors', () => {
  // NIST SP 811 (2008), App. B.8, from memory; printed to seven digits there, exact ones in full.
  it.each<[string, string, number, number]>([
    ['gal', 'm^3', 3.785411784e-3, 0],
    ['in', 'm', 0.0254, 0],
    ['ft', 'm', 0.3048, 0],
    ['lbm', 'kg', 0.45359237, 0],
    ['psi', 'Pa', 6894.757, 5e-4],
    ['BTU/hour', 'W', 0.29307107, 5e-9],
    ['hp', 'W', 745.69987, 5e-6],
    ['inH2O', 'Pa', 249.0889, 5e-5], // conventional, water at 1000 kg/m³ (about 4 °C)
    ['inHg', 'Pa', 3386.389, 5e-4], // conventional
    ['cfm', 'm^3/s', 4.719474e-4, 5e-11],
    ['gpm', 'm^3/s', 6.30902e-5, 5e-11],
    ['mph', 'm/s', 0.44704, 0],
    ['in^3', 'm^3', 1.638706e-5, 5e-12],
    ['lbm/ft^3', 'kg/m^3', 16.01846, 5e-6],
    ['lbm/min', 'kg/s', 7.559873e-3, 5e-10],
    ['ft/min', 'm/s', 5.08e-3, 0],
    ['BTU/(hour degR)', 'W/K', 0.5275279, 5e-8],
    ['BTU/(lbm degR)', 'J/(kg K)', 4186.8, 0],
    ['BTU/(hour ft degR)', 'W/(m K)', 1.730735, 5e-7],
    ['BTU', 'J', 1055.056, 5e-4],
    ['mPa s', 'Pa s', 1e-3, 0],
    ['rpm', 's^-1', 1 / 60, 1e-15],
    ['lbm/(hp hour)', 'kg/J', 1.689659e-7, 5e-14],
  ])('%s in %s', (unit, si, factor, within) => {
    const slack = within === 0 ? factor * 1e-14 : within;
    expect(Math.abs(scaleOf(unit, si).factor - factor)).toBeLessThanOrEqual(slack);
    expect(scaleOf(unit, si).offset).toBe(0);
  });

  it('has the fixed points of the Fahrenheit and Celsius scales', () => {
    expect(toShown(273.15, 'temperature', 'US')).toBeCloseTo(32, 9);
    expect(toShown(373.15, 'temperature', 'US')).toBeCloseTo(212, 9);
    expect(toShown(273.15, 'temperature', 'SI')).toBeCloseTo(0, 9);
    expect(fromShown(-40, 'temperature', 'US')).toBeCloseTo(fromShown(-40, 'temperature', 'SI'), 9);
  });

  it.each(ALL_SPELLINGS.filter((s) => s !== '%'))('mathjs knows %s', (spelling) => {
    expect(dimensionsOf(spelling)).toMatch(/\d/);
  });
  it.each(QUANTITIES)('%s is shown in units of its own dimension', (quantity) => {
    for (const system of ['US', 'SI'] as const) {
      const { spelling } = DISPLAY[quantity][system];
      expect(dimensionsOf(spelling)).toBe(dimensionsOf(SI_UNIT[quantity]));
    }
  });
});

describe('printing', () => {
  it.each<[number, Quantity, 'US' | 'SI', string]>([
    [132379.34, 'pressureDrop', 'US', '19.20 psi'],
    [364.26, 'temperature', 'US', '196.0 °F'],
    [244.26, 'temperature', 'US', '−20.0 °F'],
    [5, 'temperatureDifference', 'US', '9.00 Δ°F'],
    [21120, 'heat', 'US', '72,060 Btu/h'],
    [21120, 'heat', 'SI', '21.12 kW'],
    [0.5, 'percent', 'US', '50.00 %'],
    [0, 'heat', 'SI', '0 kW'],
    [350, 'money', 'US', '$350'],
    [12400.5, 'money', 'US', '$12,400.50'],
    [-18, 'money', 'SI', '−$18'],
    [36, 'costPerDegree', 'US', '$20.00 /°F'],
    [36, 'costPerDegree', 'SI', '$36.00 /K'],
    [1.5e-6, 'ratio', 'SI', '1.500×10⁻⁶'],
    [-2.5e9, 'ratio', 'SI', '−2.500×10⁹'],
    [9.9996, 'ratio', 'SI', '10.00'],
    [4, 'count', 'US', '4'],
    [1e9, 'count', 'US', '1.000×10⁹'],
    [1e9, 'money', 'US', '$1.000×10⁹'],
    [1234567, 'count', 'US', '1,234,567'],
    [1199, 'time', 'US', '19.98 min'],
    [30, 'time', 'US', '30.00 s'],
    [1234.56, 'ratio', 'US', '1,235'],
    [NaN, 'heat', 'US', '– Btu/h'],
  ])('%d %s in %s', (si, quantity, system, expected) => {
    expect(showQuantity(si, quantity, system)).toBe(expected);
  });

  it.each(QUANTITIES)('%s: expression, number and text say the same', (quantity) => {
    fc.assert(
      fc.property(
        fc
          .double({ min: -1e5, max: 1e5, noNaN: true })
          .filter((x) => x === 0 || Math.abs(x) > 1e-9),
        fc.constantFrom('US' as const, 'SI' as const),
        (shown, system) => {
          const scale = scaleOf(DISPLAY[quantity][system].spelling, siOf(quantity));
          const si = shown * scale.factor + scale.offset;
          const printed = formatQuantity(si, quantity, system);
          const evaluated = evaluate(printed.expr);
          const back =
            typeof evaluated === 'number'
              ? evaluated
              : (evaluated as { toNumber(unit: string): number }).toNumber(siOf(quantity));
          // mathjs evaluates the printed number: it must lie within half a unit of the last place.
          const unitHere = formatQuantity(si, quantity, system).unit === 'min' ? 60 : scale.factor;
          const slack =
            Math.abs(printed.halfUlp * unitHere) * (1 + 1e-9) + Math.abs(si) * 1e-9 + 1e-12;
          expect(Math.abs(back - si)).toBeLessThanOrEqual(slack);
        },
      ),
      { numRuns: 60 },
    );
  });

  it.each(QUANTITIES)('%s: what is printed can be typed', (quantity) => {
    fc.assert(
      fc.property(
        fc.double({ min: 1e-3, max: 1e6, noNaN: true }),
        fc.constantFrom('US' as const, 'SI' as const),
        (shown, system) => {
          const si = fromShown(shown, quantity, system);
          const text = showQuantity(si, quantity, system);
          const parsed = parseQuantity(text, quantity, { system });
          expect(parsed, text).toMatchObject({ ok: true });
          const printed = formatQuantity(si, quantity, system);
          if (parsed.ok && printed.unit !== 'min') {
            expect(
              Math.abs(toShown(parsed.si, quantity, system) - printed.value),
            ).toBeLessThanOrEqual(1e-9 * Math.max(1, Math.abs(printed.value)));
          }
        },
      ),
      { numRuns: 60 },
    );
  });

  it('bounds the rounding it made', () => {
    fc.assert(
      fc.property(
        fc.double({ noNaN: true, noDefaultInfinity: true, min: -1e12, max: 1e12 }),
        (x) => {
          const printed = printNumber(x, 4);
          expect(Math.abs(printed.value - x)).toBeLessThanOrEqual(printed.halfUlp * (1 + 1e-9));
          expect(printed.halfUlp).toBeLessThanOrEqual(Math.max(Math.abs(x) * 1e-3, 1e-12));
        },
      ),
    );
  });
});

describe('what is left of an equation', () => {
  it('is told by its power of ten however small, never as a row of noughts', () => {
    expect(formatQuantity(-1.776e-15, 'head', 'SI').text).toBe('−1.776×10⁻¹⁵');
    expect(formatQuantity(1e-14, 'temperatureDifference', 'SI').text).toBe('0.00');
  });
});

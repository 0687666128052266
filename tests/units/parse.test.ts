import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { DISPLAY, expectedWords, parseQuantity, type DashSize, type Quantity } from '$lib/units';
import { SI_UNIT } from '$lib/solver/quantity';
import { dimensionsOf } from '$lib/units/scale';

const QUANTITIES = Object.keys(SI_UNIT) as Quantity[];

const si = (text: string, quantity: Quantity, system: 'US' | 'SI' = 'US') => {
  const result = parseQuantity(text, quantity, { system });
  if (!result.ok) throw new Error(result.message);
  return result.si;
};

// Expected SI values: factors of NIST SP 811 (2008) App. B.8, from memory, all digits printed there.
const INCH = 0.0254;
const FOOT = 0.3048;
const GALLON = 3.785411784e-3;

describe('what people type', () => {
  it.each<[string, Quantity, number, number]>([
    ['1.25 in', 'bore', 1.25 * INCH, 1e-12],
    ['1 1/4"', 'bore', 1.25 * INCH, 1e-12],
    ['1-1/4 in', 'bore', 1.25 * INCH, 1e-12],
    ['1¼″', 'bore', 1.25 * INCH, 1e-12],
    ['3/4 in', 'bore', 0.75 * INCH, 1e-12],
    ['¾ in', 'bore', 0.75 * INCH, 1e-12],
    ['19 mm', 'bore', 0.019, 1e-12],
    ['20 gpm', 'volumeFlow', (20 * GALLON) / 60, 1e-12],
    ['15 L/min', 'volumeFlow', 0.015 / 60, 1e-12],
    ['15 lpm', 'volumeFlow', 0.015 / 60, 1e-12],
    ['93C', 'temperature', 366.15, 1e-9],
    ['93 °C', 'temperature', 366.15, 1e-9],
    ['200F', 'temperature', (200 - 32) / 1.8 + 273.15, 1e-9],
    ['−20 F', 'temperature', (-20 - 32) / 1.8 + 273.15, 1e-9],
    ['-20 F', 'temperature', (-20 - 32) / 1.8 + 273.15, 1e-9],
    ['300 K', 'temperature', 300, 1e-9],
    ['10 F', 'temperatureDifference', 10 / 1.8, 1e-12],
    ['10 Δ°F', 'temperatureDifference', 10 / 1.8, 1e-12],
    ['10 °C', 'temperatureDifference', 10, 1e-12],
    ['$120', 'money', 120, 0],
    ['$1,240.50', 'money', 1240.5, 0],
    ['-$ 5', 'money', -5, 0],
    ['12 dollars', 'money', 12, 0],
    ['35', 'money', 35, 0],
    ['$20 /°F', 'costPerDegree', 36, 1e-12],
    ['14 psi', 'gaugePressure', 14 * 6894.757, 0.02],
    ['14 psig', 'gaugePressure', 14 * 6894.757, 0.02],
    ['14 lb', 'gaugePressure', 14 * 6894.757, 0.02],
    ['0.9 bar', 'gaugePressure', 9e4, 1e-6],
    ['-18 inHg', 'gaugePressure', -18 * 3386.389, 1e-6],
    ['0.6 inH2O', 'airPressure', 0.6 * 249.0889, 1e-4],
    ['0.6 in wg', 'airPressure', 0.6 * 249.0889, 1e-4],
    ['0.6 in w.c.', 'airPressure', 0.6 * 249.0889, 1e-4],
    ['0.6 "wc', 'airPressure', 0.6 * 249.0889, 1e-4],
    ['1,200 ft', 'length', 1200 * FOOT, 1e-9],
    ['1 200 ft', 'length', 1200 * FOOT, 1e-9],
    ['5\' 6"', 'length', 5.5 * FOOT, 1e-12],
    ['5 ft 6 in', 'length', 5.5 * FOOT, 1e-12],
    ['5 ft', 'length', 5 * FOOT, 1e-12],
    ['3 ft3', 'volume', 3 * 0.02831685, 1e-7],
    ['0,75 L', 'volume', 0.75e-3, 1e-15],
    ['1.234,5 L', 'volume', 1.2345, 1e-12],
    ['1,234.5 L', 'volume', 1.2345, 1e-12],
    ['12 V', 'voltage', 12, 0],
    ['650 cfm', 'airFlow', 650 * 4.719474e-4, 1e-7],
    ['0.55 lb/hp-h', 'fuelUse', (0.55 * 0.45359237) / (745.6999 * 3600), 1e-14],
    ['0.55 lb/(hp·h)', 'fuelUse', (0.55 * 0.45359237) / (745.6999 * 3600), 1e-14],
    ['335 g/kWh', 'fuelUse', 0.335 / 3.6e6, 1e-16],
    ['50 %', 'percent', 0.5, 1e-15],
    ['50', 'percent', 0.5, 1e-15],
    ['65 %', 'ratio', 0.65, 1e-15],
    ['60 mph', 'speed', 26.8224, 1e-12],
    ['100 km/h', 'speed', 100 / 3.6, 1e-12],
    ['1 min 30 s', 'time', 90, 1e-12],
    ['5,500 rpm', 'rotation', 5500 / 60, 1e-9],
    ['305 cu in', 'displacement', 305 * 1.638706e-5, 1e-8],
    ['5.0L', 'displacement', 5e-3, 1e-15],
    ['660 Btu/(h·°F)', 'conductance', 660 * 0.5275279, 1e-4],
    ['350 W/K', 'conductance', 350, 1e-12],
    ['1.8 cP', 'viscosity', 1.8e-3, 1e-15],
    ['1.5 µm', 'roughness', 1.5e-6, 1e-18],
    ['1,5 µm', 'roughness', 1.5e-6, 1e-18],
    ['2 m²', 'area', 2, 1e-12],
    ['80 mΩ', 'resistance', 0.08, 1e-12],
    ['10 MΩ', 'resistance', 10e6, 1e-6],
    ['10 M', 'resistance', 10e6, 1e-6],
    ['4.7k', 'resistance', 4700, 1e-9],
    ['330 R', 'resistance', 330, 1e-9],
    // Letter for the point, IEC 60062 (from memory).
    ['4k7', 'resistance', 4700, 1e-9],
    ['4K7', 'resistance', 4700, 1e-9],
    ['2K94 Ω', 'resistance', 2940, 1e-9],
    ['4R7', 'resistance', 4.7, 1e-12],
    ['R47', 'resistance', 0.47, 1e-12],
    ['2M2', 'resistance', 2.2e6, 1e-6],
    ['100R', 'resistance', 100, 1e-9],
    ['1700 pulses/gal', 'pulsesPerVolume', 1700 / GALLON, 1e-6],
    ['450 /L', 'pulsesPerVolume', 450e3, 1e-6],
    ['2 mW/K', 'dissipation', 0.002, 1e-12],
    ['0.00144 1/K', 'perKelvin', 0.00144, 1e-12],
    ['1e3 W', 'electricPower', 1000, 1e-9],
  ])('%s as %s', (text, quantity, expected, within) => {
    expect(Math.abs(si(text, quantity) - expected)).toBeLessThanOrEqual(within);
  });

  it('gives a bare number the unit of the system and says so', () => {
    const us = parseQuantity('8', 'volumeFlow', { system: 'US' });
    const metric = parseQuantity('8', 'volumeFlow', { system: 'SI' });
    expect(us).toMatchObject({ ok: true, text: '8 gpm', note: 'gpm assumed' });
    expect(metric).toMatchObject({ ok: true, text: '8 L/min', note: 'L/min assumed' });
    // The completed text means the same in the other system.
    expect(si('8 L/min', 'volumeFlow', 'US')).toBe(si('8', 'volumeFlow', 'SI'));
  });

  it('says how a doubtful comma was read', () => {
    const result = parseQuantity('1,200 ft', 'length');
    expect(result.ok && result.note).toContain('1,200 read as 1200');
    const decimal = parseQuantity('0,750 L', 'volume');
    expect(decimal).toMatchObject({ ok: true });
    expect(decimal.ok && decimal.si).toBeCloseTo(0.75e-3, 12);
  });

  it.each(QUANTITIES)('reads both examples of %s to about the same amount', (quantity) => {
    const [us, metric] = DISPLAY[quantity].example;
    const a = si(us, quantity);
    const b = si(metric, quantity);
    expect(Math.abs(a / b - 1)).toBeLessThan(0.01);
  });
});

describe('what is refused', () => {
  it.each([
    ['', 'empty'],
    ['   ', 'empty'],
    ['NaN', 'not-a-number'],
    ['nan gpm', 'not-a-number'],
    ['inf', 'not-a-number'],
    ['-∞ gpm', 'not-a-number'],
    ['hello', 'not-a-number'],
    ['gpm', 'not-a-number'],
    ['1/0 gpm', 'not-a-number'],
    ['1,2,3 gpm', 'not-a-number'],
    ['1e30', 'too-large'],
    ['1e30 gpm', 'too-large'],
    ['1e999 gpm', 'not-a-number'],
    ['8 florps', 'unknown-unit'],
    ['8 gpm 9', 'unknown-unit'],
    ['2+2', 'unknown-unit'],
    ['8*gpm()', 'ok'],
    ['8 psi', 'wrong-dimension'],
    ['8 constructor', 'unknown-unit'],
    ['8 __proto__', 'unknown-unit'],
    ['9'.repeat(200), 'too-long'],
    ['0x10', 'unknown-unit'],
  ])('%s: %s', (text, code) => {
    const result = parseQuantity(text, 'volumeFlow');
    if (code === 'ok') expect(result.ok).toBe(true);
    else expect(result).toMatchObject({ ok: false, code });
  });

  it('names what was expected, with an example', () => {
    const result = parseQuantity('14 psi', 'volumeFlow');
    expect(result.ok).toBe(false);
    if (!result.ok) {
      expect(result.message).toContain('psi');
      expect(result.message).toContain('a volume flow such as 8 gpm or 30.3 L/min');
    }
  });

  it('keeps gauge and absolute pressure apart', () => {
    expect(parseQuantity('14 psia', 'gaugePressure')).toMatchObject({ code: 'gauge-or-absolute' });
    expect(parseQuantity('14 psig', 'pressure')).toMatchObject({ code: 'gauge-or-absolute' });
    expect(parseQuantity('14.7 psia', 'pressure')).toMatchObject({ ok: true });
  });

  it.each(QUANTITIES)('refuses the unit of another dimension for %s', (quantity) => {
    const own = dimensionsOf(SI_UNIT[quantity]);
    const strangers = QUANTITIES.filter(
      (other) => DISPLAY[other].US.label !== '' && dimensionsOf(SI_UNIT[other]) !== own,
    ).filter((other) => !(DISPLAY[other].US.spelling === '%' && quantity === 'ratio'));
    expect(strangers.length).toBeGreaterThan(10);
    for (const other of strangers) {
      const text = `3 ${DISPLAY[other].US.label}`;
      const result = parseQuantity(text, quantity);
      // The one reading across dimensions: inches of water typed as inches, pounds of boost as pounds.
      const local = result.ok && /read as/.test(result.note ?? '');
      if (!local)
        expect(result, `${text} as ${quantity}`).toMatchObject({ code: 'wrong-dimension' });
      if (!result.ok) expect(result.message).toContain(expectedWords(quantity));
    }
  });

  it('never throws and never returns a number that is not finite', () => {
    const piece = fc.oneof(
      fc.string({ maxLength: 8 }),
      fc.double().map(String),
      fc.constantFrom(
        'gpm',
        'in',
        '"',
        "'",
        '/',
        ',',
        '.',
        '-',
        '−',
        '¼',
        '%',
        'AN',
        '#12',
        'e5',
        ' ',
        '°F',
      ),
    );
    fc.assert(
      fc.property(
        fc.array(piece, { maxLength: 6 }).map((parts) => parts.join('')),
        fc.constantFrom(...QUANTITIES),
        (text, quantity) => {
          const result = parseQuantity(text, quantity);
          if (result.ok) expect(Number.isFinite(result.si)).toBe(true);
          else expect(result.message.length).toBeGreaterThan(5);
        },
      ),
      { numRuns: 3000 },
    );
  });
});

describe('dash sizes', () => {
  // Both columns: hose maker's numbering (sixteenths) and SAE 100R5 style bores, from memory.
  const table: DashSize[] = [
    { dash: 8, hoseBore: 0.5 * INCH, tubeBore: (13 / 32) * INCH },
    { dash: 12, hoseBore: 0.75 * INCH, tubeBore: 0.625 * INCH },
    { dash: 20, hoseBore: 1.25 * INCH, tubeBore: 1.125 * INCH },
  ];
  it.each(['-12', '−12', '-12 AN', '−12 AN', '#12', 'dash 12', 'AN-12', '12 AN', '12AN'])(
    '%s',
    (text) => {
      const byHose = parseQuantity(text, 'bore', { dash: { convention: 'hose-bore', table } });
      expect(byHose).toMatchObject({
        ok: true,
        note: '−12 taken as 0.750 in; by tube outside diameter it would be 0.625 in. Measure the bore.',
      });
      expect(byHose.ok && byHose.si).toBeCloseTo(0.01905, 12);
      const byTube = parseQuantity(text, 'bore', { dash: { convention: 'tube-replaced', table } });
      expect(byTube.ok && byTube.si).toBeCloseTo(0.015875, 12);
    },
  );
  it('refuses a size it has no row for, and any dash without a table', () => {
    expect(
      parseQuantity('-13', 'bore', { dash: { convention: 'hose-bore', table } }),
    ).toMatchObject({
      code: 'unknown-dash',
    });
    expect(parseQuantity('-12', 'bore')).toMatchObject({ code: 'unknown-dash' });
  });
  it('is a dash size only where a bore is asked for', () => {
    expect(parseQuantity('-12', 'length')).toMatchObject({ ok: true, note: 'ft assumed' });
  });
});

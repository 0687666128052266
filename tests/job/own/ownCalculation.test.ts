import katex from 'katex';
import { describe, expect, it } from 'vitest';
import { CONTENTS } from '$sheets/contents';
import { demoJob } from '$lib/job/demo';
import { applyEdit } from '$lib/job/edit';
import { evaluate } from '$lib/job/evaluate';
import { ownCalculations, type OwnCalculationLine } from '$lib/job/own/ownCalculation';
import { FIELDS } from '$lib/job/fields';
import { inputSymbols } from '$lib/job/own/inputSymbols';
import { sheetSymbols, typedName } from '$lib/job/own/ownSymbols';
import type { Job } from '$lib/job/types';
import { math } from '$lib/math';
import type { UnitSystem } from '$lib/units';
import { printAs } from '$lib/units/expression';

const linesOf = (job: Job, side: 'asFound' | 'candidate' = 'asFound') => {
  const all = evaluate(job);
  return CONTENTS['loop-balance']!(all[side]!, all).lines;
};
const valuesOf = (job: Job, side: 'asFound' | 'candidate' = 'asFound') =>
  evaluate(job)[side]!.values;
const DEMO = demoJob();
const lines = linesOf(DEMO);
const VALUES = valuesOf(DEMO);

let next = 0;
const line = (expression: string, symbol = '', unit = ''): OwnCalculationLine => ({
  id: `own-${++next}`,
  kind: 'calculation',
  statement: '',
  symbol,
  expression,
  unit,
});
const one = (expression: string, symbol = '', unit = '') =>
  ownCalculations([line(expression, symbol, unit)], lines, VALUES)[0]!.outcome;
const fault = (expression: string, symbol = '', unit = '') => {
  const outcome = one(expression, symbol, unit);
  return outcome.ok ? 'taken' : `${outcome.part}: ${outcome.message}`;
};
const value = (name: string) => sheetSymbols(lines).byName.get(name)!.value;

describe('names of a sheet’s symbols', () => {
  it.each([
    ['\\dot Q_c', 'Q_c'],
    ['T_{f,in}', 'T_f_in'],
    ['\\Delta T_l', 'dT_l'],
    ['\\varepsilon', 'eps'],
    ['\\mathrm{NPSH_A}', 'NPSH_A'],
    ['\\rho_a', 'rho_a'],
    ['R^2', 'R_2'],
  ])('%s is typed %s', (tex, name) => expect(typedName(tex)).toBe(name));

  it('of every sheet can be typed and come to what the line says, on both sides', () => {
    const all = evaluate(DEMO);
    for (const [slug, content] of Object.entries(CONTENTS)) {
      for (const side of [all.asFound, all.candidate!]) {
        const said = content(side, all).lines;
        const { offered } = sheetSymbols(said);
        const own = offered.map(({ name }) => line(name));
        ownCalculations(own, said, side.values).forEach(({ outcome }, i) => {
          const { name, value: expected } = offered[i]!;
          expect(outcome, `${slug} ${name}`).toMatchObject({ ok: true, value: expected });
        });
      }
    }
  }, 120_000);

  it('that stand for several values are told apart by their line', () => {
    expect(fault('T_s')).toMatch(/stands for \d values.*T_s_at_engine_soak or T_s_at_hose_soak/);
    expect(one('T_s_at_engine_soak')).toMatchObject({ ok: true });
  });
});

describe('symbols beside inputs', () => {
  it('can all be typed, and hold what was entered, on both sides', () => {
    const sheet = sheetSymbols(lines);
    for (const side of ['asFound', 'candidate'] as const) {
      const values = valuesOf(DEMO, side);
      const paths = [...FIELDS.values()].filter(
        (field) =>
          field.kind === 'quantity' && field.symbol && values[field.path]!.si !== undefined,
      );
      expect(paths.length).toBeGreaterThan(100);
      for (const { path, symbol } of paths) {
        const name = `${typedName(symbol!)}_at_${path.replaceAll('.', '_')}`;
        expect(sheet.byName.has(name), name).toBe(false);
        const [done] = ownCalculations([line(name)], lines, values);
        expect(done!.outcome, name).toMatchObject({ ok: true, value: values[path]!.si });
      }
    }
  });
  it('by the short name where one input alone has it and no line does', () => {
    const [name, { value: entered }] = [...inputSymbols(VALUES).byName].find(
      ([short]) => !short.includes('_at_') && !sheetSymbols(lines).byName.has(short),
    )!;
    expect(one(name)).toMatchObject({ ok: true, value: entered });
  });
  it('give way to a line of the sheet, and to a line of the reader’s', () => {
    const { byName, ambiguous } = inputSymbols(VALUES);
    const both = sheetSymbols(lines).offered.filter(
      (symbol) => byName.has(symbol.name) || ambiguous.has(symbol.name),
    );
    expect(both.length).toBeGreaterThan(0);
    for (const symbol of both)
      expect(one(symbol.name), symbol.name).toMatchObject({ ok: true, value: symbol.value });
    const [name] = [...inputSymbols(VALUES).byName.keys()].filter(
      (short) => !short.includes('_at_') && !sheetSymbols(lines).byName.has(short),
    );
    const own = [line('3 W', name), line(`2 * ${name}`)];
    const [, second] = ownCalculations(own, lines, VALUES);
    expect(second!.outcome).toMatchObject({ ok: true, value: 6 });
    const before = ownCalculations([line(`2 * ${name}`), line('3 W', name)], lines, VALUES);
    expect(before[0]!.outcome).toMatchObject({
      ok: false,
      message: expect.stringMatching(/below/),
    });
  });
  it('that several inputs share are told apart by the input', () => {
    expect(fault('K_b')).toMatch(/“K_b” stands beside 4 inputs.*K_b_at_hose_suction_bendK or/);
    expect(one('K_b_at_hose_back_bendK')).toMatchObject({ ok: true });
  });
});

describe('own lines', () => {
  it('follow the job', () => {
    const own = [line('Q_c / (T_3 - T_amb)')];
    const hotter = applyEdit(DEMO, 'asFound', 'site.ambient', '110 °F').job;
    const results = [DEMO, hotter].map(
      (job) => ownCalculations(own, linesOf(job), valuesOf(job))[0]!.outcome,
    );
    const [before, after] = results.map((outcome) => (outcome.ok ? outcome.value : NaN));
    const expected = (value('Q_c') / (value('T_3') - value('T_amb'))).toPrecision(9);
    expect(before!.toPrecision(9)).toBe(expected);
    expect(after).not.toBe(before);
    expect(Number.isFinite(after)).toBe(true);
  });

  it('differ on the candidate', () => {
    const own = [line('Q_c')];
    const valueOn = (side: 'asFound' | 'candidate') => {
      const { outcome } = ownCalculations(own, linesOf(DEMO, side), valuesOf(DEMO, side))[0]!;
      return outcome.ok ? outcome.value : NaN;
    };
    expect(valueOn('asFound')).toBe(value('Q_c'));
    expect(valueOn('candidate')).toBeGreaterThan(0);
    expect(valueOn('candidate')).not.toBe(valueOn('asFound'));
  });

  it('may use the lines above them, by symbol, and no other', () => {
    const own = [
      line('Q_c / (T_3 - T_amb)', 'G_x'),
      line('G_x * 10 K', 'Q_x'),
      line('Q_y + Q_x'),
      line('Q_x', 'Q_y'),
    ];
    const done = ownCalculations(own, lines, VALUES).map(({ outcome }) => outcome);
    expect(done[0]).toMatchObject({ ok: true });
    expect(done[1]).toMatchObject({
      ok: true,
      value: (done[0] as { value: number }).value * 10,
    });
    expect(done[2]).toMatchObject({ ok: false, message: expect.stringMatching(/line below/) });
    expect(done[3]).toMatchObject({ ok: true });
    expect(fault('2 * Z_z', 'Z_z')).toMatch(/this very line/);
  });

  it('say so when a line they use has no result', () => {
    const own = [line('Q_c + T_3', 'Q_x'), line('2 * Q_x')];
    const [, second] = ownCalculations(own, lines, VALUES);
    expect(second!.outcome).toMatchObject({
      ok: false,
      message: '“Q_x” has no result above: see its line.',
    });
  });

  it('name what there is when a name is not known', () => {
    expect(fault('2 * Q_z')).toMatch(/“Q_z” is neither .* There are .*Q_c/);
  });

  it.each([
    ['Q_c', /symbol of this sheet already/],
    ['W', /is a unit: add an index, such as W_1/],
    ['sqrt', /means something already/],
    ['constructor', /means something already/],
    ['2x', /a letter, then letters/],
    ['x y', /a letter, then letters/],
    ['__proto__', /a letter, then letters/],
    ['a'.repeat(30), /a letter, then letters/],
  ])('refuse %s as a symbol', (symbol, words) => expect(fault('2 * Q_c', symbol)).toMatch(words));

  it('tell a temperature that is multiplied', () => {
    const outcome = one('C_a * T_3');
    expect(outcome.ok && outcome.note).toMatch(/absolute zero/);
    const difference = one('C_a * (T_3 - T_amb)');
    expect(difference.ok && difference.note).toBeUndefined();
  });

  it('refuse a unit that does not fit, at the unit', () => {
    expect(fault('Q_c', '', 'gpm')).toBe(
      'unit: “gpm” measures m^3/s. The result is a heat flow (W).',
    );
  });
});

/**
 * The numbers put in, read back from what is printed: TeX to mathjs, which works them out anew on its
 * own units. A wrong unit, a forgotten zero of a scale or a lost bracket shows here.
 */
const UNITS: readonly (readonly [RegExp, string])[] = [
  [/\\left|\\right|\\displaystyle|\\,|\\;/g, ' '],
  [/(-?[\d.]+)\s*\{\}\^\{\\circ\}\\mathrm\{F\}/g, '(($1 + 459.67) degR)'],
  [/(-?[\d.]+)\s*\{\}\^\{\\circ\}\\mathrm\{C\}/g, '(($1 + 273.15) K)'],
  [/(-?[\d.]+)\s*\\Delta\s*\{\}\^\{\\circ\}\\mathrm\{F\}/g, '($1 degR)'],
  [/\{\}\^\{\\circ\}\\mathrm\{R\}/g, 'degR'],
  [/\{\}\^\{\\circ\}F/g, 'degR'],
  [/\\mathrm\{([^{}]*)\}/g, ' $1 '],
  [/Btu/g, 'BTU'],
  [/\bh\b/g, 'hour'],
  [/\blb\b/g, 'lbm'],
  [/(?<!\\)\bmin\b/g, 'minute'],
  [/\\cdot/g, ' * '],
  [/\\sqrt/g, 'sqrt'],
  [/\\(min|max)/g, '$1'],
];
function readBack(tex: string): number {
  let text = tex;
  for (const [from, to] of UNITS) text = text.replace(from, to);
  // \frac{a}{b}, innermost first; braces that are left are brackets.
  const braces = (t: string) => t.replace(/\{([^{}]*)\}/g, '($1)');
  for (let i = 0; i < 12; i++) text = braces(text);
  text = text.replace(/\\frac\s*(\((?:[^()]|\((?:[^()]|\((?:[^()]|\([^()]*\))*\))*\))*\))/g, '$1/');
  const result = math.parse(text).evaluate() as number | { value: number };
  return typeof result === 'number' ? result : result.value;
}

describe('numbers put in', () => {
  const EXPRESSIONS = [
    'Q_c * 2',
    'Q_c / (T_3 - T_amb)',
    'rho * V * c_p',
    '(T_3 + T_amb) / 2 - T_1',
    'T_1 * (1 + k)',
    'T_amb + dT_i',
    'C_a * (T_3 - 20 degC)',
    'Q_c / (3 gal)',
    'min(Q_c, Q_p) - Q_h',
    'sqrt(Q_c / Q_p)',
    'T_3 / T_amb',
    '(Q_c + Q_e) / UA + dT_b',
  ];
  const SYSTEMS: readonly UnitSystem[] = ['US', 'SI'];
  it.each(EXPRESSIONS)('%s: what is printed gives what is printed', (expression) => {
    const outcome = one(expression);
    if (!outcome.ok) throw new Error(outcome.message);
    for (const system of SYSTEMS) {
      const tex = outcome.put(system);
      expect(() => katex.renderToString(tex, { strict: 'ignore' })).not.toThrow();
      // Four digits printed of each number; a difference of two temperatures loses some.
      const byHand = readBack(tex);
      expect(Math.abs(byHand / outcome.value - 1), `${tex} gives ${byHand}`).toBeLessThan(5e-3);
      const { text } = printAs(outcome.value, outcome.shown, system);
      expect(text).not.toMatch(/NaN|–/);
    }
  });
});

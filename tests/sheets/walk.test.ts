/** The walker itself: it must pass a right line and name what is wrong with each wrong one. */
import { describe, expect, it } from 'vitest';
import {
  balanceLine,
  defineFormula,
  formulaLine,
  type Formula,
  type FormulaLine,
} from '$lib/solver/formula';
import { SOURCES } from '$lib/solver/sources';
import { walkContent, walkLine, walkTeaching } from './walk';

const temperature = (tex: string) => ({ tex, quantity: 'temperature', name: tex }) as const;
const heat = { tex: '\\dot Q', quantity: 'heat', name: 'heat' } as const;
const rate = { tex: 'C', quantity: 'conductance', name: 'capacity rate' } as const;
const define = (expr: string, gives: Formula['gives'] = heat) =>
  defineFormula({
    id: 'fake.heat',
    expr,
    gives,
    terms: { C: rate, T_h: temperature('T_h'), T_c: temperature('T_c') },
    source: SOURCES.definition,
  });
const x = { C: 812.345, T_h: 333.333, T_c: 311.111 };
const statement = { statement: 'Heat carried' };
const right = define('C * (T_h - T_c)');

const SYSTEMS = ['US', 'SI'] as const;
const complaints = (line: Parameters<typeof walkLine>[0]) =>
  SYSTEMS.map((system) => walkLine(line, system).join('; '));

describe('a right line', () => {
  it('passes, offset temperatures included', () => {
    expect(complaints(formulaLine(right, x, statement))).toEqual(['', '']);
  });
  it('passes where a temperature is the result', () => {
    const outlet = define('T_h - (T_h - T_c) / 2', temperature('T_m'));
    expect(complaints(formulaLine(outlet, x, statement))).toEqual(['', '']);
  });
  it('passes with a curve that takes and gives quantities', () => {
    const curve = defineFormula({
      id: 'fake.curve',
      expr: 's^2 * H_1(Q / s)',
      gives: { tex: 'H', quantity: 'head', name: 'head' },
      terms: {
        s: { tex: 's', quantity: 'ratio', name: 'speed' },
        Q: { tex: 'Q', quantity: 'volumeFlow', name: 'flow' },
      },
      functions: {
        H_1: {
          tex: 'H_1',
          says: 'read from the curve',
          takes: ['volumeFlow'],
          gives: 'head',
          call: (Q) => 5 - 6000 * Q!,
        },
      },
      source: SOURCES.affinity,
    });
    expect(complaints(formulaLine(curve, { s: 0.93, Q: 4.1e-4 }, statement))).toEqual(['', '']);
    // The same curve fed with an air flow where it wants a bare number.
    const { H_1 } = curve.functions!;
    const bare = { ...curve, functions: { H_1: { ...H_1!, takes: [] } } };
    const line = formulaLine(bare, { s: 0.93, Q: 4.1e-4 }, statement);
    for (const said of complaints(line)) expect(said).toContain('where a bare number belongs');
  });
});

describe('a wrong line is named', () => {
  const wrong = (line: FormulaLine, words: string) => {
    for (const said of complaints(line)) expect(said).toContain(words);
  };
  it('a result that is not that of the formula', () => {
    const line = formulaLine(right, x, statement);
    wrong({ ...line, value: line.value * 1.01 }, 'the line says');
    wrong({ ...line, value: line.value * 1.01 }, 'rounding allows');
  });
  it('a formula on the sheet that is not the one computed', () => {
    wrong({ ...formulaLine(right, x, statement), formula: define('C * (T_h + T_c)') }, 'fake.heat');
  });
  it('a wrong dimension', () => {
    wrong(formulaLine(define('C * T_h / T_c'), x, statement), 'with units:');
    wrong(formulaLine(define('C + T_h - T_c'), x, statement), 'with units:');
    wrong(formulaLine(define('exp(T_h / 300)'), x, statement), 'with units:');
  });
  it('a conversion hidden in the formula', () => {
    // Celsius by hand: right in kelvin alone.
    const hidden = define('(T_h - 273.15) / (T_c - 273.15)', {
      tex: 'x',
      quantity: 'ratio',
      name: 'x',
    });
    wrong(formulaLine(hidden, x, statement), 'with units');
  });
  it('a number that was not put in', () => {
    const line = formulaLine(right, x, statement);
    wrong({ ...line, x: { C: 1, T_h: 300 } }, 'no number for T_c');
  });
  it('a statement or source left out, TeX that cannot be set', () => {
    const line = formulaLine(right, x, statement);
    wrong({ ...line, statement: ' ' }, 'no statement');
    const bare = { ...right, source: { cite: '', standing: 'published' as const } };
    wrong({ ...line, formula: bare }, 'no source');
    const torn = defineFormula({
      ...right,
      gives: { ...heat, tex: '\\dot{Q' },
    });
    wrong(formulaLine(torn, x, statement), 'KaTeX');
  });
  it('a balance whose sides differ', () => {
    const other = { ...define('C * (T_h - T_c)'), id: 'fake.other' };
    const words = {
      id: 'fake',
      ...statement,
      unknown: { ...rate, value: x.C },
      method: 'Found by bisection.',
    };
    const line = balanceLine({ formula: right, x }, { formula: other, x }, words);
    expect(complaints(line)).toEqual(['', '']);
    const off = { ...x, C: x.C * (1 + 1e-5) };
    const unequal = balanceLine({ formula: right, x }, { formula: other, x: off }, words);
    for (const said of complaints(unequal)) expect(said).toContain('the sides differ');
  });
  it('a line that does not say why, or whose symbol nobody explains', () => {
    const said = walkTeaching(formulaLine(right, x, statement)).join('; ');
    expect(said).toContain('why it matters');
    expect(said).toContain('nothing explains the conductance “capacity rate”');
    const told = { ...heat, name: 'heat given off' };
    const plain = defineFormula({
      id: 'fake.plain',
      expr: 'Q',
      gives: told,
      terms: { Q: told },
      source: SOURCES.definition,
    });
    expect(walkTeaching(formulaLine(plain, { Q: 1 }, { ...statement, why: 'It warms.' }))).toEqual(
      [],
    );
  });
  it('a double id, a result without a number, NaN in a finding', () => {
    const line = formulaLine(right, x, { ...statement, id: 'same' });
    const result = { id: 'a', name: 'A', symbol: 'a', value: NaN, quantity: 'heat' } as const;
    const said = walkContent(
      {
        lines: [line, line],
        results: [result, { ...result, id: 'b', value: null }],
        findings: [
          { code: 'c', level: 'info', sentence: ['It is ', { value: NaN, quantity: 'heat' }] },
        ],
      },
      'US',
    ).join('; ');
    expect(said).toContain('line same: twice');
    expect(said).toContain('result a');
    expect(said).toContain('result b');
    expect(said).toContain('finding c');
  });
});

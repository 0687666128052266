/** The harness itself: a check that cannot fail would be worth nothing. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { Unsupported } from './given';
import { DEFAULT_FOLDER, loadFolder, referenceFolder, runCase, type Adapters } from './harness';
import { report } from './report';
import type { Case, Tolerance } from './schema';
import { boundFor } from './tolerance';

const adapters: Adapters = {
  shapes: {
    square: (given) => ({ area: given.number('side') ** 2 }),
    list: (given) => ({ twice: given.numbers('of').map((x) => 2 * x) }),
    word: (given) => ({ word: given.text('word'), long: given.text('word').length > 3 }),
    broken: () => {
      throw new Error('the part contradicts itself');
    },
    round: (given) => ({ area: given.oneOf('shape', { circle: 1 }) }),
    later: () => {
      throw new Unsupported('not yet');
    },
  },
};

function run(c: Partial<Case>, tolerance: Tolerance = { rel: 1e-3 }) {
  const whole: Case = { id: 'x', op: 'square', inputs: {}, expected: {}, ...c };
  return runCase({ title: '', topic: 'shapes', tolerance, cases: [whole] }, whole, adapters);
}

describe('the verdict on a case', () => {
  it('passes a right value and fails a deliberately wrong one', () => {
    expect(run({ inputs: { side: 3 }, expected: { area: 9 } }).state).toBe('pass');
    const wrong = run({ inputs: { side: 3 }, expected: { area: 9.1 } });
    expect(wrong.state).toBe('fail');
    expect(wrong.worst).toMatchObject({ field: 'area', got: 9, expected: 9.1 });
    expect(wrong.worst!.relativeError).toBeCloseTo(0.1 / 9.1, 12);
  });

  it('accepts a difference up to the bound and none beyond', () => {
    const bound = { abs: 0.5 };
    expect(run({ inputs: { side: 3 }, expected: { area: 9.5 } }, bound).state).toBe('pass');
    expect(run({ inputs: { side: 3 }, expected: { area: 9.5001 } }, bound).state).toBe('fail');
  });

  it('holds a value to exactness where no tolerance is given', () => {
    expect(run({ inputs: { side: 3 }, expected: { area: 9 } }, {}).state).toBe('pass');
    expect(run({ inputs: { side: 3 }, expected: { area: 9 + 1e-12 } }, {}).state).toBe('fail');
  });

  it('fails NaN, a missing field, and a list of another length', () => {
    expect(run({ inputs: { side: NaN }, expected: { area: 9 } }).state).toBe('fail');
    const missing = run({ inputs: { side: 3 }, expected: { area: 9, girth: 12 } });
    expect(missing).toMatchObject({ state: 'fail', message: 'no value for girth' });
    const list = { op: 'list', inputs: { of: [1, 2] } };
    expect(run({ ...list, expected: { twice: [2] } }).state).toBe('fail');
  });

  it('compares lists element by element and names the element', () => {
    const c = { op: 'list', inputs: { of: [1, 2, 3] } };
    expect(run({ ...c, expected: { twice: [2, 4, 6] } }).state).toBe('pass');
    const wrong = run({ ...c, expected: { twice: [2, 4, 7] } });
    expect(wrong).toMatchObject({ state: 'fail', worst: { field: 'twice[2]' } });
  });

  it('wants text and booleans equal', () => {
    const c = { op: 'word', inputs: { word: 'fans' } };
    expect(run({ ...c, expected: { word: 'fans', long: true } }).state).toBe('pass');
    expect(run({ ...c, expected: { word: 'fan', long: true } }).state).toBe('fail');
    expect(run({ ...c, expected: { word: 'fans', long: false } }).state).toBe('fail');
  });

  it('lists as unsupported an unknown op, topic, name or input', () => {
    expect(run({ op: 'cube', expected: { volume: 1 } }).state).toBe('unsupported');
    expect(run({ op: 'toString', expected: { volume: 1 } }).state).toBe('unsupported');
    expect(run({ op: 'later', expected: { volume: 1 } }).state).toBe('unsupported');
    const shape = run({ op: 'round', inputs: { shape: 'oval' }, expected: { area: 1 } });
    expect(shape).toMatchObject({ state: 'unsupported', message: 'shape "oval"' });
    const extra = run({ inputs: { side: 3, holes: 1 }, expected: { area: 9 } });
    expect(extra).toMatchObject({ state: 'unsupported', message: 'input not understood: holes' });
  });

  it('fails with the message of an adapter that throws', () => {
    const thrown = run({ op: 'broken', expected: { area: 1 } });
    expect(thrown).toMatchObject({ state: 'fail', message: 'threw the part contradicts itself' });
  });

  it('marks an expected value from memory in the listing', () => {
    const recalled = run({ inputs: { side: 3 }, expected: { area: 9 }, from_memory: true });
    expect(report([recalled], [])).toMatch(
      /x +square +pass +0\.00e\+0 +\(expected value from memory\)/,
    );
  });
});

describe('the tolerance that applies', () => {
  const file: Tolerance = { rel: 4, fields: { a: { rel: 3 } } };
  const c = (tolerance?: Tolerance) => ({ tolerance }) as Case;

  it('is the first of case field, case, file field, file', () => {
    expect(boundFor('a', c({ rel: 2, fields: { a: { rel: 1 } } }), file).rel).toBe(1);
    expect(boundFor('a', c({ rel: 2, fields: { b: { rel: 1 } } }), file).rel).toBe(2);
    expect(boundFor('a', c(), file).rel).toBe(3);
    expect(boundFor('b', c(), file).rel).toBe(4);
  });

  it('passes over a case tolerance that holds only fields', () => {
    expect(boundFor('a', c({ why: 'words', fields: { b: { rel: 1 } } }), file).rel).toBe(3);
  });
});

describe('the folder', () => {
  const folder = mkdtempSync(join(tmpdir(), 'reference-'));
  const write = (name: string, text: string) => writeFileSync(join(folder, name), text);
  afterEach(() => vi.unstubAllEnvs());

  it('is the one in the project unless REFERENCE_DIR names another', () => {
    vi.stubEnv('REFERENCE_DIR', '');
    expect(referenceFolder()).toBe(DEFAULT_FOLDER);
    vi.stubEnv('REFERENCE_DIR', folder);
    expect(referenceFolder()).toBe(folder);
  });

  it('is read whole: good files as cases, bad ones as clear lines', () => {
    const good = { topic: 'good', cases: [{ id: 'a', op: 'b', inputs: {}, expected: { x: 1 } }] };
    write('good.json', JSON.stringify(good));
    write('cut.json', '{"topic": "cut", ');
    write('twice.json', JSON.stringify({ ...good, cases: [...good.cases, ...good.cases] }));
    write('empty.json', JSON.stringify({ topic: 'empty' }));
    write(
      'blank.json',
      JSON.stringify({ topic: 'blank', cases: [{ ...good.cases[0], expected: {} }] }),
    );
    write('wide.json', JSON.stringify({ ...good, topic: 'wide', tolerance: { rel: '1 %' } }));
    write('log.csv', 't,T\n0,300\n');
    const { files, malformed } = loadFolder(folder);
    expect(files.map((f) => f.topic)).toEqual(['good']);
    expect(malformed).toEqual([
      'blank.json: case 1 (a) expects nothing',
      expect.stringMatching(/^cut\.json: not JSON/),
      'empty.json: no list of cases',
      'twice.json: case 2: id a is used twice',
      'wide.json: tolerance: rel must be a number, not negative',
    ]);
    rmSync(folder, { recursive: true });
  });

  it('of the project holds no malformed file', () => {
    const { files, malformed } = loadFolder(DEFAULT_FOLDER);
    expect(malformed).toEqual([]);
    expect(files.length).toBeGreaterThan(20);
  });
});

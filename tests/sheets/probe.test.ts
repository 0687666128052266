import { describe, expect, it } from 'vitest';
import { evaluate } from '$lib/job/evaluate';
import type { Job } from '$lib/job/types';
import { shownTemperature, type Flaw } from '$lib/solver/instruments/probe/reader';
import { content } from '../../sheets/probe/content';
import { errorChart } from '../../sheets/probe/charts';
import { inputPaths } from '../../sheets/probe/inputs';
import { circuitPicture } from '../../sheets/probe/picture';
import { studyOf } from '../../sheets/probe/study';
import { demoJob, edited } from './jobs';
import { walkContent } from './walk';

type Changes = Readonly<Record<string, string>>;

/** The demonstration job with nothing of the probe in it, then these. */
function job(changes: Changes = {}, tables: Readonly<Record<string, string[][]>> = {}): Job {
  const base = demoJob();
  const asFound = Object.fromEntries(
    Object.entries(base.asFound).filter(([path]) => !path.startsWith('probe.')),
  );
  for (const path in tables) asFound[path] = { is: tables[path]! };
  return edited({ ...base, asFound }, changes);
}
const side = (j: Job) => evaluate(j).asFound;
const codes = (j: Job) => content(side(j)).findings.map((f) => f.code);
const value = (j: Job, id: string) => content(side(j)).results.find((r) => r.id === id)?.value;
const study = (j: Job) => {
  const outcome = studyOf(side(j));
  if (!outcome.ok) throw new Error(outcome.problem.message);
  return outcome.value;
};

/** Readings typed in as a reader with that flaw, its table for `assumed` ohm, would show them. */
function read(flaw: Flaw, assumed: number, changes: Changes = {}): Job {
  const { job: described } = study(job(changes));
  const setup = { ...described.setup, reader: { ...described.setup.reader, bias: assumed }, flaw };
  const shown = (T: number) => `${(shownTemperature(setup, T) - 273.15).toFixed(3)} °C`;
  return job({
    ...changes,
    'probe.ice': shown(273.15),
    'probe.boil': shown(described.boilPoint),
  });
}

const STATES: Readonly<Record<string, () => Job>> = {
  'nothing entered': () => job(),
  'ice alone': () => job({ 'probe.ice': '36 °F' }),
  'a sound circuit': () => read({}, 1500),
  'another bias assumed': () => read({}, 1180),
  'bias too small': () => read({}, 2100),
  'bias of the table stated': () => read({}, 1180, { 'probe.readerBias': '1.18 kohm' }),
  'pull-up': () => read({ pullUp: 3900 }, 1500, { 'probe.readerBias': '1.5 kohm' }),
  'a bad pin': () => read({ series: 45 }, 1500),
  'a leak': () => read({ across: 9000 }, 1500),
  'a wrong supply': () => read({ supplyRatio: 0.85 }, 1500),
  'bias and pin': () => read({ series: 40 }, 1180, { 'probe.readPlusMinus': '0.2 °F' }),
  'baths mixed up': () => job({ 'probe.ice': '213 °F', 'probe.boil': '33 °F' }),
  'table of another probe': () =>
    job({ 'probe.ice': '30 °F', 'probe.boil': '250 °F', 'probe.readPlusMinus': '0.5 °F' }),
  'ohms measured': () =>
    edited(read({}, 1180), { 'probe.iceOhms': '6.65 kohm', 'probe.boilOhms': '240 ohm' }),
  'by Beta': () => read({}, 1180, { 'probe.law': 'beta' }),
  'by coefficients': () => read({}, 1180, { 'probe.law': 'steinhart-hart' }),
  'by table': () => read({}, 1180, { 'probe.law': 'table' }),
  'reader for another probe': () => read({}, 1180, { 'probe.readerTable': 'other' }),
  'loaded input': () => read({}, 1180, { 'probe.input': '50 kohm' }),
  'from the drawer': () => edited(read({}, 1180), { 'probe.stock': 'hand' }),
  'replaced, E96': () =>
    edited(read({}, 1180), { 'probe.stock': 'E96', 'probe.keepBias': 'replace' }),
  'barometer in the shop': () =>
    job({
      'probe.airBy': 'station',
      'probe.barometer': '28.6 inHg',
      'probe.ice': '32 °F',
      'probe.boil': '210 °F',
    }),
  'weather report': () =>
    job({
      'probe.airBy': 'report',
      'probe.barometer': '30.2 inHg',
      'probe.ice': '32 °F',
      'probe.boil': '211 °F',
    }),
  'a lot': () =>
    job(
      {},
      {
        'probe.lot': [
          ['32 °F', '211 °F'],
          ['33 °F', '210 °F'],
          ['32 °F', '222 °F'],
          ['31 °F', ''],
        ],
      },
    ),
};

describe.each(Object.keys(STATES))('%s', (name) => {
  const s = side(STATES[name]!());
  it('can be rebuilt from the print in both systems', () => {
    const said = content(s);
    for (const units of ['US', 'SI'] as const) expect(walkContent(said, units)).toEqual([]);
    expect(said.lines.length).toBeGreaterThan(8);
    expect(said.findings.length).toBeGreaterThan(0);
  });
  it('draws without a hole', () => {
    const outcome = studyOf(s);
    if (!outcome.ok) throw new Error(outcome.problem.message);
    const chart = errorChart(outcome.value);
    for (const { points } of chart?.curves ?? []) {
      expect(points.flat().every(Number.isFinite)).toBe(true);
    }
    const picture = circuitPicture(outcome.value);
    expect(Number.isFinite(picture.bias)).toBe(true);
    for (const path of Object.values(inputPaths(s)).flat())
      expect(s.values[path], path).toBeDefined();
  });
});

describe('findings follow the readings', () => {
  it('asks for the baths, then for the other one', () => {
    expect(codes(STATES['nothing entered']!())[0]).toBe('bath-missing');
    expect(codes(STATES['ice alone']!())[0]).toBe('bath-missing');
    expect(value(STATES['ice alone']!(), 'trim')).toBeNull();
  });
  it('a sound circuit is left alone', () => {
    const sound = STATES['a sound circuit']!();
    expect(codes(sound)).toEqual(expect.arrayContaining(['as-described', 'trim-not-needed']));
    expect(value(sound, 'trim')).toBeNull();
  });
  it('another bias assumed: found, and trimmed to what was good enough', () => {
    const j = STATES['another bias assumed']!();
    expect(codes(j)).toEqual(expect.arrayContaining(['explains-bias', 'solder', 'bias-or-probe']));
    expect(value(j, 'bias-wanted')! / 1180).toBeCloseTo(1, 3);
    expect(value(j, 'error-after')!).toBeLessThanOrEqual(2 / 1.8);
    expect(value(j, 'error-before')!).toBeGreaterThan(value(j, 'error-after')!);
    expect(study(j).trim!.placement).toBe('across');
    expect(study(STATES['bias too small']!()).trim!.placement).toBe('in-series');
  });
  it.each([
    ['a bad pin', 'explains-pin'],
    ['a leak', 'explains-leak'],
    ['a wrong supply', 'explains-supply'],
  ])('%s is named, and to be mended before it is trimmed', (state, code) => {
    const said = codes(STATES[state]!());
    expect(said).toContain(code);
    if (said.includes('solder')) expect(said).toContain('repair-first');
  });
  it('a hidden pull-up is named beside the bias it looks like', () => {
    const { verdict } = study(STATES['pull-up']!());
    expect(verdict!.explaining.map((e) => e.id)).toEqual(
      expect.arrayContaining(['pull-up', 'bias']),
    );
  });
  it('two things at once, or nothing at all', () => {
    expect(codes(STATES['bias and pin']!())).toContain('two-things');
    expect(codes(STATES['baths mixed up']!())).toContain('unexplained');
    expect(codes(STATES['table of another probe']!())).toContain('unexplained');
    expect(value(STATES['table of another probe']!(), 'trim')).toBeNull();
  });
  it('a plug that is off, a chafed lead: named, and not trimmed', () => {
    const open = job({ 'probe.ice': '-40 °F', 'probe.boil': '212 °F' });
    expect(codes(open)).toContain('input-open');
    expect(codes(open)).not.toContain('solder');
    expect(codes(job({ 'probe.ice': '150 °F', 'probe.boil': '212 °F' }))).toContain('input-short');
    // Hotter than the reader's table goes it is refused as such.
    expect(codes(job({ 'probe.ice': '32 °F', 'probe.boil': '400 °F' }))).toEqual(['probe-short']);
    // Each the other's way is no lead at fault: the baths were mixed up.
    expect(codes(STATES['baths mixed up']!())).toContain('unexplained');
  });
  it('a list of resistors with nothing in it says what to do, and the verdict stands', () => {
    const none = edited(read({}, 1180), { 'probe.stock': 'hand' });
    const bare = { ...none, asFound: { ...none.asFound, 'probe.hand': { is: [] } } };
    const said = content(side(bare)).findings.find((f) => f.code === 'no-trim');
    expect(JSON.stringify(said?.sentence)).toContain('enter what is there, or choose a series');
    expect(codes(bare)).toContain('explains-bias');
  });
  it('ohms measured in the bath accuse the probe', () => {
    const found = content(side(STATES['ohms measured']!())).findings;
    expect(found.find((f) => f.code === 'probe-ice')?.level).toBe('good');
    expect(found.find((f) => f.code === 'probe-boil')?.level).toBe('act');
  });
  it('the odd one of a lot is rejected', () => {
    const j = STATES['a lot']!();
    expect(value(j, 'rejected-boil')).toBe(1);
    expect(value(j, 'rejected-ice')).toBe(0);
    const lot = content(side(j)).findings.find((f) => f.code === 'lot-boil')!;
    expect(lot.level).toBe('act');
    expect(lot.sentence.join('')).toContain('number 3');
  });
});

describe('bad input is told, and nothing is lost', () => {
  it.each<[string, Changes, Readonly<Record<string, string[][]>>, RegExp]>([
    [
      'an empty drawer',
      { 'probe.stock': 'hand', 'probe.readerBias': '1 kohm' },
      { 'probe.hand': [] },
      /empty/,
    ],
    [
      'a series with nothing in it',
      {
        'probe.stockLow': '1.05 kohm',
        'probe.stockHigh': '1.1 kohm',
        'probe.readerBias': '1 kohm',
      },
      {},
      /No E12 value/,
    ],
  ])('%s', (_, changes, tables, words) => {
    const said = content(side(job(changes, tables)));
    expect(said.findings.find((f) => f.code === 'no-trim')?.sentence.join('')).toMatch(words);
    expect(said.lines.length).toBeGreaterThan(5);
  });
  it.each<[string, Changes, Readonly<Record<string, string[][]>>]>([
    [
      'two points for three',
      {},
      {
        'probe.points': [
          ['32 °F', '6 kohm'],
          ['212 °F', '200 ohm'],
        ],
      },
    ],
    [
      'a curve that rises',
      {},
      {
        'probe.points': [
          ['32 °F', '1 kohm'],
          ['104 °F', '2 kohm'],
          ['212 °F', '3 kohm'],
        ],
      },
    ],
    [
      'a reading of a short',
      { 'probe.ice': '32 °F', 'probe.boil': '470 °F', 'probe.law': 'table' },
      {},
    ],
  ])('%s: one clear sentence', (_, changes, tables) => {
    const said = content(side(job(changes, tables)));
    expect(said.findings).toHaveLength(1);
    if ('probe.boil' in changes) {
      expect(said.findings[0]!.sentence.join('')).toMatch(/short circuit/);
    }
    expect(said.findings[0]!.level).toBe('act');
    expect(said.lines).toEqual([]);
    expect(walkContent(said, 'US')).toEqual([]);
  });
});

it('the candidate was not built, so nothing was read on it', () => {
  const { candidate } = evaluate(demoJob());
  expect(content(candidate!).findings.map((f) => f.code)).toEqual(['candidate-not-read']);
});

/** The probe sheet where it must not advise: readings no divider gives, faults no trim mends, no list. */
import { describe, expect, it } from 'vitest';
import { evaluate } from '$lib/job/evaluate';
import { emptyJob, type Job } from '$lib/job/types';
import { formatQuantity } from '$lib/units';
import { countChart, errorChart, readingChart } from '../../sheets/probe/charts';
import { content } from '../../sheets/probe/content';
import { circuitPicture } from '../../sheets/probe/picture';
import { studyOf } from '../../sheets/probe/study';
import { trimRows } from '../../sheets/probe/tables';
import { solderedWords } from '../../sheets/probe/words';
import type { Sentence } from '../../sheets/types';
import { edited } from './jobs';
import { walkContent } from './walk';

type Changes = Readonly<Record<string, string>>;

const job = (changes: Changes = {}, hand?: readonly (readonly string[])[]): Job => {
  const base = edited(emptyJob(), changes);
  return hand ? { ...base, asFound: { ...base.asFound, 'probe.hand': { is: hand } } } : base;
};
const baths = (ice: string, boil: string, more: Changes = {}) =>
  job({ 'probe.ice': `${ice} °F`, 'probe.boil': `${boil} °F`, ...more });
const side = (j: Job) => evaluate(j).asFound;
const said = (j: Job) => content(side(j));
const words = (sentence: Sentence): string =>
  sentence
    .map((part) => {
      if (typeof part === 'string') return part;
      const { text, unit } = formatQuantity(part.value, part.quantity, 'US');
      return `${text} ${unit}`;
    })
    .join('');
const told = (j: Job) =>
  said(j).findings.map(({ code, sentence }) => `${code}: ${words(sentence)}`);
const result = (j: Job, id: string) => said(j).results.find((r) => r.id === id)!;
const study = (j: Job) => {
  const outcome = studyOf(side(j));
  if (!outcome.ok) throw new Error(outcome.problem.message);
  return outcome.value;
};

describe('readings that no divider gives', () => {
  it.each([
    ['-40', '-40', 'input-open', /plug that is off/],
    ['284', '284', 'input-short', /chafed lead/],
    ['300', '300', 'input-short', /reader is set to this probe/],
    ['90', '91', 'input-stuck', /not moved between the baths.*stuck or frozen/],
    ['-67', '-67', 'input-open', /cold end of the reader’s table/],
    ['32', '392', 'input-short', /hot end of the reader’s table/],
    ['32', '68', 'input-open', /not in this one/],
  ])('%s and %s °F: %s, in words', (ice, boil, code, pattern) => {
    const j = baths(ice, boil);
    const [first, ...rest] = told(j);
    expect(first).toMatch(new RegExp(`^${code}: `));
    expect(first).toMatch(pattern);
    // No number that a person would not write.
    for (const one of [first, ...rest]) expect(one).not.toMatch(/\d\.\d{5}/);
    expect(rest.join()).not.toMatch(/solder/i);
    expect(study(j).trim).toBeNull();
    for (const units of ['US', 'SI'] as const) expect(walkContent(said(j), units)).toEqual([]);
  });
  it.each([
    [
      { 'probe.ice': '-80 °F', 'probe.boil': '-80 °F' },
      /^probe-open: −80.0 °F lies at or beyond the cold/,
    ],
    [{ 'probe.ice': '470 °F' }, /^probe-short: 470.0 °F lies at or beyond the hot end.*392.0 °F/],
  ])('%j: beyond the reader’s table', (changes, pattern) => {
    expect(told(job(changes))).toHaveLength(1);
    expect(told(job(changes))[0]).toMatch(pattern);
  });
  it('a law that does not reach the ice says so in the reader’s units', () => {
    const base = job({ 'probe.law': 'table' });
    const points = [
      ['140 °F', '600 ohm'],
      ['212 °F', '198 ohm'],
    ];
    const short = { ...base, asFound: { ...base.asFound, 'probe.points': { is: points } } };
    expect(told(short)).toEqual([
      'out-of-range: Probe table: 32.0 °F is outside 86.0 °F to 266.0 °F.',
    ]);
  });
});

describe('no network is advised where bias is not what is wrong', () => {
  it.each([
    ['60', '212'],
    ['32', '150'],
    ['31', '190'],
  ])('%s and %s °F', (ice, boil) => {
    const j = baths(ice, boil);
    const all = told(j);
    expect(all.find((one) => one.startsWith('repair-first'))).toMatch(
      /No network mends this: .*bias/,
    );
    expect(all.join()).not.toMatch(/Solder /);
    expect(trimRows(study(j))).toEqual([]);
    expect(circuitPicture(study(j)).trim).toBeNull();
    expect(result(j, 'trim').absent).toBe('something is to be put right first');
    expect(result(j, 'bias-wanted').value).toBeNull();
  });
  it('a table of another probe, its bias stated, no baths read: the bound is told', () => {
    const j = job({
      'probe.readerBias': '1.5 kohm',
      'probe.readerTable': 'other',
      'probe.readerBeta': '3000 K',
    });
    const finding = told(j).find((one) => one.startsWith('trim-bias-cannot'));
    expect(finding).toMatch(/No network mends this/);
    expect(finding).toMatch(/at most 5.00 Δ°F .*common practice/);
    expect(told(j).join()).not.toMatch(/Solder /);
    expect(result(j, 'trim').absent).toBe('no bias mends this');
  });
});

describe('the list of resistors', () => {
  const HAND = { 'probe.stock': 'hand' };
  const LIST = [
    ['1 kohm', ''],
    ['4.7 kohm', ''],
  ];
  const found = (more: Changes, hand?: string[][]) =>
    job({ 'probe.ice': '40 °F', 'probe.boil': '227 °F', ...more }, hand);
  const EXAMPLE = /of the example list; enter yours/;

  it('that comes with the blank is said to be an example wherever it is used', () => {
    const j = found(HAND);
    expect(told(j).find((one) => one.startsWith('solder'))).toMatch(EXAMPLE);
    expect(result(j, 'trim').name).toMatch(EXAMPLE);
    expect(result(j, 'error-after').name).toMatch(EXAMPLE);
    expect(circuitPicture(study(j)).example).toBe(true);
  });
  it.each([
    ['one’s own', found(HAND, LIST)],
    ['a series', found({})],
  ])('%s is not', (_, j) => {
    expect(told(j).find((one) => one.startsWith('solder'))).toBeDefined();
    expect(JSON.stringify([told(j), said(j).results])).not.toMatch(/example list/);
    expect(circuitPicture(study(j)).example).toBe(false);
  });
  it('emptied: only what is soldered is absent, for that reason', () => {
    const j = found(HAND, []);
    for (const id of ['trim', 'error-after', 'error-tolerance']) {
      expect(result(j, id).absent).toBe('there is no resistor to choose from');
    }
    // The error and the bias wanted hang on the readings alone.
    expect(result(j, 'error-before').value).toBe(result(found({}), 'error-before').value);
    expect(result(j, 'bias-wanted').value).toBe(result(found({}), 'bias-wanted').value);
    expect(result(j, 'chi-square').value).not.toBeNull();
  });
  it.each([
    ['no baths', job(), 'both baths are needed'],
    ['alike', baths('90', '91'), 'both readings are nearly the same'],
    ['mixed up', baths('213', '33'), 'nothing single explains the readings'],
    ['sound', baths('32', '211'), 'no trim is needed'],
    [
      'range too long',
      found({ 'probe.law': 'table', 'probe.to': '300 °F' }),
      'the range reaches beyond the probe’s law',
    ],
    [
      'far values',
      found(HAND, [['10 ohm', '1']]),
      'no network of these resistors comes near enough',
    ],
  ])('%s: the reason is its own', (_, j, why) => {
    expect(result(j, 'trim')).toMatchObject({ value: null, absent: why });
  });
});

it('says "in series" once, whatever the network and its place', () => {
  const parts = [1000, 2200, 3300];
  for (const placement of ['across', 'in-series', 'instead'] as const) {
    for (const form of ['a', 'a+b', 'a|b', 'a+b+c', 'a|b|c', '(a+b)|c', '(a|b)+c'] as const) {
      const network = { form, parts: parts.slice(0, form.replace(/[^abc]/g, '').length) };
      const sentence = words(solderedWords(network, placement));
      expect(sentence).not.toMatch(/in series,? in series|across both,? across|,,| {2}/);
      expect(sentence).toMatch(/bias resistor$/);
      for (const R of network.parts) expect(sentence).toContain(R.toLocaleString('en-US'));
    }
  }
});

describe('plots over the range', () => {
  const j = baths('40', '227');
  const ends = (points: readonly (readonly number[])[]) => [points[0]![0], points.at(-1)![0]];
  it('what is shown: ideal, as it is, trimmed; each shown value is truth and error', () => {
    const s = study(j);
    const shown = readingChart(s)!;
    const error = errorChart(s)!;
    expect(shown.curves!.map(({ id }) => id)).toEqual(['ideal', 'before', 'after']);
    for (const [T, y] of shown.curves![0]!.points) expect(y).toBe(T);
    for (const id of ['before', 'after']) {
      const of = (chart: typeof shown) => chart.curves!.find((c) => c.id === id)!.points;
      expect(ends(of(shown))).toEqual([s.from, s.to]);
      of(shown).forEach(([T, y], i) => expect(y - T).toBeCloseTo(of(error)[i]![1], 9));
    }
    // The dots are the readings, as typed: 40 and 227 °F.
    expect(shown.dots![0]!.points.map(([, y]) => Math.round((y - 273.15) * 1.8 + 32))).toEqual([
      40, 227,
    ]);
  });
  it('readings that nothing explains still stand beside the ideal line; nothing read, nothing drawn', () => {
    const chart = readingChart(study(baths('90', '91')))!;
    expect(chart.curves!.map(({ id }) => id)).toEqual(['ideal']);
    expect(chart.dots![0]!.points).toHaveLength(2);
    expect(readingChart(study(job()))).toBeNull();
  });
  it('degrees per count meet the results at the boil, and need no baths', () => {
    const chart = countChart(study(j))!;
    const after = chart.curves!.find(({ id }) => id === 'after')!.points;
    expect(after[0]![1]).toBeCloseTo(result(j, 'count-ice').value!, 9);
    expect(countChart(study(job()))!.curves).toHaveLength(1);
    expect(countChart(study(baths('90', '91')))!.bands).toEqual([]);
    for (const { points } of chart.bands!) {
      for (const [, low, high] of points) expect(high).toBeGreaterThanOrEqual(low);
    }
  });
});

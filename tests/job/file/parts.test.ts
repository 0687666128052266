/** Parts lists: what is read, what is told, what is never taken for zero. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { nameCandidate, applyEdit } from '$lib/job/edit';
import { readJob, writeJob } from '$lib/job/file/file';
import { addPart, removePart, setPart } from '$lib/job/upgrades/partsEdits';
import { partsList, readPart } from '$lib/job/upgrades/partsList';
import { emptyJob, type Job } from '$lib/job/types';

const POUND = 0.45359237; // kg, exact by definition

const part = (count: string, price: string, mass = '1 lb') => ({ what: 'x', count, price, mass });
const planned = (): Job =>
  nameCandidate(applyEdit(emptyJob(), 'candidate', 'hose.back.bore', '1 in').job, 'hose');

describe('a parts list', () => {
  it('costs count times price, and weighs count times mass', () => {
    const { cost, mass } = partsList(
      [part('2', '$95', '4 lb'), part('26 ft', '3.20', '0.25 lb')],
      'US',
    );
    expect(cost).toBeCloseTo(2 * 95 + 26 * 3.2, 10);
    expect(mass).toBeCloseTo((2 * 4 + 26 * 0.25) * POUND, 10);
  });
  it('with one price unknown has no cost at all, and says how many', () => {
    const list = partsList([part('1', '$460'), part('1', '')], 'US');
    expect(list.cost).toBeNull();
    expect(list.unpriced).toBe(1);
  });
  it('that is empty is not known to cost nothing; a price of nothing is', () => {
    expect(partsList([], 'US').cost).toBeNull();
    expect(partsList(undefined, 'US').cost).toBeNull();
    expect(partsList([part('1', '$0')], 'US').cost).toBe(0);
  });
  it('counts one piece where no count is given, and passes blank rows over', () => {
    const blank = { what: '', count: '', price: '', mass: '' };
    expect(partsList([part('', '$18'), blank], 'US')).toMatchObject({ cost: 18, unpriced: 0 });
  });
  it.each([
    ['count', 'none'],
    ['count', '0'],
    ['count', '-2'],
    ['price', '12 psi'],
    ['price', '-$5'],
    ['mass', 'light'],
  ] as const)('refuses a %s of %s, and tells why', (key, text) => {
    const cell = readPart(key, text, 'US');
    expect(cell.ok).toBe(false);
    expect(!cell.ok && cell.message.length).toBeGreaterThan(5);
  });
  it('sums what comes off apart: nothing where nothing is stated, unknown where it cannot be read', () => {
    const row = (off?: string) => ({
      ...part('2', '$10', '7 lb'),
      ...(off !== undefined && { off }),
    });
    expect(partsList([row()], 'US').off).toBe(0);
    expect(partsList([row('')], 'US').off).toBe(0);
    const { mass, off } = partsList([row('4 lb'), row()], 'US');
    expect(mass).toBeCloseTo(4 * 7 * POUND, 10);
    expect(off).toBeCloseTo(2 * 4 * POUND, 10);
    expect(partsList([row('light')], 'US')).toMatchObject({ off: null, mass: 2 * 7 * POUND });
    expect(partsList([row('-1 lb')], 'US').rows[0]!.faults.off).toMatch(/zero or more/);
  });
  it('is the sum of its rows, whatever they are', () => {
    const row = fc.record({
      n: fc.integer({ min: 1, max: 99 }),
      cents: fc.integer({ min: 0, max: 99_999 }),
    });
    fc.assert(
      fc.property(fc.array(row, { minLength: 1, maxLength: 20 }), (rows) => {
        const { cost } = partsList(
          rows.map(({ n, cents }) => part(`${n}`, `$${(cents / 100).toFixed(2)}`)),
          'US',
        );
        const exact = rows.reduce((sum, { n, cents }) => sum + n * cents, 0);
        expect(Math.round(cost! * 100)).toBe(exact);
      }),
    );
  });
});

describe('edits of the parts list', () => {
  const listed = () => setPart(addPart(planned(), 0), 0, 'what', 'hose');
  it('keep what is typed, read or not', () => {
    const job = setPart(setPart(listed(), 0, 'price', 'cheap'), 0, 'count', '12 ft');
    expect(job.candidate!.parts).toEqual([
      { what: 'hose', count: '12 ft', price: 'cheap', mass: '' },
    ]);
    expect(partsList(job.candidate!.parts, 'US').rows[0]!.faults.price).toMatch(/not a number/);
  });
  it('put the unit assumed behind a bare number, so that it means the same in other units', () => {
    expect(setPart(listed(), 0, 'mass', '6').candidate!.parts![0]!.mass).toBe('6 lb');
    expect(setPart(listed(), 0, 'price', '6').candidate!.parts![0]!.price).toBe('$6');
  });
  it('are not lost when an input of the candidate changes', () => {
    const job = applyEdit(listed(), 'candidate', 'hose.transfer.bore', '1 in').job;
    expect(job.candidate!.parts).toHaveLength(1);
  });
  it('travel in the file; the last row gone, the list is gone', () => {
    const job = setPart(listed(), 0, 'kind', 'hoses');
    expect(readJob(writeJob(job))).toMatchObject({ ok: true, job });
    expect(removePart(job, 0).candidate).not.toHaveProperty('parts');
  });
  it('keep what comes off only where it is stated', () => {
    const job = setPart(listed(), 0, 'off', '6');
    expect(job.candidate!.parts![0]!.off).toBe('6 lb');
    expect(readJob(writeJob(job))).toMatchObject({ ok: true, job });
    expect(setPart(job, 0, 'off', '').candidate!.parts![0]).not.toHaveProperty('off');
  });
  it('without a candidate do nothing', () => {
    expect(addPart(emptyJob(), 0)).toEqual(emptyJob());
  });
});

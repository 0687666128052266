import { describe, expect, it } from 'vitest';
import {
  applyEdit,
  clearField,
  dropDraft,
  promoteCandidate,
  setFrom,
  setPm,
  setUnits,
  startCandidate,
} from '$lib/job/edit';
import { evaluate } from '$lib/job/evaluate';
import { emptyJob, type Job, type SideId, type Typed } from '$lib/job/types';
import { resolve } from '$lib/job/values';

const value = (job: Job, path: string, side: SideId = 'asFound') =>
  resolve(job, side).values[path]!;

/** An edit that must go in. */
function accept(job: Job, path: string, typed: Typed, side: SideId = 'asFound'): Job {
  const edited = applyEdit(job, side, path, typed);
  expect(edited.problem).toBeUndefined();
  return edited.job;
}

describe('a job with nothing entered', () => {
  it('uses defaults, says so, and solves', () => {
    const { asFound, candidate } = evaluate(emptyJob());
    expect(candidate).toBeNull();
    expect(asFound.problem).toBeUndefined();
    expect(asFound.values['site.ambient']).toMatchObject({ assumed: true });
    for (const duty of ['traffic', 'cruise', 'pull'] as const) {
      expect(asFound.steady[duty], duty).toMatchObject({ ok: true });
    }
  });
  it('is the same object for the same job', () => {
    const job = emptyJob();
    expect(evaluate(job)).toBe(evaluate(job));
    expect(evaluate(job).asFound.steady.cruise).toBe(evaluate(job).asFound.steady.cruise);
  });
});

describe('an accepted edit', () => {
  it('keeps the text as typed and derives the value', () => {
    const job = accept(emptyJob(), 'hose.suction.bore', '1 1/4"');
    expect(job.asFound['hose.suction.bore']).toEqual({ is: '1 1/4"' });
    expect(value(job, 'hose.suction.bore')).toMatchObject({ si: 0.03175, assumed: false });
    expect(evaluate(job).asFound.loop.hoses.suction.bore).toBe(0.03175);
  });
  it('stores a bare number with its unit, so that other units do not change the value', () => {
    const job = accept(emptyJob('US'), 'reservoir.volume', '2');
    expect(job.asFound['reservoir.volume']).toEqual({ is: '2 gal' });
    const metric = setUnits(job, 'SI');
    expect(value(metric, 'reservoir.volume').si).toBe(value(job, 'reservoir.volume').si);
  });
  it('completes bare numbers of a file written by hand before the units change', () => {
    const job: Job = { ...emptyJob('US'), asFound: { 'pump.npshRequired': { is: '5' } } };
    const metric = setUnits(job, 'SI');
    expect(value(metric, 'pump.npshRequired').si).toBeCloseTo(5 * 0.3048, 12);
  });
  it('reads a dash size by the convention of the job, and tells', () => {
    const edited = applyEdit(emptyJob(), 'asFound', 'hose.back.bore', '-10 AN');
    expect(edited.note).toBe(
      '−10 taken as 0.625 in; by tube outside diameter it would be 0.500 in. Measure the bore.',
    );
    const braided = accept(edited.job, 'hose.dashConvention', 'tube-replaced');
    expect(value(braided, 'hose.back.bore').si).toBeCloseTo(0.0127, 12);
  });
  it('does not touch the job it came from', () => {
    const job = Object.freeze(emptyJob());
    const rows = [
      ['0 gpm', '20 ft'],
      ['10 gpm', '0 ft'],
    ];
    const next = accept(job, 'pump.curve', rows);
    rows[0]![1] = '1 ft';
    expect(job.asFound).toEqual({});
    expect(next.asFound['pump.curve']!.is).toEqual([
      ['0 gpm', '20 ft'],
      ['10 gpm', '0 ft'],
    ]);
  });
});

describe('a refused edit', () => {
  it.each<[string, Typed, RegExp]>([
    ['pump.volts', '', /Nothing entered/],
    ['pump.volts', '-3 V', /outside/],
    ['pump.volts', 'NaN', /not a number/],
    ['pump.volts', '1e30', /too large/],
    ['pump.volts', '3 gpm', /a voltage such as 12.4 V/],
    ['reservoir.volume', '-1 gal', /outside/],
    ['fans.count', '1.5', /whole number/],
    ['coolant.kind', 'gin', /not one of/],
    ['coolant.share', '80 %', /outside/],
    ['site.ambient', '-500 F', /outside/],
    ['pump.curve', 'flat', /takes rows/],
    ['pump.curve', [['0 gpm', '16 ft']], /2 rows or more/],
    [
      'pump.curve',
      [
        ['0 gpm', '10 ft'],
        ['5 gpm', '14 ft'],
        ['9 gpm', '0 ft'],
      ],
      /./,
    ],
    [
      'pump.curve',
      [
        ['0 gpm', '10 psi'],
        ['9 gpm', '0 ft'],
      ],
      /Row 1, Head/,
    ],
    ['fans.diameter', '30 in', /wider than the core/],
    [
      'fans.curve',
      [
        ['0 cfm', '0.1 inH2O'],
        ['500 cfm', '0.5 inH2O'],
      ],
      /./,
    ],
    ['hose.suction.roughness', '10 in', /outside/],
    ['chargeCooler.rating.heat', '300 kW', /at most/],
    ['chargeCooler.rating.liquidInlet', '225 °F', /./],
    ['frontExchanger.airLoss', [['450 ft/min', '0 inH2O']], /./],
    ['reservoir.totalVolume', '1 gal', /does not fit/],
    ['schedule', [['nap', '5 min', '', '']], /not one of/],
  ])('%s = %j', (path, typed, message) => {
    const before = emptyJob();
    const edited = applyEdit(before, 'asFound', path, typed);
    expect(edited.problem).toMatch(message);
    // Nothing typed is lost, and the sheets go on with the last accepted value.
    expect(edited.job.asFound[path]).toMatchObject({ draft: typed, why: edited.problem });
    expect(edited.job.asFound[path]!.is).toBeUndefined();
    const { asFound } = evaluate(edited.job);
    expect(asFound.problem).toBeUndefined();
    expect(asFound.problems).toEqual([{ path, message: edited.problem }]);
    expect(asFound.loop).toEqual(evaluate(before).asFound.loop);
  });

  it('keeps the value accepted before it', () => {
    const job = accept(emptyJob(), 'pump.volts', '12.1 V');
    const bad = applyEdit(job, 'asFound', 'pump.volts', 'twelve').job;
    expect(value(bad, 'pump.volts')).toMatchObject({ si: 12.1, draft: 'twelve', assumed: false });
    expect(dropDraft(bad, 'asFound', 'pump.volts').asFound).toEqual(job.asFound);
    // A good text replaces both.
    expect(accept(bad, 'pump.volts', '12.4 V').asFound['pump.volts']).toEqual({ is: '12.4 V' });
  });

  it('goes in by itself once the field it contradicted allows it', () => {
    const waiting = applyEdit(emptyJob(), 'asFound', 'reservoir.volume', '5 gal');
    expect(waiting.problem).toMatch(/does not fit/);
    const job = accept(waiting.job, 'reservoir.totalVolume', '6 gal');
    expect(job.asFound['reservoir.volume']).toEqual({ is: '5 gal' });
    expect(evaluate(job).asFound.problems).toEqual([]);
  });

  it('of an unknown input changes nothing', () => {
    const job = emptyJob();
    const edited = applyEdit(job, 'asFound', '__proto__', '1');
    expect(edited.job).toBe(job);
    expect(edited.problem).toMatch(/no input/);
  });
});

describe('a file with a value that cannot be read', () => {
  it('uses the default and says what is wrong', () => {
    const job: Job = { ...emptyJob(), asFound: { 'pump.volts': { is: 'lots' } } };
    expect(value(job, 'pump.volts')).toMatchObject({ si: 13, assumed: true, draft: 'lots' });
    expect(evaluate(job).asFound.problems).toHaveLength(1);
  });
  it('that contradicts itself has a problem with its path instead of results', () => {
    const rising = [
      ['0 gpm', '5 ft'],
      ['9 gpm', '9 ft'],
    ];
    const job: Job = { ...emptyJob(), asFound: { 'pump.curve': { is: rising } } };
    const { asFound } = evaluate(job);
    expect(asFound.problem).toMatchObject({ code: 'invalid-input', path: 'pump.curve' });
    expect(asFound.steady.cruise).toMatchObject({ ok: false, problem: { path: 'pump.curve' } });
    // Other fields can still be edited, and the fault mended.
    const other = accept(job, 'pump.volts', '12 V');
    const mended = accept(other, 'pump.curve', [
      ['0 gpm', '9 ft'],
      ['9 gpm', '5 ft'],
    ]);
    expect(evaluate(mended).asFound.problem).toBeUndefined();
  });
});

describe('the candidate', () => {
  it('starts with the first edit on its side and holds only what differs', () => {
    const found = accept(emptyJob(), 'hose.suction.bore', '1/2 in');
    const job = accept(found, 'hose.suction.bore', '1 in', 'candidate');
    expect(job.candidate!.changes).toEqual({ 'hose.suction.bore': { is: '1 in' } });
    expect(value(job, 'hose.suction.bore', 'candidate')).toMatchObject({ changed: true });
    expect(value(job, 'hose.suction.bore', 'asFound').si).toBeCloseTo(0.0127, 12);
    const same = accept(job, 'hose.suction.bore', '1/2 in', 'candidate');
    expect(same.candidate!.changes).toEqual({});
    expect(accept(job, 'hose.suction.bore', '', 'candidate').candidate!.changes).toEqual({});
  });
  it('follows the loop as found in what it does not change', () => {
    const job = accept(startCandidate(emptyJob()), 'site.ambient', '100 °F');
    expect(evaluate(job).candidate!.loop.site.ambientTemperature).toBeCloseTo(310.93, 2);
  });
  it('leaves what was solved of the loop as found alone', () => {
    const job = accept(startCandidate(emptyJob()), 'pump.volts', '12 V');
    const next = accept(job, 'pump.volts', '13 V', 'candidate');
    expect(evaluate(next).asFound).toBe(evaluate(job).asFound);
    expect(evaluate(next).candidate).not.toBe(evaluate(job).candidate);
    const found = accept(next, 'fans.volts', '11 V');
    expect(evaluate(found).candidate!.loop.fans.volts).toBe(11);
  });
  it('keeps its refused drafts to itself', () => {
    const job = applyEdit(startCandidate(emptyJob()), 'candidate', 'pump.volts', 'x').job;
    expect(evaluate(job).candidate!.problems).toHaveLength(1);
    expect(evaluate(job).asFound.problems).toHaveLength(0);
  });
  it('becomes the loop as found when the change was made', () => {
    const job = accept(emptyJob(), 'fans.volts', '13.6 V', 'candidate');
    const candidate = evaluate(job).candidate!.loop;
    const done = promoteCandidate(job);
    expect(done.candidate).toBeNull();
    expect(evaluate(done).asFound.loop).toEqual(candidate);
  });
  it('is protected from an edit of the loop as found that contradicts it', () => {
    const job = accept(
      accept(emptyJob(), 'reservoir.totalVolume', '9 gal'),
      'reservoir.volume',
      '8 gal',
      'candidate',
    );
    const edited = applyEdit(job, 'asFound', 'reservoir.totalVolume', '5 gal');
    expect(edited.problem).toMatch(/In the candidate/);
  });
});

describe('words beside a value', () => {
  it('keeps ± in its own unit or in per cent', () => {
    const job = setPm(emptyJob(), 'asFound', 'site.ambient', '± 2 °F').job;
    expect(value(job, 'site.ambient').pm).toBeCloseTo(2 / 1.8, 12);
    const percent = setPm(job, 'asFound', 'pump.electricPower', '10 %').job;
    expect(value(percent, 'pump.electricPower').pm).toBeCloseTo(7, 12);
    expect(setPm(job, 'asFound', 'site.ambient', '-2 F').problem).toMatch(/negative/);
    expect(setPm(job, 'asFound', 'coolant.kind', '1').problem).toMatch(/Only a value/);
    expect(setPm(job, 'asFound', 'site.ambient', '').job.asFound).toEqual({});
  });
  it('keeps where it came from, over an edit', () => {
    const job = setFrom(emptyJob(), 'asFound', 'pump.volts', 'meter at the plug');
    expect(accept(job, 'pump.volts', '12 V').asFound['pump.volts']).toEqual({
      is: '12 V',
      from: 'meter at the plug',
    });
  });
  it('lets a field go back to its default', () => {
    const job = accept(emptyJob(), 'pump.volts', '12 V');
    expect(clearField(job, 'asFound', 'pump.volts').job.asFound).toEqual({});
  });
});

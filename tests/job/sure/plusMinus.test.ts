/** What a ± says by its kind, from the blank to the draws. */
import { describe, expect, it } from 'vitest';
import { applyEdit, setPm } from '$lib/job/edit';
import { evaluate } from '$lib/job/evaluate';
import { readJob, writeJob } from '$lib/job/file/file';
import { distributionOf, standardUncertainty } from '$lib/job/sure/plusMinus';
import { setCoverage, setSpread } from '$lib/job/sure/plusMinusEdits';
import { uncertainOf } from '$lib/job/sure/surenessInputs';
import { toReadings } from '$lib/job/models/toReadings';
import { emptyJob, SPREADS, type Job } from '$lib/job/types';
import { resolve } from '$lib/job/values';

const PATH = 'site.ambient';
const hot = setPm(
  applyEdit(emptyJob(), 'asFound', PATH, '95 °F').job,
  'asFound',
  PATH,
  '3.6 °F',
).job;
const valueOf = (job: Job) => resolve(job, 'asFound').values[PATH]!;
const uncertainty = (job: Job) => standardUncertainty(valueOf(job));

describe('standard uncertainty of ± 2 K by its kind', () => {
  // JCGM 100:2008: 4.3.7 (interval), 4.3.9 (triangular), 4.3.3 (calibration); two sd by our own statement.
  it.each([
    ['normal', 1],
    ['interval', 2 / Math.sqrt(3)],
    ['triangular', 2 / Math.sqrt(6)],
    ['calibration', 1],
  ] as const)('%s', (kind, u) =>
    expect(uncertainty(setSpread(hot, 'asFound', PATH, kind))).toBeCloseTo(u, 9),
  );
  it('a certificate’s own factor counts, however it is written', () => {
    const certified = setSpread(hot, 'asFound', PATH, 'calibration');
    for (const text of ['3', 'k = 3', ' k=3'])
      expect(uncertainty(setCoverage(certified, 'asFound', PATH, text))).toBeCloseTo(2 / 3, 9);
  });
  it('an interval is never left, the tails of a normal one are', () => {
    const d = distributionOf(valueOf(setSpread(hot, 'asFound', PATH, 'interval')))!;
    expect(d.kind).toBe('interval');
    if (d.kind !== 'interval') return;
    expect(d.high - d.low).toBeCloseTo(4, 9);
  });
});

describe('a ± that is wider one way', () => {
  const uneven = (text: string, kind: (typeof SPREADS)[number] = 'interval') =>
    valueOf(setSpread(setPm(hot, 'asFound', PATH, text).job, 'asFound', PATH, kind));
  it.each([
    ['+5.4 °F / −1.8 °F', 3, 1],
    ['+5.4 / −1.8 °F', 3, 1],
    ['-1.8, +5.4 °F', 3, 1],
    ['+3 K −1 K', 3, 1],
    ['+0 / -1 K', 0, 1],
  ])('“%s” is %s K up and %s K down', (text, up, down) => {
    const { pm, pmDown, pmMessage } = uneven(text);
    expect(pmMessage).toBeUndefined();
    expect(pm).toBeCloseTo(up, 9);
    expect(pmDown).toBeCloseTo(down, 9);
  });
  it('counts by JCGM 100:2008, 4.3.8: (b+ + b−) / √12; as a triangle by its moments', () => {
    expect(standardUncertainty(uneven('+3 K / −1 K'))).toBeCloseTo(4 / Math.sqrt(12), 9);
    // Variance of a triangle from a to b with its peak at c: (a² + b² + c² − ab − ac − bc) / 18; here −1, 3, 0.
    expect(standardUncertainty(uneven('+3 K / −1 K', 'triangular'))).toBeCloseTo(
      Math.sqrt((1 + 9 + 3) / 18),
      9,
    );
  });
  it('lies between its own bounds, likeliest at the value', () => {
    const { si } = valueOf(hot);
    const d = distributionOf(uneven('+3 K / −1 K', 'triangular'))!;
    expect(d).toMatchObject({ kind: 'triangular', mode: si });
    if (d.kind !== 'triangular') return;
    expect(d.high - si!).toBeCloseTo(3, 9);
    expect(si! - d.low).toBeCloseTo(1, 9);
  });
  it('equal both ways is a plain ±', () => {
    const value = uneven('+2 K / −2 K', 'normal');
    expect(value.pmText).toBe('2 K');
    expect(value.pm).toBeCloseTo(2, 9);
    expect(value.pmDown).toBeUndefined();
  });
  it.each(['normal', 'calibration'] as const)('is refused as %s until it has bounds', (kind) => {
    const value = uneven('+3 K / −1 K', kind);
    expect(value.pmMessage).toContain('how the value lies');
    expect(value.pmText).toBe('+3 K / −1 K');
    expect(distributionOf(value)).toBeNull();
  });
  it.each([
    ['+3 / +1 K', /one half width up and one down/],
    ['+3 K / −x', /./],
    ['+a / −1 K', /./],
    ['+3 gpm / −1 K', /./],
  ])('“%s” is refused with a reason, its text kept', (text, says) => {
    const value = uneven(text);
    expect(value.pmMessage).toMatch(says);
    expect(value.pmText).toBe(text);
    expect(value.pm).toBeUndefined();
  });
  it('per cent of the value each way', () => {
    const job = setSpread(
      setPm(emptyJob(), 'asFound', 'pump.electricPower', '+10 / −5 %').job,
      'asFound',
      'pump.electricPower',
      'interval',
    );
    const { si, pm, pmDown } = resolve(job, 'asFound').values['pump.electricPower']!;
    expect(pm! / si!).toBeCloseTo(0.1, 12);
    expect(pmDown! / si!).toBeCloseTo(0.05, 12);
  });
});

describe('a coverage factor that is none', () => {
  const certified = setSpread(hot, 'asFound', PATH, 'calibration');
  it.each(['0', '-2', 'abc', '2 °F', '95 %', '40'])('“%s” is refused, its text kept', (text) => {
    const value = valueOf(setCoverage(certified, 'asFound', PATH, text));
    expect(value.kMessage).toContain('coverage factor');
    expect(value.kText).toBe(text);
    expect(value.pmText).toBe('3.6 °F');
    // Nobody knows what the ± says: it counts for nothing until it does.
    expect(value.pm).toBeUndefined();
    expect(distributionOf(value)).toBeNull();
  });
  it('matters only to a calibration', () => {
    const other = setSpread(
      setCoverage(certified, 'asFound', PATH, 'abc'),
      'asFound',
      PATH,
      'normal',
    );
    expect(valueOf(other).kMessage).toBeUndefined();
    expect(uncertainty(other)).toBeCloseTo(1, 9);
    expect(other.asFound[PATH]!.k).toBe('abc');
  });
});

describe('kinds in a job', () => {
  it.each(SPREADS)('%s travels in the file', (kind) => {
    const job = setCoverage(setSpread(hot, 'asFound', PATH, kind), 'asFound', PATH, '2.5');
    const again = readJob(writeJob(job));
    expect(again.ok && valueOf(again.job)).toEqual(valueOf(job));
  });
  it('taking everything away leaves nothing behind', () => {
    const job = setCoverage(setSpread(hot, 'asFound', PATH, 'calibration'), 'asFound', PATH, '3');
    const bare = setCoverage(setSpread(job, 'asFound', PATH, 'normal'), 'asFound', PATH, ' ');
    expect(bare.asFound[PATH]).toEqual(hot.asFound[PATH]);
  });
  it('a candidate’s own value has its own ±', () => {
    let job = applyEdit(hot, 'candidate', 'fans.volts', '13 V').job;
    job = setPm(job, 'candidate', 'fans.volts', '0.6 V').job;
    job = setSpread(job, 'candidate', 'fans.volts', 'interval');
    const { asFound, candidate } = evaluate(job);
    expect(uncertainOf(asFound.values).map(({ path }) => path)).toEqual([PATH]);
    const own = uncertainOf(candidate!.values).find(({ path }) => path === 'fans.volts')!;
    expect(own.distribution).toEqual({ kind: 'interval', low: 12.4, high: 13.6 });
  });
  it('a reading is weighed by its kind too', () => {
    const at = 'measured.cruise.reservoir';
    let job = setPm(applyEdit(emptyJob('SI'), 'asFound', at, '60 °C').job, 'asFound', at, '3').job;
    const sigma = () => toReadings(resolve(job, 'asFound').values)[0]!.sigma;
    expect(sigma()).toBeCloseTo(1.5, 9);
    job = setSpread(job, 'asFound', at, 'interval');
    expect(sigma()).toBeCloseTo(Math.sqrt(3), 9);
  });
});

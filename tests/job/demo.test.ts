import { describe, expect, it } from 'vitest';
import { demoJob } from '$lib/job/demo';
import { evaluate } from '$lib/job/evaluate';
import { readJob, writeJob } from '$lib/job/file/file';

const FAHRENHEIT = (T: number) => (T - 273.15) * 1.8 + 32;

describe('the demonstration job', () => {
  const { asFound, candidate } = evaluate(demoJob());

  it('is read without a note or a refused value, and comes back from a file', () => {
    expect(asFound.problems).toEqual([]);
    expect(candidate!.problems).toEqual([]);
    expect(readJob(writeJob(demoJob()))).toMatchObject({ ok: true, notes: [], job: demoJob() });
  });
  it('says that it is invented', () => {
    expect(demoJob().header.invented).toMatch(/invented/);
    expect(demoJob().notes.job).toMatch(/^Invented/);
  });
  it('has a hot tank whose temperature the intake air shows, and a candidate that mends it', () => {
    for (const duty of ['traffic', 'cruise'] as const) {
      const found = asFound.steady[duty];
      const planned = candidate!.steady[duty];
      if (!found.ok || !planned.ok) throw new Error('no solution');
      const { temperatures, chargeOut, status } = found.value;
      expect(status).toBe('balanced');
      expect(FAHRENHEIT(temperatures.reservoir)).toBeGreaterThan(190);
      expect(FAHRENHEIT(temperatures.reservoir)).toBeLessThan(200);
      expect(Math.abs(chargeOut! - temperatures.chargeCoolerIn)).toBeLessThan(2);
      expect(FAHRENHEIT(planned.value.temperatures.reservoir)).toBeLessThan(130);
    }
  });
  it('runs through its schedule on both sides', () => {
    for (const side of [asFound, candidate!]) {
      expect(side.warmUp).toMatchObject({ ok: true });
      expect(side.warmUp.ok && side.warmUp.value.energyError).toBeLessThan(1e-4);
    }
  });
});

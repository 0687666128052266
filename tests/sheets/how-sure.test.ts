import { describe, expect, it } from 'vitest';
import { applyEdit, setPm } from '$lib/job/edit';
import { evaluate } from '$lib/job/evaluate';
import { demoJob } from '$lib/job/demo';
import { emptyJob, type Job } from '$lib/job/types';
import { content } from '../../sheets/how-sure/content';
import { shareRows } from '../../sheets/how-sure/charts';
import { candidateRows } from '../../sheets/how-sure/candidates';

const codes = (job: Job) => content(evaluate(job).asFound).findings.map(({ code }) => code);
const limited = (limit: string): Job => {
  const job = applyEdit(emptyJob(), 'asFound', 'limits.reservoir', limit).job;
  return setPm(job, 'asFound', 'site.ambient', '6 °F').job;
};

describe('how sure', () => {
  it('asks for a ± where there is none', () =>
    expect(codes(emptyJob())).toEqual(['no-plus-minus']));

  it('tells a sure answer, a hopeless one and an open one apart', () => {
    const [{ value }] = [
      content(evaluate(limited('400 °F')).asFound).results.find(
        ({ id }) => id === 'reservoir-cruise-middle',
      )!,
    ];
    const fahrenheit = (K: number) => `${K * 1.8 - 459.67} °F`;
    expect(codes(limited(fahrenheit(value! + 20)))).toContain('reservoir-cruise-sure');
    expect(codes(limited(fahrenheit(value! - 20)))).toContain('reservoir-cruise-hopeless');
    expect(codes(limited(fahrenheit(value!)))).toContain('reservoir-cruise-open');
    expect(codes(limited('400 °F'))).toContain('measure-first');
  }, 60_000);

  it('a share is told with no more decimals than its ±', () => {
    const decimals = (error: number) => {
      const doubt = { path: 'site.ambient', first: 0.572, firstError: error };
      const shares = [{ ...doubt, total: 0.572, totalError: error }];
      const doubts = { of: 'charge-cruise', shares, runs: 1 } as const;
      return shareRows(doubts, null, 'total', false, 'US')[0]!.decimals;
    };
    expect([0.0625, 0.0125, 0.0012].map(decimals)).toEqual([0, 1, 1]);
  });

  it('demonstration: the candidate beats the loop as found in nearly every draw', () => {
    const evaluated = evaluate(demoJob());
    const all = [
      { name: 'as found', side: evaluated.asFound },
      { name: 'planned', side: evaluated.candidate! },
    ];
    for (const id of ['charge-cruise', 'flow-cruise'] as const) {
      const [found, planned] = candidateRows(all, id);
      expect(planned!.against[0]!.chance).toBeGreaterThan(0.99);
      expect(found!.against[1]!.chance).toBeLessThan(0.01);
      expect(found!.against[0]).toBeNull();
    }
    const { results, lines } = content(evaluated.asFound);
    for (const id of ['charge-cruise', 'reservoir-traffic'] as const) {
      const at = (part: string) => results.find((r) => r.id === `${id}-${part}`)!.value!;
      expect(at('low')).toBeLessThan(at('middle'));
      expect(at('middle')).toBeLessThan(at('high'));
    }
    expect(lines.length).toBeGreaterThan(4);
  }, 60_000);
});

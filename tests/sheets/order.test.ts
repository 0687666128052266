/** The sheets told of a loop whose liquid passes the front exchanger first. */
import { describe, expect, it } from 'vitest';
import { evaluate } from '$lib/job/evaluate';
import { content } from '../../sheets/loop-balance/content';
import { demoJob, edited } from './jobs';

const sideOf = (changes: Readonly<Record<string, string>>) =>
  evaluate(edited(demoJob(), { 'view.duty': 'cruise', ...changes })).asFound;
const usual = sideOf({});
const other = sideOf({ 'loop.liquidOrder': 'front-first' });
const said = (side: typeof usual, code: RegExp) =>
  content(side).findings.find((finding) => code.test(finding.code));
const numbers = (finding: ReturnType<typeof said>) =>
  finding!.sentence.flatMap((part) => (typeof part === 'string' ? [] : [part.value]));
const temperatures = (side: typeof usual) => {
  const outcome = side.steady.cruise;
  if (!outcome.ok) throw new Error('the demonstration settles');
  return outcome.value.temperatures;
};

describe('loop balance', () => {
  it('the tank is told to be the hottest only where the cooler comes last, with its two numbers', () => {
    expect(said(usual, /^front-first$/)).toBeUndefined();
    const t = temperatures(other);
    expect(numbers(said(other, /^front-first$/))).toEqual([t.reservoir, t.chargeCoolerIn]);
  });
  it('is measured against loops that are well by the liquid that meets the charge', () => {
    const approach = (side: typeof usual) => numbers(said(side, /^approach-/))[0];
    const ambient = usual.loop.site.ambientTemperature;
    expect(approach(usual)).toBeCloseTo(temperatures(usual).reservoir - ambient, 9);
    expect(approach(other)).toBeCloseTo(temperatures(other).chargeCoolerIn - ambient, 9);
  });
  it('heat into the hoses and the tank is worked out from the liquid that arrives there', () => {
    const t = temperatures(other);
    const given = (id: string) => {
      const line = content(other).lines.find((one) => one.id === id);
      return line?.kind === 'formula' ? line.x.T_l : undefined;
    };
    expect(given('hose-soak')).toBe(t.frontOut);
    expect(given('loop.reservoir-soak')).toBe(t.chargeCoolerOut);
  });
});

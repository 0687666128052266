import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { dropCandidate } from '$lib/job/edit';
import { evaluate } from '$lib/job/evaluate';
import type { Candidate } from '$lib/job/types';
import { SHEETS } from '$sheets/abouts';
import { answerAtOnce } from '$sheets/gathering/answer';
import { gather, type Gathered } from '$sheets/gathering/gather';
import { answerIn, pastLimits, withPlusMinus } from '$sheets/gathering/standing';
import { FOUND_ONLY, strongest } from '$sheets/gathering/strongest';
import { headlineOf } from '$sheets/headline';
import type { FindingLevel, Sentence } from '$sheets/types';
import { drawnSides } from '$lib/job/sure/drawnSide';
import { SEED } from '$lib/job/sure/sureness';
import { uncertainOf } from '$lib/job/sure/surenessInputs';
import { DRIVES } from '$lib/job/upgrades/driven';
import { warmUp } from '$lib/solver/loop/warmUp';
import { propagate } from '$lib/solver/uncertainty/propagate';
import { demoJob } from './jobs';

const part = (
  sheet: string,
  findings: readonly (readonly [FindingLevel, string])[],
  side: Gathered['side'] = 'asFound',
): Gathered => ({
  sheet,
  side,
  results: [],
  findings: findings.map(([level, text]) => ({ code: text, level, sentence: [text] })),
});
const words = (of: ReturnType<typeof strongest>) => of.shown.map(({ finding }) => finding.code);

describe('findings on the cover', () => {
  const parts = [
    part('one', [
      ['watch', 'w1'],
      ['act', 'a1'],
      ['act', 'a2'],
      ['good', 'g'],
    ]),
    part('two', [
      ['act', 'b1'],
      ['info', 'i'],
      ['act', 'a1'],
    ]),
  ];

  it('ask for action first, sheet by sheet, the same words once; what explains stays behind', () => {
    const all = strongest(parts, ['one', 'two'], 'asFound', 10);
    expect(words(all)).toEqual(['a1', 'b1', 'a2', 'w1']);
    expect(all.left).toBe(0);
  });

  it('follow the folder: its sheets in its order', () => {
    expect(words(strongest(parts, ['two', 'one'], 'asFound', 10))).toEqual([
      'b1',
      'a1',
      'a2',
      'w1',
    ]);
    expect(words(strongest(parts, ['two'], 'asFound', 10))).toEqual(['b1', 'a1']);
    expect(words(strongest(parts, [], 'asFound', 10))).toEqual([]);
  });

  it('say how many more there are', () => {
    const some = strongest(parts, ['one', 'two'], 'asFound', 3);
    expect(words(some)).toEqual(['a1', 'b1', 'a2']);
    expect(some.left).toBe(1);
  });

  it('of a candidate leave out the sheets that are about what was measured', () => {
    const planned = [
      part('one', [['act', 'x']], 'candidate'),
      part('diagnosis', [['act', 'y']], 'candidate'),
    ];
    expect(words(strongest(planned, ['one', 'diagnosis'], 'candidate', 10))).toEqual(['x']);
  });

  it('know those sheets by what their pages say of themselves', () => {
    const alone = SHEETS.filter(({ slug }) => {
      const page = readFileSync(`sheets/${slug}/Sheet.svelte`, 'utf8');
      const frame = /<SheetFrame\b[^]*?\n?>\n/.exec(page)![0];
      return /^\s*foundOnly$|\sfoundOnly>/m.test(frame);
    });
    expect(alone.map(({ slug }) => slug).toSorted()).toEqual([...FOUND_ONLY].toSorted());
  });
});

describe('the cover of the demonstration job', { timeout: 60_000 }, () => {
  const all = evaluate(demoJob());
  const parts: Gathered[] = [];
  for (const part of gather(all)) {
    parts.push(part);
    if (part.sheet === 'upgrades' && part.side === 'candidate') break;
  }
  const findings = parts.find(
    ({ sheet, side }) => sheet === 'upgrades' && side === 'asFound',
  )!.findings;
  const found = (code: string) => findings.find((one) => one.code === code)!.sentence;
  const plain = (words: Sentence) =>
    words.map((part) => (typeof part === 'string' ? part : '#')).join('');

  it('answers in the words and numbers of the sheet that compares: first, next, best for the budget', () => {
    const { leads, paragraphs } = answerIn(parts)!;
    const first = leads.at(-1)!;
    const [limit, best] = [paragraphs[0]!, paragraphs[1]!];
    expect(first).toEqual(found('first'));
    expect(best.slice(0, found('best-within').length)).toEqual(found('best-within'));
    const other = found('otherwise').slice(1);
    expect(best.slice(-other.length)).toEqual(other);
    expect(plain(first)).toMatch(/^Do “.*duct.* first: # take # off .* Next is “/i);
    const [cost, gain] = first.filter((part) => typeof part !== 'string');
    expect(cost).toMatchObject({ quantity: 'money' });
    expect(gain!.plusMinus).toBeGreaterThan(0);
    expect(plain(limit)).toContain('keeps the limit');
  });

  it('has no answer where nothing has a price', () => {
    const job = demoJob();
    const unpriced = (one: Candidate): Candidate => ({ ...one, parts: [] });
    expect(
      answerAtOnce(
        evaluate({
          ...job,
          candidate: unpriced(job.candidate!),
          aside: job.aside.map(unpriced),
        }),
      ),
    ).toBeNull();
    expect(answerAtOnce(evaluate({ ...dropCandidate(job), aside: [] }))).toBeNull();
  });

  it('does not say the answer again among the warnings', () => {
    const unsure = [
      part('upgrades', [
        ['watch', 'first'],
        ['watch', 'alike'],
      ]),
    ];
    expect(words(strongest(unsure, ['upgrades'], 'asFound', 9, true))).toEqual(['alike']);
    expect(words(strongest(unsure, ['upgrades'], 'asFound', 9))).toEqual(['first', 'alike']);
  });

  it('gives settled temperatures the ± that their sheet draws, and none before that is gathered', () => {
    const shown = withPlusMinus(headlineOf(all.asFound), parts, 'asFound');
    const drawn = parts.find(({ sheet, side }) => sheet === 'how-sure' && side === 'asFound')!;
    const middle = drawn.results.find(({ id }) => id === 'charge-cruise-middle')!;
    const of = (id: string) => shown.find((one) => one.id === id)!.plusMinus;
    expect(of('cruise.charge-out')).toBe(middle.plusMinus);
    expect(of('cruise.reservoir')).toBeGreaterThan(0);
    expect(of('traffic.reservoir')).toBeGreaterThan(0);
    expect(withPlusMinus(headlineOf(all.asFound), [], 'asFound')).toEqual(headlineOf(all.asFound));
  });

  it.each(['asFound', 'candidate'] as const)(
    'gives the hottest charge of the drive of %s the ± of its own drives, followed one by one',
    (id) => {
      // By hand: the drive of each drawn loop with nothing thinned out, its peak read, the middle 95 %.
      const side = all[id]!;
      const inputs = uncertainOf(side.values);
      const at = drawnSides(side, inputs);
      const work = propagate(
        {
          inputs: inputs.map(({ distribution }) => distribution),
          axes: inputs.map(({ axis }) => axis),
          outputs: 1,
          samples: DRIVES.atOnce,
          seed: SEED,
        },
        (x) => {
          const { prepared, request } = at(x)!;
          if (!prepared.ok || !request.ok) throw new Error('not solved');
          return [warmUp(prepared.value, request.value).peakCharge!.value];
        },
      );
      let step = work.next();
      while (!step.done) step = work.next();
      const peaks = [...step.value.results[0]!].sort((a, b) => a - b);
      // 32 draws: the 2.5 % and 97.5 % places are 0.775 of the way between the outer two.
      expect(peaks).toHaveLength(32);
      const low = peaks[0]! + 0.775 * (peaks[1]! - peaks[0]!);
      const high = peaks[31]! - 0.775 * (peaks[31]! - peaks[30]!);
      const shown = withPlusMinus(headlineOf(side), parts, id);
      const { plusMinus, value } = shown.find((one) => one.id === 'peak-charge')!;
      expect(plusMinus).toBeCloseTo((high - low) / 2, 3);
      expect(low).toBeLessThan(value!);
      expect(high).toBeGreaterThan(value!);
    },
  );

  it('tells the ± of where the best ends where the answer does not look', () => {
    const [, at] = found('otherwise').filter((part) => typeof part !== 'string');
    const [T] = found('otherwise').filter((part) => typeof part !== 'string');
    expect(T).toMatchObject({ quantity: 'temperature' });
    expect(T!.plusMinus).toBeGreaterThan(0);
    // The limit is what somebody set.
    expect(at!.plusMinus).toBeUndefined();
  });

  it('names what of the candidate is past its limit though its sheets warn of nothing', () => {
    const sheets = ['loop-balance', 'upgrades'];
    const headline = headlineOf(all.candidate!);
    expect(strongest(parts, sheets, 'candidate', 8, true).shown).toEqual([]);
    const past = pastLimits(headline, parts, sheets, 'candidate');
    expect(plain(past)).toMatch(
      /^Past the limit: Charge air to the engine, hottest of the drive, #/,
    );
    expect(past).toContainEqual({
      value: headline.find(({ id }) => id === 'peak-charge')!.value,
      quantity: 'temperature',
    });
    const kept = headline.filter(({ state }) => state !== 'over');
    expect(pastLimits(kept, [], sheets, 'candidate')).toEqual([]);
  });
});

import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { SHEETS } from '$sheets/abouts';
import type { Gathered } from '$sheets/gathering/gather';
import { FOUND_ONLY, strongest } from '$sheets/gathering/strongest';
import type { FindingLevel } from '$sheets/types';

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

/**
 * Every line of every sheet, both sides, every duty, both systems of units: recomputed from the printed
 * numbers with their units. See walk.ts for what is asked of a line.
 */
import { describe, expect, it } from 'vitest';
import { evaluate } from '$lib/job/evaluate';
import { SHEETS } from '../../sheets/abouts';
import type { ContentOf } from '../../sheets/types';
import { DUTY_IDS, JOBS, shown } from './jobs';
import { walkContent } from './walk';

const MODULES = import.meta.glob<{ content: ContentOf }>('../../sheets/*/content.ts');

describe.each(SHEETS)('$slug', ({ slug }) => {
  it.each(Object.keys(JOBS))(
    'every line can be rebuilt from the print: %s',
    async (name) => {
      const load = MODULES[`../../sheets/${slug}/content.ts`];
      expect(load, 'the sheet has content').toBeDefined();
      const { content } = await load!();
      const complaints: string[] = [];
      let lines = 0;
      for (const duty of DUTY_IDS) {
        for (const units of ['US', 'SI'] as const) {
          const all = evaluate(shown(JOBS[name]!(), duty, units));
          const { asFound, candidate } = all;
          for (const side of [asFound, candidate]) {
            if (!side) continue;
            const said = content(side, all);
            lines += said.lines.length;
            complaints.push(
              ...walkContent(said, units).map((c) => `${duty}, ${side.id}, ${units}: ${c}`),
            );
          }
        }
      }
      expect(complaints).toEqual([]);
      // Even a loop that stands still has things to be said about it; the plain job has lines to walk.
      if (name === 'as it comes') expect(lines).toBeGreaterThan(30);
    },
    60_000,
  );
});

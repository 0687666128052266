/** Lines: the chance counted, how far it can be trusted, what knowing an input would take away. */
import type { Side } from '$lib/job/evaluate';
import { STUDIED, type Doubts, type Sureness } from '$lib/job/sure/sureness';
import { formulaLine, type Line } from '$lib/solver/formula';
import { chanceError, chanceFormula, uncertaintyLeft } from '$lib/solver/uncertainty/formulas';
import { meetsLimit, spreadOf, SUBJECT } from './study';
import { nameOf, WORTH } from './words';

export function lines(side: Side, study: Sureness, doubts: Doubts | null): Line[] {
  const all: Line[] = [];
  for (const id of STUDIED) {
    const met = meetsLimit(side, study, id);
    const s = spreadOf(study, id);
    if (met === null || !s) continue;
    const { name } = SUBJECT[id];
    const N = s.count;
    all.push(
      formulaLine(
        chanceFormula,
        { n: Math.round(met * N), N },
        {
          id: `${id}.chance`,
          statement: `${name}: chance of meeting its limit`,
          why: 'Every draw is a loop that the inputs’ ± allow, solved like the loop itself.',
        },
      ),
      // All or none: that law of errors says nothing there.
      ...(met > 0 && met < 1
        ? [
            formulaLine(
              chanceError,
              { p: met, N },
              {
                id: `${id}.chance-error`,
                statement: `${name}: how far that chance can be trusted`,
                why: 'More draws make it sharper; the ± of the inputs themselves they do not.',
              },
            ),
          ]
        : []),
    );
  }
  const s = doubts && spreadOf(study, doubts.of);
  for (const { path, total } of (doubts?.shares ?? []).slice(0, 3)) {
    if (!s || !(total > WORTH) || !(total < 1)) continue;
    all.push(
      formulaLine(
        uncertaintyLeft,
        { u: s.sd, S: total },
        {
          id: `left.${path}`,
          statement: `${SUBJECT[doubts.of].name}, if “${nameOf(path)}” were known exactly`,
          why: 'The input that takes most of the uncertainty away is the one to measure first.',
        },
      ),
    );
  }
  return all;
}

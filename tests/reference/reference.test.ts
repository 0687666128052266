/**
 * Every reference case against the solver. `npm run test:reference`; another folder of the same
 * schema: `REFERENCE_DIR=folder npm run test:reference`.
 */
import { afterAll, describe, expect, it } from 'vitest';
import { adapters } from './adapters';
import { loadFolder, referenceFolder, runCase, type Outcome } from './harness';
import { detailLine, report } from './report';

const { files, malformed } = loadFolder(referenceFolder());
const outcomes: Outcome[] = [];

for (const line of malformed) it(line, () => expect.fail(line));

for (const file of files) {
  describe(file.topic, () => {
    for (const c of file.cases) {
      it(`${c.id} ${c.op}`, ({ skip }) => {
        const outcome = runCase(file, c, adapters);
        outcomes.push(outcome);
        if (outcome.state === 'unsupported') skip(outcome.message);
        if (outcome.state === 'fail') expect.fail(detailLine(outcome).trim());
      });
    }
  });
}

afterAll(() => console.log(report(outcomes, malformed)));

/**
 * `npm run folder -- job.json --out DIR`: the job folder without a screen. Prints of every chosen sheet
 * and of the whole, results and inputs as files, and the job itself. Plain Node: no package is there yet.
 */
import { join } from 'node:path';
// As a whole: an old Node lacks parseArgs, and must still get as far as being told so.
import util from 'node:util';
import { ROOT, ensurePackages, requireNode, stop } from './install.mjs';

const USAGE = 'npm run folder -- job.json --out DIR [--no-build]';
const HELP = `${USAGE}

Writes into DIR, which is made where it is not there:
  folder.pdf                the cover and the sheets chosen in the job, in their order
  01-<sheet>.pdf ...        each of them by itself
  results.csv results.json  results of every sheet: as printed, and in SI with every digit
  inputs.csv                inputs as typed, with their ± and where they came from
  job.json                  the job itself, which opens again

Paper, units, sheets and their order are those of the job. Needs Chromium or Chrome: the first on the
PATH, or the one that CHROMIUM names. --no-build prints with the build that is there.
`;

requireNode();
const { job, out, noBuild } = options();
ensurePackages();
const { register } = await import('tsx/esm/api');
register({ tsconfig: join(ROOT, 'tsconfig.json') });
const { writeFolder } = await import('./folder/write.ts');
await writeFolder(job, out, noBuild);

/** What the command line asks for, or a clear refusal. */
function options() {
  try {
    const { values, positionals } = util.parseArgs({
      allowPositionals: true,
      options: {
        out: { type: 'string' },
        'no-build': { type: 'boolean', default: false },
        help: { type: 'boolean', default: false },
      },
    });
    if (values.help) {
      process.stdout.write(HELP);
      process.exit(0);
    }
    const [job, ...more] = positionals;
    if (job === undefined) throw new Error('No job file is named.');
    if (more.length > 0) throw new Error(`One job at a time; “${more[0]}” is one too many.`);
    if (!values.out) throw new Error('--out DIR is missing.');
    return { job, out: values.out, noBuild: values['no-build'] };
  } catch (error) {
    const [first] = /** @type {Error} */ (error).message.split('\n');
    return stop(`${first} Usage: ${USAGE}`);
  }
}

/**
 * `npm run solve -- job.json`: read a job, evaluate it, print every sheet's results as found, of the
 * candidate in hand and of every one put aside: as JSON in SI units, with `--text` to be read, in the
 * units of the job. A job that cannot be read: one line on stderr, exit code 1.
 */
import { fail, readJobFile } from './jobFile';

async function main(args: readonly string[]): Promise<void> {
  const asText = args.includes('--text');
  const [path, ...more] = args.filter((arg) => arg !== '--text');
  if (path === undefined || path.startsWith('-') || more.length > 0) {
    return fail('usage: npm run solve -- job.json [--text]');
  }
  const read = readJobFile(path);
  if (!read.ok) return fail(read.message);

  // Loaded only now, so that a bad file is refused at once.
  const { evaluate } = await import('../lib/job/evaluate');
  const { gather, gatherAside } = await import('../../sheets/gathering/gather');
  const { jobReport, jsonText } = await import('../../sheets/gathering/report');
  const { reportText } = await import('../../sheets/gathering/text');
  const { job, notes } = read;
  const all = evaluate(job);
  const gathered = [...gather(all, true)];
  const aside = [...gatherAside(all)];
  process.stdout.write(
    asText
      ? reportText(job, gathered, notes, aside)
      : jsonText(jobReport(job, gathered, notes, aside)),
  );
}

await main(process.argv.slice(2));

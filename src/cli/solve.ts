/**
 * `npm run solve -- job.json`: read a job, evaluate it, print every sheet's results as JSON, SI units.
 * A job that cannot be read: one line on stderr, exit code 1.
 */
import { fail, readJobFile } from './jobFile';

async function main(paths: readonly string[]): Promise<void> {
  const [path, ...more] = paths;
  if (path === undefined || more.length > 0) return fail('usage: npm run solve -- job.json');
  const read = readJobFile(path);
  if (!read.ok) return fail(read.message);

  // Loaded only now, so that a bad file is refused at once.
  const { evaluate } = await import('../lib/job/evaluate');
  const { gather } = await import('../../sheets/gathering/gather');
  const { jobReport, jsonText } = await import('../../sheets/gathering/report');
  const { job, notes } = read;
  process.stdout.write(jsonText(jobReport(job, [...gather(evaluate(job))], notes)));
}

await main(process.argv.slice(2));

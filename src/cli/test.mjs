/** `npm test`: installs what is missing, builds once, runs every test, ends with one plain line. */
import { spawnSync } from 'node:child_process';
import { mkdirSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { ROOT, build, ensureChromium, ensurePackages, requireNode } from './install.mjs';

const RESULTS = join(ROOT, 'test-results');

requireNode();
ensurePackages();
const chromium = ensureChromium();
build();
rmSync(RESULTS, { recursive: true, force: true });
mkdirSync(RESULTS);

// The browser runs last and alone, so that nothing competes with the page it watches.
const total = { passed: 0, failed: 0, skipped: 0 };
for (const projects of [['unit', 'reference'], ['browser']]) {
  const counts = run(projects);
  total.passed += counts.passed;
  total.failed += counts.failed;
  total.skipped += counts.skipped;
}
const skipped = total.skipped > 0 ? `, ${total.skipped} skipped` : '';
console.log(`${total.passed} passed, ${total.failed} failed${skipped}`);
process.exitCode = total.failed > 0 || total.passed === 0 ? 1 : 0;

/** @param {string[]} projects */
function run(projects) {
  const file = join(RESULTS, `${projects.join('-')}.json`);
  const ran = spawnSync(
    process.execPath,
    [
      join(ROOT, 'node_modules/vitest/vitest.mjs'),
      'run',
      ...projects.map((name) => `--project=${name}`),
      '--reporter=default',
      '--reporter=json',
      `--outputFile.json=${file}`,
    ],
    { cwd: ROOT, stdio: 'inherit', env: { ...process.env, CHROMIUM: chromium } },
  );
  const counts = readCounts(file);
  // A run that ends badly without a failed test (a crash, a stray rejection) is a failure as well.
  if (ran.status !== 0 && counts.failed === 0) counts.failed = 1;
  return counts;
}

/** @param {string} file */
function readCounts(file) {
  try {
    const report = JSON.parse(readFileSync(file, 'utf8'));
    /** A file that could not be loaded holds no test, and fails. @param {{ status: string, assertionResults: unknown[] }} f */
    const unloaded = (f) => f.status === 'failed' && f.assertionResults.length === 0;
    return {
      passed: report.numPassedTests,
      failed: report.numFailedTests + report.testResults.filter(unloaded).length,
      skipped: report.numPendingTests + report.numTodoTests,
    };
  } catch {
    return { passed: 0, failed: 0, skipped: 0 };
  }
}

/** The solver alone, in Node, compiled as the site's build compiles it. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'vite';
import { timed, type Entry } from './measure';

type Cases = typeof import('./cases');

const here = (path: string) => fileURLToPath(new URL(path, import.meta.url));

/** The runner's own compiler is for speed of starting: it wraps every function, which the site does not. */
async function compiled(): Promise<Cases> {
  const folder = mkdtempSync(join(tmpdir(), 'soakline-bench-'));
  try {
    await build({
      configFile: false,
      logLevel: 'error',
      resolve: { alias: { $lib: here('../../src/lib') } },
      ssr: { noExternal: true },
      build: {
        ssr: here('cases.ts'),
        outDir: folder,
        rollupOptions: { output: { entryFileNames: 'cases.mjs' } },
      },
    });
    return (await import(pathToFileURL(join(folder, 'cases.mjs')).href)) as Cases;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

export async function solverEntries(): Promise<Entry[]> {
  const { balance, drawnLoops, halfHour, halfHourOfEvents, logRuns, threeOfE24 } = await compiled();
  const { readLargeLog, fitTenMinutes } = logRuns();
  let i = 0;
  const steps = (run: { readonly steps: number; readonly rejected: number }) =>
    `${run.steps} steps, ${run.rejected} rejected`;
  const median = (limit: number) => ({ of: 'median', limit }) as const;
  return [
    timed(
      { name: 'steady-solve', unit: 'ms', aim: median(0.5) },
      () => void balance(i++),
      // Warmed up until the engine has compiled it for good.
      { runs: 200, warmUp: 2000, batch: 10 },
    ),
    timed(
      { name: 'warm-up-30min', unit: 'ms', aim: median(5), work: steps(halfHour(0)) },
      () => void halfHour(i++),
      { runs: 200, warmUp: 100 },
    ),
    timed(
      {
        name: 'transient-events-30min',
        unit: 'ms',
        aim: median(10),
        work: `${steps(halfHourOfEvents(0))}, ${halfHourOfEvents(0).events.length} events`,
      },
      () => void halfHourOfEvents(i++),
      { runs: 200, warmUp: 100 },
    ),
    timed(
      {
        name: 'trim-search-3-of-E24',
        unit: 'ms',
        aim: median(50),
        work: `${threeOfE24(0).below.length + threeOfE24(0).above.length} kept`,
      },
      () => void threeOfE24(i++),
      { runs: 200, warmUp: 40 },
    ),
    timed(
      { name: 'csv-1e6-rows', unit: 'ms', aim: median(3000), work: '12 columns' },
      readLargeLog,
      { runs: 5, warmUp: 1 },
    ),
    timed(
      {
        name: 'monte-carlo-5000',
        unit: 'ms',
        aim: median(1000),
        work: `${drawnLoops(10, 1).inputs} inputs drawn, one thread`,
      },
      () => void drawnLoops(5000, i++),
      { runs: 10, warmUp: 2 },
    ),
    timed(
      {
        name: 'fit-600s-log',
        unit: 'ms',
        aim: median(1000),
        work: '900 rows, five fits, one of them of the whole',
      },
      fitTenMinutes,
      { runs: 20, warmUp: 3 },
    ),
  ];
}

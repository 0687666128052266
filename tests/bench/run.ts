/** `npm run bench`: how fast it is, on this machine. `-- --json FILE` writes the same as JSON. */
import { writeFileSync } from 'node:fs';
import { cpus, loadavg } from 'node:os';
import { parseArgs } from 'node:util';
import { browserEntries } from './browser';
import type { Entry } from './measure';
import { solverEntries } from './solver';

const { values } = parseArgs({
  options: { json: { type: 'string' }, 'solver-only': { type: 'boolean', default: false } },
});

/** Runnable tasks, mean of the last minute: above the cores, they wait for each other. */
const load = () => Number(loadavg()[0]!.toFixed(2));
const before = load();
const entries = [
  ...(await solverEntries()),
  ...(values['solver-only'] ? [] : await browserEntries()),
];
const machine = {
  cpu: cpus()[0]?.model.trim() ?? 'unknown',
  cores: cpus().length,
  node: process.version,
  load: { before, after: load() },
};

console.log(
  `${machine.cpu}, ${machine.cores} cores, Node ${machine.node}, load ${before} before and ${machine.load.after} after`,
);
console.log(table(entries));
if (values.json) writeFileSync(values.json, `${JSON.stringify({ machine, entries }, null, 2)}\n`);

function table(list: readonly Entry[]): string {
  const rows = list.map((e) => [
    e.of ? `${e.name} ${e.of}` : e.name,
    e.unit,
    ...[e.min, e.median, e.p95].map(digits),
    ...(e.cpu ? [e.cpu.min, e.cpu.median].map(digits) : ['-', '-']),
    String(e.runs),
    verdict(e),
    e.work ?? '',
  ]);
  const head = [
    'entry',
    'unit',
    'min',
    'median',
    'p95',
    'cpu min',
    'cpu median',
    'runs',
    'aim',
    'work',
  ];
  const all = [head, ...rows];
  const widths = head.map((_, i) => Math.max(...all.map((row) => row[i]!.length)));
  const left = (i: number) => i === 0 || i === head.length - 1;
  const line = (row: string[]) =>
    row
      .map((cell, i) => (left(i) ? cell.padEnd(widths[i]!) : cell.padStart(widths[i]!)))
      .join('  ')
      .trimEnd();
  return all.map(line).join('\n');
}

/** By the clock; on a machine whose load keeps it waiting, what the processor took is told apart. */
function verdict({ aim, cpu, ...figures }: Entry): string {
  if (!aim) return '-';
  const words = `${aim.of} ${aim.limit}`;
  if (!(figures[aim.of] > aim.limit)) return words;
  return `${words} missed${cpu && cpu[aim.of] <= aim.limit ? ', met in cpu time' : ''}`;
}

function digits(x: number): string {
  return x >= 100 ? x.toFixed(0) : x.toPrecision(3);
}

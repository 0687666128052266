/** `npm run bench`: how fast it is, on this machine. `-- --json FILE` writes the same as JSON. */
import { writeFileSync } from 'node:fs';
import { cpus } from 'node:os';
import { parseArgs } from 'node:util';
import { browserEntries } from './browser';
import type { Entry } from './measure';
import { solverEntries } from './solver';

const { values } = parseArgs({
  options: { json: { type: 'string' }, 'solver-only': { type: 'boolean', default: false } },
});

const machine = {
  cpu: cpus()[0]?.model.trim() ?? 'unknown',
  cores: cpus().length,
  node: process.version,
};
const entries = [...solverEntries(), ...(values['solver-only'] ? [] : await browserEntries())];

console.log(`${machine.cpu}, ${machine.cores} cores, Node ${machine.node}`);
console.log(table(entries));
if (values.json) writeFileSync(values.json, `${JSON.stringify({ machine, entries }, null, 2)}\n`);

function table(list: readonly Entry[]): string {
  const rows = list.map(({ name, of, median, p95, runs, unit, aim }) => [
    of ? `${name} ${of}` : name,
    digits(median),
    digits(p95),
    String(runs),
    unit,
    aim === null ? '-' : `${aim}${p95 > aim ? ' missed' : ''}`,
  ]);
  const head = ['entry', 'median', 'p95', 'runs', 'unit', 'aim at p95'];
  const all = [head, ...rows];
  const widths = head.map((_, i) => Math.max(...all.map((row) => row[i]!.length)));
  const line = (row: string[]) =>
    row
      .map((cell, i) => (i === 0 ? cell.padEnd(widths[i]!) : cell.padStart(widths[i]!)))
      .join('  ');
  return all.map(line).join('\n');
}

function digits(x: number): string {
  return x >= 100 ? x.toFixed(0) : x.toPrecision(3);
}

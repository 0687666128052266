/** Words the outcomes as plain text. */
import type { Outcome, State } from './harness';
import type { Value } from './schema';

const STATES: readonly State[] = ['pass', 'fail', 'unsupported'];

/** Every case on a line of its own, then what needs reading, then the counts per topic. */
export function report(outcomes: readonly Outcome[], malformed: readonly string[]): string {
  const troubled = outcomes.filter((o) => o.state !== 'pass');
  return [
    'Every case',
    ...outcomes.map((o) => `  ${caseLine(o)}`),
    '',
    ...(troubled.length > 0 ? ['Failing and unsupported', ...troubled.map(detailLine), ''] : []),
    ...malformed.map((line) => `Malformed file  ${line}`),
    countTable(outcomes),
  ].join('\n');
}

export function caseLine(o: Outcome): string {
  const error = o.worst ? relative(o.worst.relativeError) : '-';
  const memory = o.fromMemory ? '  (expected value from memory)' : '';
  return `${o.id.padEnd(32)} ${o.op.padEnd(36)} ${o.state.padEnd(11)} ${error}${memory}`;
}

export function detailLine(o: Outcome): string {
  const memory = o.fromMemory ? ' (expected value from memory)' : '';
  const head = `  ${o.state.padEnd(11)} ${o.id} ${o.op}${memory}: ${o.message}`;
  if (!o.worst) return head;
  const { field, got, expected, relativeError } = o.worst;
  const gap = o.message ? '; ' : '';
  return `${head}${gap}${field} got ${show(got)}, expected ${show(expected)}, relative error ${relative(relativeError)}`;
}

function countTable(outcomes: readonly Outcome[]): string {
  const topics = [...new Set(outcomes.map((o) => o.topic))];
  const row = (name: string, cells: readonly (string | number)[]) =>
    `  ${name.padEnd(26)}${cells.map((cell) => String(cell).padStart(13)).join('')}`;
  const counts = (of: readonly Outcome[]) =>
    STATES.map((state) => of.filter((o) => o.state === state).length);
  return [
    row('topic', STATES),
    ...topics.map((topic) => row(topic, counts(outcomes.filter((o) => o.topic === topic)))),
    row('all', counts(outcomes)),
  ].join('\n');
}

function relative(error: number | null): string {
  return error === null ? '-' : error.toExponential(2);
}

function show(value: Value | undefined): string {
  return typeof value === 'number'
    ? String(Number(value.toPrecision(10)))
    : (JSON.stringify(value) ?? 'nothing');
}

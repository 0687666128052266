/** From the texts of a job to the values its models take. */
import type { DashConvention } from '$lib/units';
import { checkTyped, type CheckContext, type Checked } from './check';
import { FIELDS, fieldAt, type FieldSpec } from './fields';
import { checkPlusMinus } from './sure/halfWidths';
import { coverageOf, uneven } from './sure/plusMinus';
import type { Value, Values } from './value';
import type { Entry, Job, Problem, SideId, TitleKey } from './types';

export type { Value, Values };

export interface Resolved {
  readonly values: Values;
  readonly problems: readonly Problem[];
}

/** Every field's value on one side, with what was refused. */
export function resolve(job: Job, side: SideId): Resolved {
  const changes = side === 'candidate' ? (job.candidate?.changes ?? {}) : {};
  const context: CheckContext = { units: job.header.units, dash: dashConvention(job, side) };
  const values: Record<string, Value> = {};
  const problems: Problem[] = [];
  for (const [path, field] of FIELDS) {
    if (field.kind === 'text') {
      const text = job.header.title[path.slice('title.'.length) as TitleKey];
      values[path] = { text, assumed: false };
      continue;
    }
    const change = own(changes, path);
    const entry = change?.is === undefined ? mergedDraft(own(job.asFound, path), change) : change;
    const value = valueOf(field, entry ?? NOTHING, context);
    values[path] = change?.is === undefined ? value : { ...value, changed: true };
    if (value.why !== undefined) problems.push({ path, message: value.why });
  }
  return { values, problems };
}

const NOTHING: Entry = {};

/** A refused draft of the candidate shows on the candidate, over the value as found. */
function mergedDraft(found: Entry | undefined, change: Entry | undefined): Entry | undefined {
  if (!change) return found;
  const { draft: _draft, why: _why, ...rest } = found ?? {};
  return { ...rest, ...change };
}

/** Own keys only: a path from a file must never reach the prototype. */
export const own = (entries: Readonly<Record<string, Entry>>, path: string): Entry | undefined =>
  Object.hasOwn(entries, path) ? entries[path] : undefined;

function dashConvention(job: Job, side: SideId): DashConvention {
  const path = 'hose.dashConvention';
  const changed = side === 'candidate' ? own(job.candidate?.changes ?? {}, path)?.is : undefined;
  const is = changed ?? own(job.asFound, path)?.is;
  return is === 'tube-replaced' ? 'tube-replaced' : 'hose-bore';
}

export const contextOf = (job: Job, side: SideId): CheckContext => ({
  units: job.header.units,
  dash: dashConvention(job, side),
});

/** Values by entry: an entry never changes, so an edit costs only what it touches. */
const known = new WeakMap<Entry, Map<string, Value>>();

function valueOf(field: FieldSpec, entry: Entry, context: CheckContext): Value {
  const key = `${field.path}|${context.units}|${context.dash}`;
  let byContext = known.get(entry);
  if (!byContext) known.set(entry, (byContext = new Map()));
  let value = byContext.get(key);
  if (!value) byContext.set(key, (value = freshValue(field, entry, context)));
  return value;
}

function freshValue(field: FieldSpec, entry: Entry, context: CheckContext): Value {
  const given = entry.is === undefined ? null : checkTyped(field, entry.is, context);
  const draft =
    entry.draft === undefined ? {} : { draft: entry.draft, why: entry.why ?? 'Not accepted.' };
  const words = entry.from === undefined ? {} : { from: entry.from };
  if (given?.ok) {
    const value = { ...accepted(given), assumed: false, ...words, ...draft };
    return { ...value, ...plusMinus(field, entry, value.si, context) };
  }
  // A text in a file that cannot be read counts as a refused draft; the default stands in.
  const refused = given ? { draft: entry.is!, why: given.message } : draft;
  const value = { ...defaultOf(field.path, context), ...words, ...refused };
  return { ...value, ...plusMinus(field, entry, value.si, context) };
}

function accepted(checked: Checked & { ok: true }) {
  const { meaning, typed, note } = checked;
  return { ...meaning, text: typed, ...(note ? { note } : {}) };
}

function defaultOf(path: string, context: CheckContext): Value {
  const field = fieldAt(path);
  if (field.kind === 'text') return { text: '', assumed: true };
  const checked = checkTyped(field, field.default, context);
  if (!checked.ok) throw new Error(`default of ${path}: ${checked.message}`);
  // Nothing stands in for an optional value that nobody gave.
  const empty = field.kind === 'quantity' && field.optional === true;
  return { ...accepted(checked), assumed: !empty };
}

function plusMinus(field: FieldSpec, entry: Entry, si: number | undefined, context: CheckContext) {
  if (entry.pm === undefined || field.kind !== 'quantity' || si === undefined) return {};
  const checked = checkPlusMinus(field, entry.pm, si, context.units);
  const coverage = coverageOf(entry, context.units);
  const said = { pmText: entry.pm, ...coverage };
  if (!checked.ok) return { ...said, pmMessage: checked.message };
  const { up, down } = checked.half;
  const refused = up === down ? null : uneven(coverage.spread);
  if (refused) return { ...said, pmMessage: refused };
  if (coverage.kMessage !== undefined) return said;
  return { ...said, pm: up, ...(up !== down && { pmDown: down }) };
}

/**
 * Runs every case of a folder of reference files through the adapters and says of each:
 * pass, fail or unsupported. The folder is `values/` here, or the one named by REFERENCE_DIR.
 */
import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { Given, Unsupported } from './given';
import { MalformedFileError, parseReferenceFile } from './schema';
import type { Case, Fields, ReferenceFile } from './schema';
import { boundFor, compare, type Comparison } from './tolerance';

/** One calculation: what a case gives to what it expects, by calling the solver. */
export type Adapter = (given: Given) => Fields;
/** topic → op → adapter. */
export type Adapters = Readonly<Record<string, Readonly<Record<string, Adapter>>>>;

export type State = 'pass' | 'fail' | 'unsupported';

export interface Outcome {
  readonly topic: string;
  readonly id: string;
  readonly op: string;
  readonly fromMemory: boolean;
  readonly state: State;
  /** The field furthest out for its tolerance; null when nothing could be compared. */
  readonly worst: Comparison | null;
  /** Why nothing could be compared. */
  readonly message: string;
}

export interface Folder {
  readonly files: readonly ReferenceFile[];
  /** One clear line for each file that could not be read. */
  readonly malformed: readonly string[];
}

export const DEFAULT_FOLDER = join(import.meta.dirname, 'values');

export function referenceFolder(): string {
  return process.env.REFERENCE_DIR || DEFAULT_FOLDER;
}

export function loadFolder(folder: string): Folder {
  const files: ReferenceFile[] = [];
  const malformed: string[] = [];
  const names = readdirSync(folder).filter((name) => name.endsWith('.json'));
  if (names.length === 0) malformed.push(`${folder}: no reference files here`);
  for (const name of names.sort()) {
    try {
      files.push(parseReferenceFile(readFileSync(join(folder, name), 'utf8'), name));
    } catch (error) {
      if (!(error instanceof MalformedFileError)) throw error;
      malformed.push(error.message);
    }
  }
  return { files, malformed };
}

export function runCase(file: ReferenceFile, c: Case, adapters: Adapters): Outcome {
  const outcome = (state: State, message: string, worst: Comparison | null = null): Outcome => ({
    topic: file.topic,
    id: c.id,
    op: c.op,
    fromMemory: c.from_memory === true,
    state,
    worst,
    message,
  });
  const ops = Object.hasOwn(adapters, file.topic) ? adapters[file.topic]! : {};
  if (!Object.hasOwn(ops, c.op)) return outcome('unsupported', 'no such calculation');

  const given = new Given(c.inputs);
  let got: Fields;
  try {
    got = ops[c.op]!(given);
  } catch (error) {
    if (error instanceof Unsupported) return outcome('unsupported', error.message);
    return outcome('fail', `threw ${error instanceof Error ? error.message : String(error)}`);
  }
  const unread = given.unread();
  if (unread.length > 0)
    return outcome('unsupported', `input not understood: ${unread.join(', ')}`);

  const all = Object.entries(c.expected).flatMap(([field, expected]) =>
    compare(field, got[field], expected, boundFor(field, c, file.tolerance)),
  );
  const worst = all.reduce((a, b) => (b.severity > a.severity ? b : a));
  const missing = Object.keys(c.expected).filter((field) => got[field] === undefined);
  return outcome(
    all.every((x) => x.pass) ? 'pass' : 'fail',
    missing.length > 0 ? `no value for ${missing.join(', ')}` : '',
    worst,
  );
}

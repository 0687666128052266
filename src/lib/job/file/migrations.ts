/** From an older file to the present format, one version at a time. */
import { FORMAT_VERSION } from '../types';

type RawFile = Record<string, unknown>;

/** `MIGRATIONS[n]` turns a file of version n into one of version n + 1. Version 1 is the first. */
const MIGRATIONS: Readonly<Record<number, (file: RawFile) => RawFile>> = {
  // Version 1 knew one candidate; those put aside came with version 2.
  1: (file) => ({ ...file, soakline: 2, aside: [] }),
  // Version 3 brought the reader's own lines, photographs, parts, the folder's plan and revisions.
  2: (file) => ({ ...file, soakline: 3, own: {}, photos: {}, revisions: [] }),
};

/** Bring a file of `version` up to {@link FORMAT_VERSION}. */
export function migrate(file: RawFile, version: number): RawFile {
  let current = file;
  for (let at = version; at < FORMAT_VERSION; at++) current = MIGRATIONS[at]!(current);
  return current;
}

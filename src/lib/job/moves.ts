/** Single moves out of the candidates of a job: each whole, and each kind of change in it that has a price. */
import type { Part } from './parts';
import { partsList } from './partsList';
import type { Candidate, Entries, Job } from './types';

/** Kinds of change, as one would buy them. */
export const MOVE_KINDS = [
  { id: 'exchanger', label: 'front exchanger', paths: /^frontExchanger\./ },
  { id: 'air', label: 'way of the air', paths: /^airPath\./ },
  { id: 'fans', label: 'fans and shroud', paths: /^fans\./ },
  { id: 'hoses', label: 'hoses', paths: /^hose\./ },
  { id: 'feed', label: 'pump feed', paths: /^(feed\.|pump\.volts)/ },
  { id: 'pump', label: 'pump', paths: /^pump\.(?!volts)/ },
  { id: 'tank', label: 'tank', paths: /^(reservoir|suction)\./ },
  { id: 'mixture', label: 'mixture', paths: /^coolant\./ },
  { id: 'cooler', label: 'charge cooler', paths: /^chargeCooler\./ },
  { id: 'shielding', label: 'shielding from heat', paths: /^soak\./ },
  { id: 'engine', label: 'engine and boost', paths: /^(engine|duty)\./ },
] as const;
export type MoveKind = (typeof MOVE_KINDS)[number]['id'];

/** Kind of change an input belongs to; null where it is none of the loop's. */
export const kindOf = (path: string): MoveKind | null =>
  MOVE_KINDS.find(({ paths }) => paths.test(path))?.id ?? null;

/** Something that can be done to the loop as found. */
export interface Move {
  /** Unique among the moves of a job. */
  readonly id: string;
  readonly name: string;
  readonly changes: Entries;
  readonly parts: readonly Part[];
  /** Null: not known. */
  readonly cost: number | null;
  readonly mass: number | null;
}

const accepted = (changes: Entries): Entries =>
  Object.fromEntries(Object.entries(changes).filter(([, entry]) => entry.is !== undefined));

/**
 * Every candidate that changes something, and out of one that changes several kinds each kind for which
 * its parts list has rows of its own: without them nobody knows what that kind alone would cost.
 */
export function movesOf(job: Job): Move[] {
  const all = [...(job.candidate ? [job.candidate] : []), ...job.aside];
  const moves = all.flatMap((candidate, i) => movesOfOne(candidate, `${i}`, job.header.units));
  const seen = new Set<string>();
  return moves.filter(({ changes, cost }) => {
    const key = JSON.stringify([Object.entries(changes).map(([path, { is }]) => [path, is]), cost]);
    return seen.has(key) ? false : (seen.add(key), true);
  });
}

function movesOfOne(candidate: Candidate, id: string, units: Job['header']['units']): Move[] {
  const changes = accepted(candidate.changes);
  const paths = Object.keys(changes);
  if (paths.length === 0) return [];
  const made = (own: string, name: string, of: Entries, parts: readonly Part[]): Move => {
    const { cost, mass } = partsList(parts, units);
    return { id: own, name, changes: of, parts, cost, mass };
  };
  const whole = made(id, candidate.name, changes, candidate.parts ?? []);
  const kinds = MOVE_KINDS.filter((kind) => paths.some((path) => kindOf(path) === kind.id));
  if (kinds.length < 2) return [whole];
  const single = kinds.flatMap((kind): Move[] => {
    const parts = (candidate.parts ?? []).filter((part) => part.kind === kind.id);
    if (parts.length === 0) return [];
    const own = Object.fromEntries(
      Object.entries(changes).filter(([path]) => kindOf(path) === kind.id),
    );
    return [made(`${id}.${kind.id}`, `${kind.label} of “${candidate.name}”`, own, parts)];
  });
  return [whole, ...single];
}

/** Whether two moves can be made together: none changes what the other does. */
export const compatible = (a: Move, b: Move): boolean =>
  Object.keys(a.changes).every((path) => !Object.hasOwn(b.changes, path));

/** Several moves as one candidate: changes and parts lists together. */
export function together(moves: readonly Move[]): Candidate {
  const parts = moves.flatMap((move) => move.parts);
  return {
    name: moves.map(({ name }) => name).join(' + '),
    changes: Object.assign({}, ...moves.map(({ changes }) => changes)) as Entries,
    ...(parts.length > 0 && { parts }),
  };
}

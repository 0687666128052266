/** Single moves out of the candidates of a job: each whole, and each kind of change in it that has a price. */
import type { Part } from '../file/parts';
import { orderMoves } from './orderMoves';
import { partsList } from './partsList';
import type { Candidate, Entries, Job } from '../types';

/** Kinds of change, as one would buy them. */
export const MOVE_KINDS = [
  {
    id: 'exchanger',
    label: 'front exchanger',
    alone: 'The new front exchanger alone',
    paths: /^frontExchanger\./,
  },
  {
    id: 'order',
    label: 'order of the cores in the air',
    alone: 'The other order of the cores in the air alone',
    paths: /^airPath\.stackPlace$/,
  },
  {
    id: 'air',
    label: 'ducts and seals',
    alone: 'Ducts and seals alone',
    paths: /^airPath\.(?!stackPlace$)/,
  },
  {
    id: 'fans',
    label: 'fans and shroud',
    alone: 'The new fans and shroud alone',
    paths: /^fans\./,
  },
  {
    id: 'plumbing',
    label: 'order of the cores in the liquid',
    alone: 'The other order of the cores in the liquid alone',
    paths: /^loop\.liquidOrder$/,
  },
  { id: 'hoses', label: 'hoses', alone: 'The new hoses alone', paths: /^hose\./ },
  {
    id: 'feed',
    label: 'pump feed',
    alone: 'The new pump feed alone',
    paths: /^(feed\.|pump\.volts)/,
  },
  { id: 'pump', label: 'pump', alone: 'The new pump alone', paths: /^pump\.(?!volts)/ },
  {
    id: 'tank',
    label: 'tank',
    alone: 'The change at the tank alone',
    paths: /^(reservoir|suction)\./,
  },
  { id: 'ice', label: 'ice in the tank', alone: 'The ice alone', paths: /^events\.ice$/ },
  { id: 'mixture', label: 'mixture', alone: 'The other mixture alone', paths: /^coolant\./ },
  {
    id: 'cooler',
    label: 'charge cooler',
    alone: 'The new charge cooler alone',
    paths: /^chargeCooler\./,
  },
  { id: 'shielding', label: 'shielding from heat', alone: 'The shielding alone', paths: /^soak\./ },
  {
    id: 'engine',
    label: 'engine and boost',
    alone: 'The change at the engine alone',
    paths: /^(engine|duty)\./,
  },
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
  /** Of its parts, less what they take off. */
  readonly mass: number | null;
}

/**
 * Every candidate that changes something, and out of one that changes several kinds each kind for which
 * its parts list has rows of its own: without them nobody knows what that kind alone would cost. Of two
 * that change the same the whole candidate stays: its name was given by a person.
 */
export function movesOf(job: Job): Move[] {
  const all = [...(job.candidate ? [job.candidate] : []), ...job.aside];
  const units = job.header.units;
  const wholes = all.flatMap((candidate, i) => wholeMove(candidate, `${i}`, units));
  const single = all.flatMap((candidate, i) => singleMoves(candidate, `${i}`, units));
  const seen = new Set<string>();
  const own = [...wholes, ...single, ...orders(job)].filter(({ changes }) => {
    const key = changesKey(changes);
    return seen.has(key) ? false : (seen.add(key), true);
  });
  return own.map((move) => ({ ...move, name: toldApart(move, own) }));
}

/** What is changed to what, whatever the order it was typed in. */
const changesKey = (changes: Entries): string =>
  JSON.stringify(
    Object.entries(changes)
      .map(([path, { is }]) => [path, is] as const)
      .sort(([a], [b]) => (a < b ? -1 : 1)),
  );

const accepted = (changes: Entries): Entries =>
  Object.fromEntries(Object.entries(changes).filter(([, entry]) => entry.is !== undefined));

interface Found extends Move {
  /** Candidate it is a part of. */
  readonly of?: string;
}

function made(id: string, name: string, changes: Entries, parts: readonly Part[], units: Units) {
  const { cost, mass: on, off } = partsList(parts, units);
  const mass = on === null || off === null ? null : on - off;
  return { id, name, changes, parts, cost, mass };
}

type Units = Job['header']['units'];

const orders = (job: Job): Found[] =>
  orderMoves(job).map(({ id, name, changes, parts }) =>
    made(id, name, changes, parts, job.header.units),
  );

function wholeMove({ name, changes, parts = [] }: Candidate, id: string, units: Units): Found[] {
  const own = accepted(changes);
  return Object.keys(own).length > 0 ? [made(id, name, own, parts, units)] : [];
}

function singleMoves({ name, changes, parts = [] }: Candidate, id: string, units: Units): Found[] {
  const all = Object.entries(accepted(changes));
  const kinds = MOVE_KINDS.filter((kind) => all.some(([path]) => kindOf(path) === kind.id));
  if (kinds.length < 2) return [];
  return kinds.flatMap((kind): Found[] => {
    const bought = parts.filter((part) => part.kind === kind.id);
    if (bought.length === 0) return [];
    const own = Object.fromEntries(all.filter(([path]) => kindOf(path) === kind.id));
    return [{ ...made(`${id}.${kind.id}`, kind.alone, own, bought, units), of: name }];
  });
}

const SHORT = 28;

/** A kind of change is named alone; where two candidates have one each, also by its candidate. */
function toldApart({ name, of }: Found, all: readonly Found[]): string {
  if (of === undefined || all.filter((other) => other.name === name).length === 1) return name;
  return `${name}, of “${of.length > SHORT ? `${of.slice(0, SHORT).trimEnd()}…` : of}”`;
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

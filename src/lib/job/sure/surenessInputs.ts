/** Inputs of the loop that are not known exactly, and how they are drawn. */
import { LATTICE_RANGE } from '$lib/solver/numerics/lattice';
import type { Distribution } from '$lib/solver/uncertainty/distributions';
import type { Side } from '../evaluate';
import { fieldAt, FIELDS } from '../fields';
import { OF_THE_LOOP } from '../fields/ofTheLoop';
import { distributionOf } from './plusMinus';
import type { Value, Values } from '../values';

const PATHS = [...FIELDS]
  .filter(([path, { kind }]) => kind === 'quantity' && OF_THE_LOOP.test(path))
  .map(([path]) => path);
/** Axes of the lattice that no input as found stands on: for parts that a candidate brings. */
const FREE = LATTICE_RANGE.dimensions[1] - PATHS.length;

export interface Uncertain {
  readonly path: string;
  readonly distribution: Distribution;
  /** Ends of the field, SI: a tail does not leave them. */
  readonly ends: readonly [number, number];
  /** Of the lattice: what two sides share stands on one axis, so that it moves together. */
  readonly axis: number;
}

/**
 * The inputs of one side that have a ±. An input as found stands on an axis of its own, the same on
 * every side. What a candidate brings instead is another thing: its axis follows from what was typed,
 * so that two candidates with the same new part draw it together, and with different ones apart.
 */
export function uncertainOf(values: Values): Uncertain[] {
  const taken = new Set<number>();
  return PATHS.flatMap((path, place): Uncertain[] => {
    const value = values[path]!;
    const distribution = distributionOf(value);
    if (!distribution) return [];
    const axis = value.changed ? PATHS.length + freeAxis(path, value, taken) : place;
    return [{ path, distribution, ends: endsOf(path), axis }];
  });
}

/** Two different parts of two candidates meet on one axis about once in {@link FREE} pairs. */
function freeAxis(path: string, { text }: Value, taken: Set<number>): number {
  let axis = hash(`${path} ${JSON.stringify(text)}`) % FREE;
  while (taken.has(axis) && taken.size < FREE) axis = (axis + 1) % FREE;
  taken.add(axis);
  return axis;
}

/** @source Fowler, Noll & Vo, FNV-1a, 32 bits (from memory) */
function hash(text: string): number {
  let sum = 0x811c9dc5;
  for (let i = 0; i < text.length; i++) sum = Math.imul(sum ^ text.charCodeAt(i), 0x01000193);
  return sum >>> 0;
}

function endsOf(path: string): readonly [number, number] {
  const field = fieldAt(path);
  return field.kind === 'quantity' ? [field.min, field.max] : [-Infinity, Infinity];
}

/** Inputs for which a ± is stated, whether it can be read or not. */
export const statedPaths = (sides: readonly Side[]): string[] =>
  PATHS.filter((path) => sides.some(({ values }) => values[path]!.pmText !== undefined));

/** Inputs with a ± that counts, on any of the sides. */
export const unsurePaths = (sides: readonly Side[]): string[] =>
  PATHS.filter((path) => sides.some(({ values }) => distributionOf(values[path]!) !== null));

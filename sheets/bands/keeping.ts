/** Bands round the curves of a sheet: worked out on another thread once the plot is looked at. */
import type { Bands, BandSource } from '$lib/job/sure/bands/bandSource';
import { unsurePaths } from '$lib/job/sure/surenessInputs';
import type { Evaluated, Side } from '$lib/job/evaluate';
import { Keep } from '$lib/keep';
import type { Keeping } from '$lib/workers/background.svelte';

/** Of each source: both sides, and those of a few edits before. */
const SIDES = 8;

interface Kept {
  readonly bands: Keep<Bands | null>;
  /** A key is long, and asked for at every look. */
  readonly keys: WeakMap<Side, { readonly sides: readonly Side[]; readonly key: string }>;
}

const sources = new Map<string, Kept>();

function keptOf({ name }: BandSource): Kept {
  let kept = sources.get(name);
  if (!kept) sources.set(name, (kept = { bands: new Keep(SIDES), keys: new WeakMap() }));
  return kept;
}

function keyOf(source: BandSource, side: Side, sides: readonly Side[]): string {
  const { keys } = keptOf(source);
  const known = keys.get(side);
  if (known?.sides.length === sides.length && known.sides.every((one, i) => one === sides[i]))
    return known.key;
  const key = source.keyOf(side, sides);
  keys.set(side, { sides, key });
  return key;
}

/** How the bands of one source are asked for and kept, for sides that are drawn together. */
export function keepingOf(source: BandSource, sides: readonly Side[]): Keeping<`band ${string}`> {
  const { bands } = keptOf(source);
  return {
    task: `band ${source.name}`,
    keyOf: (side) => keyOf(source, side, sides),
    known: (key) => bands.has(key),
    keep: (key, value) => bands.set(key, value),
  };
}

/** What is there of a side; null before it is, or where nothing has a ±. */
export function bandsOf(source: BandSource, side: Side, sides: readonly Side[]): Bands | null {
  const { bands } = keptOf(source);
  const key = keyOf(source, side, sides);
  return bands.has(key) ? bands.of(key, () => null) : null;
}

export const sidesOf = ({ asFound, candidate }: Evaluated): readonly Side[] =>
  candidate ? [asFound, candidate] : [asFound];

/** Whether any of the sides has a ± at all. */
export const anyUnsure = (sides: readonly Side[]): boolean => unsurePaths(sides).length > 0;

/**
 * The loop at other values of some inputs, many times over: which place of the loop an input fills is
 * found out once, so that a draw copies only the parts it touches. Parts no input touches stay the same
 * objects, which tells the solver that what it prepared of them still holds.
 */
import type { Loop } from '$lib/solver/loop/types';
import { requireConsistent } from '../models/consistency';
import { requireMeasures } from '../models/coreMeasures';
import { coolantOf } from '../models/rating';
import { toLoop } from '../models/toLoop';
import type { Value, Values } from '../values';

/** The loop with `x[i]` (SI) in the place of input i; throws where they make no loop. */
export type DrawnLoop = (x: ArrayLike<number>) => Loop;

/** Inputs are tried at these multiples of their ±, to see what they fill. */
const PROBES = [-0.31, 0.47] as const;
/** An input with a factor may differ from the plain way by rounding. */
const ROUNDING = 1e-14;

type Key = string | number;
/** A leaf of the loop that holds input `input` times `factor`. */
interface Place {
  readonly at: readonly Key[];
  readonly input: number;
  readonly factor: number;
}

/** Prepare {@link DrawnLoop} for the quantities at `paths`. */
export function drawnLoop(values: Values, paths: readonly string[]): DrawnLoop {
  const base = toLoop(values);
  const places: Place[] = [];
  let ofCoolant = false;
  for (const [input, path] of paths.entries()) {
    const found = placesOf(values, base, path, input);
    if (found) places.push(...found);
    else if (path.startsWith('coolant.')) ofCoolant = true;
    else return (x) => plainLoop(withDrawn(values, paths, x));
  }
  const put = branch(places, 0);
  return (x) => {
    const copied = put(base, x) as Loop;
    const loop = ofCoolant
      ? { ...copied, coolant: coolantOf(withDrawn(values, paths, x), 'coolant') }
      : copied;
    requireConsistent(loop);
    return loop;
  };
}

/** The plain way, from the values of every field. */
export function plainLoop(values: Values): Loop {
  requireMeasures(values);
  const loop = toLoop(values);
  requireConsistent(loop);
  return loop;
}

/** Values with other quantities in some places; the rest is looked up behind them. */
export function withDrawn(values: Values, paths: readonly string[], x: ArrayLike<number>): Values {
  const drawn = Object.create(values) as Record<string, Value>;
  for (let i = 0; i < paths.length; i++) {
    const path = paths[i]!;
    drawn[path] = { ...values[path]!, si: x[i]! };
  }
  return drawn;
}

/** Where an input stands in the loop, itself or times a constant; null where it is more involved. */
function placesOf(values: Values, base: Loop, path: string, input: number): Place[] | null {
  const { si, pm } = values[path]!;
  const width = pm ?? 0;
  const factors = new Map<string, { at: readonly Key[]; factor: number }>();
  for (const [n, probe] of PROBES.entries()) {
    const x = si! + probe * (width || Math.abs(si!) || 1);
    let changed: Leaf[] | null;
    try {
      changed = leavesThatDiffer(base, toLoop(withDrawn(values, [path], [x])));
    } catch {
      return null; // a contradiction to be worded by the plain way
    }
    if (!changed) return null;
    for (const { at, value } of changed) {
      const key = at.join('.');
      const factor = value === x ? 1 : value / x;
      const before = factors.get(key)?.factor;
      if (n > 0 && !(Math.abs(factor - before!) <= ROUNDING * Math.abs(factor))) return null;
      factors.set(key, { at, factor });
    }
    if (factors.size !== changed.length) return null;
  }
  const all = [...factors.values()];
  const fits = ({ at, factor }: (typeof all)[number]) =>
    Math.abs(leafAt(base, at) - factor * si!) <= ROUNDING * Math.abs(factor * si!);
  return all.every(fits) ? all.map((place) => ({ ...place, input })) : null;
}

interface Leaf {
  readonly at: readonly Key[];
  readonly value: number;
}

const leafAt = (loop: object, at: readonly Key[]): number =>
  at.reduce<unknown>((node, key) => (node as Record<Key, unknown>)[key], loop) as number;

/** Numbers of `other` that are not those of `base`; null where the two have other shapes. */
function leavesThatDiffer(
  base: unknown,
  other: unknown,
  at: readonly Key[] = [],
  into: Leaf[] = [],
): Leaf[] | null {
  if (typeof base !== 'object' || base === null) {
    if (Object.is(base, other)) return into;
    if (typeof base !== 'number' || typeof other !== 'number') return null;
    into.push({ at, value: other });
    return into;
  }
  if (typeof other !== 'object' || other === null) return null;
  const keys = Object.keys(base);
  if (keys.join() !== Object.keys(other).join()) return null;
  const [a, b] = [base as Record<string, unknown>, other as Record<string, unknown>];
  return keys.every((key) => leavesThatDiffer(a[key], b[key], [...at, key], into)) ? into : null;
}

type Put = (node: unknown, x: ArrayLike<number>) => unknown;

/** A copy of a part with the inputs in their places, by the places below it. */
function branch(places: readonly Place[], depth: number): Put {
  if (places.length === 0) return (node) => node;
  const keys = [...new Set(places.map(({ at }) => at[depth]!))];
  const puts = keys.map((key) => {
    const below = places.filter(({ at }) => at[depth] === key);
    const [{ input, factor, at }] = below as [Place];
    const put: Put =
      at.length === depth + 1 ? (_, x) => factor * x[input]! : branch(below, depth + 1);
    return { key, put };
  });
  return (node, x) => {
    const copy = (Array.isArray(node) ? [...node] : { ...(node as object) }) as Record<
      Key,
      unknown
    >;
    for (const { key, put } of puts) copy[key] = put(copy[key], x);
    return copy;
  };
}

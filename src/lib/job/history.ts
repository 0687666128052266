/** Undo and redo: jobs never change, so the past is a list of them. */

const DEEPEST = 100;

export interface History<T> {
  readonly past: readonly T[];
  readonly future: readonly T[];
}

export const emptyHistory: History<never> = { past: [], future: [] };

/** `before` gave way to something new: it can be gone back to, and what was undone is gone. */
export const remember = <T>({ past }: History<T>, before: T): History<T> => ({
  past: [...past, before].slice(-DEEPEST),
  future: [],
});

/** One step back from `present`; null at the beginning. */
export function stepBack<T>(
  { past, future }: History<T>,
  present: T,
): { present: T; history: History<T> } | null {
  const previous = past.at(-1);
  if (previous === undefined) return null;
  return { present: previous, history: { past: past.slice(0, -1), future: [present, ...future] } };
}

/** One step forward again; null when nothing was undone. */
export function stepForward<T>(
  { past, future }: History<T>,
  present: T,
): { present: T; history: History<T> } | null {
  const [next, ...later] = future;
  if (next === undefined) return null;
  return { present: next, history: { past: [...past, present], future: later } };
}

/** What was prepared of the parts of a loop, for a study of many loops that share most of them. */

/** Hands out what was made of the same things before, or makes it. */
export interface Kept {
  /**
   * @param name - of what is made; one is kept for each
   * @param of - all it is made of: the same objects, the same result. Values compare by `Object.is`.
   */
  of<T>(name: string, of: readonly unknown[], make: () => T): T;
}

/** Keeps nothing: every loop is prepared from the ground up. */
export const AFRESH: Kept = { of: (_name, _of, make) => make() };

/** Keeps the latest of each name. What throws is not kept. */
export function keptParts(): Kept {
  const latest = new Map<string, { of: readonly unknown[]; made: unknown }>();
  return {
    of<T>(name: string, of: readonly unknown[], make: () => T): T {
      const before = latest.get(name);
      if (before && of.every((part, i) => Object.is(part, before.of[i]))) return before.made as T;
      const made = make();
      latest.set(name, { of, made });
      return made;
    },
  };
}

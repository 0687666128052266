/** Random numbers that come out the same on every machine and every run. */

export interface Random {
  /** Uniform on [0, 1). */
  uniform(): number;
  /** Normal, mean 0, standard deviation 1. */
  normal(): number;
}

/**
 * A generator that a whole number starts. Its state is one 32-bit number: fit for simulations of some
 * thousand draws, not for secrets.
 * @source mulberry32 by T. Ettinger (public domain), from memory; normals by Box & Muller, Ann. Math.
 *   Statist. 29 (1958) 610-611
 */
export function seededRandom(seed: number): Random {
  let state = seed >>> 0;
  let spare: number | null = null;
  const uniform = () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  };
  return {
    uniform,
    normal() {
      if (spare !== null) {
        const kept = spare;
        spare = null;
        return kept;
      }
      const radius = Math.sqrt(-2 * Math.log(1 - uniform()));
      const angle = 2 * Math.PI * uniform();
      spare = radius * Math.sin(angle);
      return radius * Math.cos(angle);
    },
  };
}

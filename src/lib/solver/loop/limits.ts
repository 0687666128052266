/** How a value stands against a limit. */

export type LimitState = 'ok' | 'near' | 'over';

/**
 * How close counts as near: within this of the limit a shop's instruments cannot tell the sides apart.
 * Common practice, no source: two thermometers 5 K, two feet of head.
 */
export const NEAR_LIMIT = { temperature: 5, head: 0.6 } as const;

/** State of a value that must stay below its limit. */
export function stateBelow(
  value: number,
  limit: number,
  kind: keyof typeof NEAR_LIMIT = 'temperature',
): LimitState {
  return stateAbove(limit - value, 0, kind);
}

/** State of a value that must stay above its limit. NaN counts as over. */
export function stateAbove(
  value: number,
  limit: number,
  kind: keyof typeof NEAR_LIMIT = 'temperature',
): LimitState {
  const margin = value - limit;
  if (!(margin >= 0)) return 'over';
  return margin < NEAR_LIMIT[kind] ? 'near' : 'ok';
}

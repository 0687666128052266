/**
 * Quotients that tend to 1 as x tends to 0. Written with them, the exchanger relations need no branch
 * for a capacity ratio of zero or for balanced streams, and lose no digits near either.
 */

/** (1 - e^-x) / x */
export const meanDecay = (x: number): number => (x === 0 ? 1 : -Math.expm1(-x) / x);

/** ln(1 + x) / x */
export const meanLog = (x: number): number => (x === 0 ? 1 : Math.log1p(x) / x);

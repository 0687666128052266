/** The metal of tank and cores. */

/**
 * Specific heat near 300 K, J/(kg K), rounded.
 * @source Bergman et al., Fundamentals of Heat and Mass Transfer, Table A.1 (from memory: 903 pure,
 *   875 to 883 for alloys at 300 K; near 950 at 400 K)
 */
export const ALUMINIUM_CP = 900;

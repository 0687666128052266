/**
 * McBride, Zehe & Gordon, NASA Glenn Coefficients, NASA/TP-2002-211556, species "Air", 200 to 1000 K:
 * cp/R as a sum over T^-2, T^-1, 1, T, … T^4.
 */
export const CP_OVER_R_AIR = [
  1.00995016e4, -1.96827561e2, 5.00915511, -5.76101373e-3, 1.06685993e-5, -7.94029797e-9,
  2.18523191e-12,
] as const;

/** Specific gas constant that goes with them: 8314.51 / 28.9651159, J/(kg K). */
export const R_AIR_NASA = 8314.51 / 28.9651159;

/**
 * Densities on the saturation line of water, as powers of theta = 1 - T / 647.096 K.
 * Source: W. Wagner and A. Pruss, J. Phys. Chem. Ref. Data 22 (1993) 783-787, the equations of IAPWS
 * supplementary release SR1-86(1992), eqs. 2 and 3 (coefficients from memory, held to its check values).
 */
export const SATURATED_DENSITIES = {
  T_critical: 647.096,
  rho_critical: 322,
  /** rho_liquid / rho_critical = 1 + sum b theta^e. */
  liquid: [
    [1.99274064, 1 / 3],
    [1.09965342, 2 / 3],
    [-0.510839303, 5 / 3],
    [-1.75493479, 16 / 3],
    [-45.5170352, 43 / 3],
    [-6.7469445e5, 110 / 3],
  ],
  /** ln(rho_vapour / rho_critical) = sum c theta^e. */
  vapour: [
    [-2.0315024, 2 / 6],
    [-2.6830294, 4 / 6],
    [-5.38626492, 8 / 6],
    [-17.2991605, 18 / 6],
    [-44.7586581, 37 / 6],
    [-63.9201063, 71 / 6],
  ],
} as const;

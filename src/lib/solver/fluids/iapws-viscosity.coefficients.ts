/** IAPWS R12-08, Table 1: viscosity in the dilute-gas limit, by power of Tc/T. */
export const VISCOSITY_DILUTE = [1.67752, 2.20462, 0.6366564, -0.241605] as const;

/** IAPWS R12-08, Table 2: residual viscosity; row = power of (rho/rho_c - 1), column = power of (Tc/T - 1). */
export const VISCOSITY_RESIDUAL = [
  [0.520094, 0.850895e-1, -1.08374, -0.289555, 0, 0],
  [0.222531, 0.999115, 1.88797, 1.26613, 0, 0.120573],
  [-0.281378, -0.906851, -0.772479, -0.489837, -0.25704, 0],
  [0.161913, 0.257399, 0, 0, 0, 0],
  [-0.325372e-1, 0, 0, 0.698452e-1, 0, 0],
  [0, 0, 0, 0, 0.872102e-2, 0],
  [0, 0, 0, -0.435673e-2, 0, -0.593264e-3],
] as const;

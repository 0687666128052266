/** Viscosity and conductivity of water from density and temperature: the IAPWS releases. */
import { CONDUCTIVITY_DILUTE, CONDUCTIVITY_RESIDUAL } from './iapws-conductivity.coefficients';
import { VISCOSITY_DILUTE, VISCOSITY_RESIDUAL } from './iapws-viscosity.coefficients';

/** Reducing temperature (K) and density (kg/m³) of both releases. */
const T_C = 647.096;
const RHO_C = 322;

function horner(c: readonly number[], x: number): number {
  let sum = 0;
  for (let i = c.length - 1; i >= 0; i--) sum = sum * x + c[i]!;
  return sum;
}

/** Both tables have six columns; laid end to end they read in one pass. */
const COLUMNS = 6;
const residualMu = Float64Array.from(VISCOSITY_RESIDUAL.flat());
const residualK = Float64Array.from(CONDUCTIVITY_RESIDUAL.flat());

function surface(table: Float64Array, outer: number, inner: number): number {
  let sum = 0;
  for (let start = table.length - COLUMNS; start >= 0; start -= COLUMNS) {
    let row = 0;
    for (let j = COLUMNS - 1; j >= 0; j--) row = row * inner + table[start + j]!;
    sum = sum * outer + row;
  }
  return sum;
}

/**
 * Dynamic viscosity of water. The critical enhancement is left out: the release sets it to 1 away from
 * the critical point (374 °C).
 *
 * @symbol rho - density, kg/m^3
 * @symbol T - temperature, K
 * @returns Pa s; about 1 % for the liquid
 * @remarks The range is held by the caller, `waterProperties`.
 * @source IAPWS R12-08, Formulation 2008 for the viscosity of ordinary water substance, eq. 10 to 12
 */
export function viscosityIapws(rho: number, T: number): number {
  const theta = T_C / T;
  const delta = rho / RHO_C;
  const dilute = 100 / (Math.sqrt(theta) * horner(VISCOSITY_DILUTE, theta));
  return 1e-6 * dilute * Math.exp(delta * surface(residualMu, delta - 1, theta - 1));
}

/**
 * Thermal conductivity of water without the critical enhancement, which adds less than 0.01 % to the
 * liquid below 120 °C.
 *
 * @symbol rho - density, kg/m^3
 * @symbol T - temperature, K
 * @returns W/(m K); about 1 % for the liquid
 * @remarks The range is held by the caller, `waterProperties`.
 * @source IAPWS R15-11, Formulation 2011 for the thermal conductivity of ordinary water substance, eq. 15 to 17
 */
export function conductivityIapws(rho: number, T: number): number {
  const theta = T_C / T;
  const delta = rho / RHO_C;
  const dilute = 1 / (Math.sqrt(theta) * horner(CONDUCTIVITY_DILUTE, theta));
  return 1e-3 * dilute * Math.exp(delta * surface(residualK, theta - 1, delta - 1));
}

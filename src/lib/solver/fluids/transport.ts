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

function horner2(rows: readonly (readonly number[])[], outer: number, inner: number): number {
  let sum = 0;
  for (let i = rows.length - 1; i >= 0; i--) sum = sum * outer + horner(rows[i]!, inner);
  return sum;
}

/**
 * Dynamic viscosity of water. The critical enhancement is left out (the release allows it away from the
 * critical point; it is 1 to the digits of its table below 120 °C).
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
  return 1e-6 * dilute * Math.exp(delta * horner2(VISCOSITY_RESIDUAL, delta - 1, theta - 1));
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
  return 1e-3 * dilute * Math.exp(delta * horner2(CONDUCTIVITY_RESIDUAL, theta - 1, delta - 1));
}

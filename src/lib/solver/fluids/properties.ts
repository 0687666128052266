/** What the solver needs to know of a liquid at one temperature, SI. */
export interface LiquidProperties {
  /** Density, kg/m³. */
  readonly rho: number;
  /** Specific heat at constant pressure, J/(kg K). */
  readonly cp: number;
  /** Dynamic viscosity, Pa s. */
  readonly mu: number;
  /** Thermal conductivity, W/(m K). */
  readonly k: number;
}

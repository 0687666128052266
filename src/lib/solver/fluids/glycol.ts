/** Ethylene and propylene glycol in water. */
import { OutOfRangeError, requireWithin, type Interval } from '../errors';
import type { CoolantKind } from '../loop/types';
import { ETHYLENE_GLYCOL, PROPYLENE_GLYCOL } from './melinder-2010.coefficients';
import { melinder } from './melinder';
import type { LiquidProperties } from './properties';

export type GlycolKind = Exclude<CoolantKind, 'water'>;

/** What the polynomials were fitted to: mass fraction, and temperature from the freezing point up, K. */
export const GLYCOL_RANGE = {
  massFraction: [0, 0.6],
  Tmax: 373.15,
} as const satisfies { massFraction: Interval; Tmax: number };

/** The fitted polynomials by kind, without a range: for `coolant.ts`, which adds its own. */
export const GLYCOL_FIT = {
  'ethylene-glycol': melinder(ETHYLENE_GLYCOL),
  'propylene-glycol': melinder(PROPYLENE_GLYCOL),
} as const;

/** Molar masses, g/mol: IUPAC atomic weights; water as in IAPWS R6-95. */
export const MOLAR_MASS = {
  water: 18.015268,
  'ethylene-glycol': 62.068,
  'propylene-glycol': 76.094,
} as const satisfies Record<CoolantKind, number>;

/**
 * Densities at 20 °C, kg/m³, for turning volume shares into mass: water by IAPWS-95 at one atmosphere,
 * the pure glycols handbook values (from memory).
 */
export const DENSITY_20C = {
  water: 998.2071505,
  'ethylene-glycol': 1113,
  'propylene-glycol': 1036,
} as const satisfies Record<CoolantKind, number>;

const SHARE = [0, 1] as const satisfies Interval;

/**
 * Freezing point (first ice crystals) of a glycol mixture.
 *
 * @param massFraction - kg glycol per kg mixture
 * @returns K
 * @throws {@link OutOfRangeError} outside {@link GLYCOL_RANGE}
 * @source Melinder 2010
 * @example glycolFreezingPoint('ethylene-glycol', 0.5) // 237.156
 */
export function glycolFreezingPoint(kind: GlycolKind, massFraction: number): number {
  requireFraction(massFraction);
  return GLYCOL_FIT[kind].freezingPoint(massFraction);
}

/**
 * Properties of a glycol mixture within the fitted range.
 * At mass fraction 0 the polynomial itself is returned, not water, so that nothing jumps as the fraction
 * goes to zero; there, from 0 to 100 °C, it is within 0.2 % of water in density and specific heat, 1 % in
 * conductivity and 2 % in viscosity.
 *
 * @param massFraction - kg glycol per kg mixture
 * @param T - temperature, K
 * @throws {@link OutOfRangeError} outside {@link GLYCOL_RANGE} or below the freezing point
 * @source Melinder 2010
 * @example glycolProperties('ethylene-glycol', 0.3, 293.15).rho // 1038.0455
 */
export function glycolProperties(
  kind: GlycolKind,
  massFraction: number,
  T: number,
): LiquidProperties {
  const range: Interval = [glycolFreezingPoint(kind, massFraction), GLYCOL_RANGE.Tmax];
  if (!(T >= range[0] && T <= range[1])) {
    throw new OutOfRangeError(`Melinder ${kind}`, 'T', T, range);
  }
  return GLYCOL_FIT[kind].properties(massFraction, T);
}

/**
 * Mass fraction of a mixture made from volumes of pure glycol and water, each measured at 20 °C before
 * mixing. Coolant from a jug is about 95 % glycol (from memory), so a "50/50" of it holds less.
 *
 * @formula w = phi * rho_g / (phi * rho_g + (1 - phi) * rho_w)
 * @symbol phi - volume fraction of pure glycol, 1
 * @symbol rho_g - density of the glycol at 20 °C, kg/m^3
 * @symbol rho_w - density of water at 20 °C, kg/m^3
 * @throws {@link OutOfRangeError} outside 0 to 1
 * @example massFractionFromVolume({ kind: 'ethylene-glycol', volumeFraction: 0.5 }) // 0.5271865
 */
export function massFractionFromVolume(mix: { kind: GlycolKind; volumeFraction: number }): number {
  const phi = mix.volumeFraction;
  requireWithin('mixing by volume', { volumeFraction: SHARE }, { volumeFraction: phi });
  const glycol = phi * DENSITY_20C[mix.kind];
  return glycol / (glycol + (1 - phi) * DENSITY_20C.water);
}

/**
 * Inverse of {@link massFractionFromVolume}.
 *
 * @param mix - kind and mass fraction, 0 to 1
 * @returns volume fraction of pure glycol at 20 °C, before mixing
 * @throws {@link OutOfRangeError} outside 0 to 1
 */
export function volumeFractionFromMass(mix: { kind: GlycolKind; massFraction: number }): number {
  const w = mix.massFraction;
  requireWithin('mixing by mass', { massFraction: SHARE }, { massFraction: w });
  const glycol = w / DENSITY_20C[mix.kind];
  return glycol / (glycol + (1 - w) / DENSITY_20C.water);
}

export function requireFraction(x: number): void {
  const range = GLYCOL_RANGE.massFraction;
  if (!(x >= range[0] && x <= range[1])) {
    throw new OutOfRangeError('Melinder', 'massFraction', x, range);
  }
}

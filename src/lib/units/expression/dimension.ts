/** Dimensions as exponents of the base units, and which kind of quantity goes with them. */
import { math } from '$lib/math';
import { SI_UNIT, type Quantity } from '$lib/solver/quantity';
import { siOf } from '../scale';

/** Exponents of kg, m, s, A, K, cd, mol and money. An angle counts as a bare number. */
export type Dimension = readonly number[];

/** Where mathjs counts what: the base units of physics come first, then angle, bits and what was added. */
const PHYSICAL = 7;
const ANGLE = 7;

const exponents = (spelling: string): readonly number[] =>
  (math.unit(1, spelling) as unknown as { dimensions: readonly number[] }).dimensions;
const MONEY = exponents('dollar').findIndex((power) => power === 1);

export const NO_DIMENSION: Dimension = [0, 0, 0, 0, 0, 0, 0, 0];
export const TEMPERATURE: Dimension = [0, 0, 0, 0, 1, 0, 0, 0];

/** Roots make halves and thirds of exponents. */
const SAME_WITHIN = 1e-9;

/** Dimensions of a mathjs unit; null where it measures what has no place in a calculation, such as bits. */
export function dimensionOf(spelling: string): Dimension | null {
  if (spelling === '') return NO_DIMENSION;
  const powers = exponents(spelling);
  if (powers.some((power, i) => power && i > ANGLE && i !== MONEY)) return null;
  return [...powers.slice(0, PHYSICAL), powers[MONEY]].map((power) => power || 0);
}

export const multiplied = (a: Dimension, b: Dimension, power = 1): Dimension =>
  a.map((d, i) => d + power * b[i]!);
export const raised = (a: Dimension, power: number): Dimension => a.map((d) => d * power);
export const isSame = (a: Dimension, b: Dimension): boolean =>
  a.every((d, i) => Math.abs(d - b[i]!) < SAME_WITHIN);
export const isNone = (a: Dimension): boolean => isSame(a, NO_DIMENSION);
export const isTemperature = (a: Dimension): boolean => isSame(a, TEMPERATURE);

const known = new Map<Quantity, Dimension>();

/** Dimensions of a kind of quantity. */
export function dimensionOfQuantity(quantity: Quantity): Dimension {
  let dimension = known.get(quantity);
  if (!dimension) known.set(quantity, (dimension = dimensionOf(siOf(quantity))!));
  return dimension;
}

/** The kind a result is taken for when its dimensions are all that is known of it. */
const USUAL = [
  'ratio',
  'temperatureDifference',
  'pressureDrop',
  'length',
  'area',
  'volume',
  'volumeFlow',
  'massFlow',
  'velocity',
  'acceleration',
  'heat',
  'conductance',
  'thermalResistance',
  'heatCapacity',
  'energy',
  'specificHeat',
  'latentHeat',
  'volumetricHeatCapacity',
  'density',
  'viscosity',
  'conductivity',
  'heatTransferCoefficient',
  'massVelocity',
  'mass',
  'time',
  'voltage',
  'current',
  'resistance',
  'frequency',
  'money',
  'costPerDegree',
] as const satisfies readonly Quantity[];

export const usualQuantity = (dimension: Dimension): Quantity | undefined =>
  USUAL.find((quantity) => isSame(dimensionOfQuantity(quantity), dimension));

const SI_BASE = ['kg', 'm', 's', 'A', 'K', 'cd', 'mol', 'dollar'] as const;
const US_BASE = ['lbm', 'ft', 's', 'A', 'degR', 'cd', 'mol', 'dollar'] as const;

/** Base units, for a result that no kind of quantity has: name and exponent. */
export const baseUnits = (dimension: Dimension, system: 'US' | 'SI') =>
  (system === 'US' ? US_BASE : SI_BASE)
    .map((name, i) => [name, Math.round(dimension[i]! * 1e6) / 1e6] as const)
    .filter(([, power]) => power !== 0);

/** The SI unit in words, for a message: a bare number says so. */
export const unitWords = (dimension: Dimension): string =>
  isNone(dimension) ? 'a bare number' : siUnit(dimension);

/** The SI unit: `W`, `kg/m^3`, `kg m^-1`; empty for a bare number. */
export function siUnit(dimension: Dimension): string {
  const usual = usualQuantity(dimension);
  if (usual) return SI_UNIT[usual];
  return baseUnits(dimension, 'SI')
    .map(([name, power]) => (power === 1 ? name : `${name}^${power}`))
    .join(' ');
}

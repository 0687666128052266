/** Units as logs write them, as a straight line to SI. */
import type { Quantity } from '$lib/solver/quantity';
import { unitNamed } from '$lib/units/names';
import { dimensionsOf, scaleOf, siOf, type Scale } from '$lib/units/scale';

/** Kinds a log holds, in the order in which a bare unit is taken for one. */
export const LOGGED = [
  'temperature',
  'volumeFlow',
  'voltage',
  'current',
  'pressure',
  'time',
  'speed',
  'rotation',
  'airMassFlow',
  'percent',
  'heat',
] as const satisfies readonly Quantity[];
export type LoggedQuantity = (typeof LOGGED)[number];

/** Milliseconds and microseconds, which no sheet asks for. */
const TIMES: Readonly<Record<string, number>> = { ms: 1e-3, msec: 1e-3, us: 1e-6, µs: 1e-6 };

/** `si = factor x + offset`; null where `unit` is not one of `quantity`. */
export function logScale(unit: string, quantity: LoggedQuantity): Scale | null {
  const text = unit.trim();
  if (quantity === 'time' && Object.hasOwn(TIMES, text.toLowerCase()))
    return { factor: TIMES[text.toLowerCase()]!, offset: 0 };
  const named = unitNamed(text, quantity);
  if (!named) return null;
  if (named.spelling === '%') return quantity === 'percent' ? { factor: 0.01, offset: 0 } : null;
  if (dimensionsOf(named.spelling) !== dimensionsOf(siOf(quantity))) return null;
  return scaleOf(named.spelling, siOf(quantity));
}

/** Whether a quantity that is logged is measured in it. */
export const isLoggedUnit = (unit: string): boolean =>
  unit !== '' && LOGGED.some((quantity) => logScale(unit, quantity) !== null);

/** Whether it is a unit at all: of a level, a weight, whatever stands in a log beside the loop. */
export const isAnyUnit = (unit: string): boolean =>
  isLoggedUnit(unit) || (unit !== '' && unitNamed(unit, 'ratio') !== undefined);

/** Kinds that a unit may measure. */
export const quantitiesOf = (unit: string): readonly LoggedQuantity[] =>
  LOGGED.filter((quantity) => logScale(unit, quantity) !== null);

/** Numbers into words: with plot/axis.ts the kit's one contact with the units. */
import { formatQuantity, type UnitSystem } from '$lib/units';
import type { Quantity, Words } from './types';

/** What a difference of two values is called: two temperatures differ by degrees, not by a temperature. */
const DIFFERENCE: Partial<Record<Quantity, Quantity>> = {
  temperature: 'temperatureDifference',
  absoluteTemperature: 'temperatureDifference',
  pressure: 'pressureDrop',
  gaugePressure: 'pressureDrop',
};

export const differenceOf = (quantity: Quantity): Quantity => DIFFERENCE[quantity] ?? quantity;

/** A value and its unit as separate texts, so that the unit can be set smaller. */
export function shown(si: number, quantity: Quantity, system: UnitSystem) {
  const { text, unit } = formatQuantity(si, quantity, system);
  return { text, unit };
}

/** A value with its unit in one text that does not break. */
export function worded(si: number, quantity: Quantity, system: UnitSystem): string {
  const { text, unit } = shown(si, quantity, system);
  return unit ? `${text}\u00a0${unit}` : text;
}

/** A difference with its sign always shown; one that prints as nothing has none. */
export function signed(si: number, quantity: Quantity, system: UnitSystem) {
  const { text, unit } = shown(si, quantity, system);
  const zero = !/[1-9]/.test(text);
  return { text: zero ? text.replace('−', '') : si > 0 ? `+${text}` : text, unit, zero };
}

/** A sentence as one text, its numbers in the reader's units. */
export function sentence(words: Words, system: UnitSystem): string {
  if (typeof words === 'string') return words;
  return words
    .map((w) => (typeof w === 'string' ? w : worded(w.value, w.quantity, system)))
    .join('');
}

/** Numbers into words: with plot/axis.ts the kit's one contact with the units. */
import { formatQuantity, shownUnit, type UnitSystem } from '$lib/units';
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
export function worded(
  si: number,
  quantity: Quantity,
  system: UnitSystem,
  decimals?: number,
): string {
  const options = decimals === undefined ? {} : { decimals };
  const { text, unit } = formatQuantity(si, quantity, system, options);
  return unit ? `${text}\u00a0${unit}` : text;
}

export const decimalsOf = (text: string): number => text.split('.')[1]?.length ?? 0;

/**
 * `b − a` with its sign always shown and no more decimals than the two values are printed with; a
 * difference that prints as nothing has no sign.
 */
export function difference(
  a: number,
  b: number,
  quantity: Quantity,
  system: UnitSystem,
  as: Quantity = differenceOf(quantity),
) {
  // A nought is printed bare and says nothing about decimals.
  const printed = [a, b]
    .map((si) => formatQuantity(si, quantity, system).text)
    .filter((text) => text !== '0');
  const plain = printed.length > 0 && printed.every((text) => !text.includes('×'));
  const decimals = Math.min(...printed.map(decimalsOf));
  const { text, unit } = formatQuantity(b - a, as, system, plain ? { decimals } : {});
  const zero = !/[1-9]/.test(text);
  return { text: zero ? text.replace('−', '') : b > a ? `+${text}` : text, unit, zero };
}

/**
 * Half width of an uncertainty: two digits are all it deserves.
 * @param of - the value it is the ± of, SI: a long time is told in minutes, and so is its ±
 */
export const spreadText = (
  si: number,
  quantity: Quantity,
  system: UnitSystem,
  of: number = si,
): string =>
  formatQuantity(si, quantity, system, { digits: 2, unit: shownUnit(quantity, system, of) }).text;

/** Digits a number deserves inside a sentence; the lines carry the rest. */
const SPOKEN_DIGITS = 3;

/** A value as said in a sentence: its words tell a difference from a temperature, so the sign Δ goes. */
export function spoken(
  si: number,
  quantity: Quantity,
  system: UnitSystem,
  plusMinus?: number,
): string {
  const { text, unit } = formatQuantity(si, quantity, system, { digits: SPOKEN_DIGITS });
  const spread =
    plusMinus === undefined
      ? ''
      : `\u00a0±\u00a0${spreadText(plusMinus, differenceOf(quantity), system, si)}`;
  return unit ? `${text}${spread}\u00a0${unit.replace('Δ', '')}` : `${text}${spread}`;
}

/** An end of a range: two digits are all it claims. */
export function rough(si: number, quantity: Quantity, system: UnitSystem): string {
  const { text, unit } = formatQuantity(si, quantity, system, { digits: 2 });
  return unit ? `${text}\u00a0${unit.replace('Δ', '')}` : text;
}

/** A sentence as one text, its numbers in the reader's units. */
export function sentence(words: Words, system: UnitSystem): string {
  if (typeof words === 'string') return words;
  return words
    .map((w) => (typeof w === 'string' ? w : spoken(w.value, w.quantity, system, w.plusMinus)))
    .join('');
}

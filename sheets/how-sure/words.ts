/** Names of inputs inside sentences and beside bars; chances and shares in words. */
import { FIELD_GROUPS, fieldAt } from '$lib/job/fields';
import { formatQuantity, type UnitSystem } from '$lib/units';

/** Shares below this are not worth a measurement. */
export const WORTH = 0.05;

/** An input inside a sentence. */
export function nameOf(path: string): string {
  const { label } = fieldAt(path);
  return label.charAt(0).toLowerCase() + label.slice(1);
}

/** An input beside a bar: with the part of the vehicle it belongs to. */
export function wordsOf(path: string): string {
  const field = fieldAt(path);
  const home = FIELD_GROUPS.find((group) => group.fields.includes(field));
  return home && !field.label.includes(home.title) ? `${home.title}: ${field.label}` : field.label;
}

/** An error of a share: a digit or two is all it deserves. */
export const roughly = (share: number, system: UnitSystem): string => {
  const { text, unit } = formatQuantity(share, 'percent', system, { digits: 2 });
  return `${text}\u00a0${unit}`;
};

/** A chance counted from some thousand draws: whole per cents, and never quite sure unless it is. */
export function chanceWords(chance: number, system: UnitSystem): string {
  if (chance > 0 && chance < 0.005) return 'under 1\u00a0%';
  if (chance < 1 && chance > 0.995) return 'over 99\u00a0%';
  const { text, unit } = formatQuantity(chance, 'percent', system, { decimals: 0 });
  return `${text}\u00a0${unit}`;
}

/**
 * A share as a bar shows it: to a tenth of a per cent, which is all its error allows; an estimate of
 * next to nothing may fall below nothing, a bar cannot.
 */
export const shownShare = (share: number): number => Math.round(Math.max(0, share) * 1000) / 1000;

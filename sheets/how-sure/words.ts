/** Names of inputs inside sentences and beside bars. */
import { FIELD_GROUPS, fieldAt } from '$lib/job/fields';

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

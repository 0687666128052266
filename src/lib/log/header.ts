/** A column's heading: what is measured and in which unit. */
import { isAnyUnit, isLoggedUnit } from './units';

export interface Heading {
  /** As written, trimmed. */
  readonly text: string;
  /** Without its unit. */
  readonly name: string;
  /** '' where none is written. */
  readonly unit: string;
}

const BRACKETS = /^(.*?)\s*[([{]\s*([^()[\]{}]*)\s*[)\]}]\s*$/;
/** `oil temp, degF`, `flow / gpm`, `volts: V`. */
const TAIL = /^(.+?)\s*(?:,|\s\/|:|\s-\s|\s–\s)\s*([^\s,:][^,:]{0,14})$/;
const UNDERSCORE = /^(.+)_([A-Za-z°%/]{1,6})$/;

/**
 * Split a heading; a unit row beneath, where there is one, goes before what the heading itself says.
 * In brackets any unit is believed; after a comma or an underscore only one of a logged quantity, since
 * `front_in` is no length.
 */
export function heading(text: string, unitBelow: string): Heading {
  const trimmed = text.trim();
  const below = bare(unitBelow);
  for (const pattern of [BRACKETS, TAIL, UNDERSCORE]) {
    const match = pattern.exec(trimmed);
    const unit = match?.[2]!.trim() ?? '';
    if (match && (pattern === BRACKETS ? isAnyUnit(unit) : isLoggedUnit(unit)))
      return { text: trimmed, name: match[1]!.trim(), unit: below || unit };
  }
  return { text: trimmed, name: trimmed, unit: below };
}

/** A unit as a row of units writes it: brackets off, a stroke for "none" is none. */
export function bare(unit: string): string {
  const text = unit.trim().replace(/^[([{]\s*(.*?)\s*[)\]}]$/, '$1');
  return /^(-+|–|—|n\/?a|none|1)$/i.test(text) ? '' : text;
}

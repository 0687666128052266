import type { Quantity } from '$lib/solver/quantity';
import { dashBore, dashNumber, type DashContext } from './dash';
import { DISPLAY, type UnitSystem } from './display';
import { showQuantity, toSI } from './format';
import { unitNamed } from './names';
import { readNumber, type ReadNumber } from './number';
import { readResistor } from './resistor';
import { dimensionsOf, scaleOf, siOf } from './scale';

export type ParseCode =
  | 'empty'
  | 'too-long'
  | 'not-a-number'
  | 'unknown-unit'
  | 'wrong-dimension'
  | 'gauge-or-absolute'
  | 'too-large'
  | 'unknown-dash';

export interface ParseContext {
  /** System whose unit a bare number takes; US unless told. */
  readonly system?: UnitSystem;
  /** How dash sizes are read; without it they are refused. */
  readonly dash?: DashContext;
}

export interface Parsed {
  readonly ok: true;
  readonly si: number;
  /** mathjs spelling of the unit read or assumed. */
  readonly unit: string;
  /** The text with the unit that was assumed put behind it: means the same in either system. */
  readonly text: string;
  /** What the reader must be told: a unit assumed, a dash size interpreted. */
  readonly note?: string;
}

export interface NotParsed {
  readonly ok: false;
  readonly code: ParseCode;
  readonly message: string;
  /** "a volume flow such as 8 gpm or 30.3 L/min" */
  readonly expected: string;
}

/** No quantity of a vehicle needs more. */
const LONGEST = 60;
const LARGEST = 1e12;

/** What was wanted, with an example in each system. */
export function expectedWords(quantity: Quantity): string {
  const { noun, example } = DISPLAY[quantity];
  const [us, si] = example;
  return us === si ? `${noun} such as ${us}` : `${noun} such as ${us} or ${si}`;
}

/**
 * Read a quantity as people type it. Nothing is evaluated: a number is read, a unit is looked up.
 * @example parseQuantity('20 gpm', 'volumeFlow') // { ok: true, si: 0.001261803928, … }
 */
export function parseQuantity(
  typed: string,
  quantity: Quantity,
  context: ParseContext = {},
): Parsed | NotParsed {
  const expected = expectedWords(quantity);
  const refuse = (code: ParseCode, message: string): NotParsed => ({
    ok: false,
    code,
    message,
    expected,
  });
  if (typed.length > LONGEST) {
    return refuse('too-long', `Too long to be a value. Enter ${expected}.`);
  }
  const said = plain(typed);
  const text = signBehind(said);
  if (text === '') return refuse('empty', `Nothing entered. Enter ${expected}.`);

  if (quantity === 'bore') {
    const dash = dashNumber(text);
    if (dash !== null) return parseDash(dash, text, context, refuse);
  }

  const first = quantity === 'resistance' ? readResistor(text) : readNumber(text);
  if (!first || !Number.isFinite(first.value)) {
    return refuse('not-a-number', `“${text}” is not a number. Enter ${expected}.`);
  }
  if (Math.abs(first.value) > LARGEST) {
    return refuse('too-large', `${text} is too large to be meant. Enter ${expected}.`);
  }
  const notes: string[] = [];
  if (first.doubtful) {
    notes.push(`${first.doubtful} read as ${first.value}; write a decimal comma as a point here`);
  }

  const pair = readPair(first, quantity);
  if (pair !== null) return { ok: true, si: pair, unit: siOf(quantity), text, ...noteOf(notes) };

  const unitText = first.rest.trim();
  if (unitText === '') return bare(first.value, text, quantity, context, notes);
  const unit = unitNamed(unitText, quantity);
  if (!unit) {
    return refuse('unknown-unit', `“${unitText}” is not a unit known here. Enter ${expected}.`);
  }
  const { noun } = DISPLAY[quantity];
  if (!measures(unit.spelling, quantity)) {
    return refuse('wrong-dimension', `“${unitText}” does not measure ${noun}. Enter ${expected}.`);
  }
  if (unit.only && !unit.only.includes(quantity)) {
    const kind = unit.only.includes('pressure') ? 'absolute' : 'gauge';
    return refuse('gauge-or-absolute', `“${unitText}” is ${kind}. Enter ${expected}.`);
  }
  if (unit.note) notes.push(unit.note);
  const si = convert(first.value, unit.spelling, quantity);
  return { ok: true, si, unit: unit.spelling, text: said, ...noteOf(notes) };
}

/** A number without a unit takes that of the system. */
function bare(
  value: number,
  text: string,
  quantity: Quantity,
  context: ParseContext,
  notes: string[],
): Parsed {
  const unit = DISPLAY[quantity][context.system ?? 'US'];
  // A sum of money is one, with its sign or without.
  if (unit.label !== '' && !unit.sign) notes.push(`${unit.label} assumed`);
  return {
    ok: true,
    si: convert(value, unit.spelling, quantity),
    unit: unit.spelling,
    text: unit.sign ? unit.sign + text : unit.label === '' ? text : `${text} ${unit.label}`,
    ...noteOf(notes),
  };
}

function parseDash(
  dash: number,
  text: string,
  context: ParseContext,
  refuse: (code: ParseCode, message: string) => NotParsed,
): Parsed | NotParsed {
  const found = context.dash && dashBore(dash, context.dash);
  if (!found) {
    return refuse(
      'unknown-dash',
      `No bore is known for dash size ${dash}. Measure the bore and enter it, such as 0.75 in or 19 mm.`,
    );
  }
  const show = (bore: number) => showQuantity(bore, 'bore', context.system ?? 'US', { digits: 3 });
  const note = `−${dash} taken as ${show(found.bore)}; ${found.otherWords} it would be ${show(found.other)}. Measure the bore.`;
  return { ok: true, si: found.bore, unit: 'm', text, note };
}

/** A difference of temperatures has no zero point: 10 °F is 10 steps of 1 °F. */
function convert(value: number, spelling: string, quantity: Quantity): number {
  const scale = scaleOf(spelling, siOf(quantity));
  return quantity === 'temperatureDifference' ? value * scale.factor : toSI(value, scale);
}

/** Per cent has no dimension, yet "50 %" is no count. */
function measures(spelling: string, quantity: Quantity): boolean {
  if (spelling === '%') return quantity === 'ratio' || quantity === 'percent';
  return dimensionsOf(spelling) === dimensionsOf(siOf(quantity));
}

const PAIR = /^\s*(ft|feet|foot|'|min|h|hr)\s*(\d.*)$/i;

/** Units that may follow each other: 5 ft 6 in, 1 min 30 s, 1 h 20 min. */
const FOLLOWS: Readonly<Record<string, string>> = { ft: 'in', minute: 's', hour: 'minute' };

/** SI value of a pair such as 5 ft 6 in; null when the text is none. */
function readPair(first: ReadNumber, quantity: Quantity): number | null {
  const match = PAIR.exec(first.rest);
  const second = match && readNumber(match[2]!);
  if (!second) return null;
  const large = unitNamed(match[1]!, quantity);
  const small = unitNamed(second.rest.trim(), quantity);
  if (!large || !small || FOLLOWS[large.spelling] !== small.spelling) return null;
  if (!measures(large.spelling, quantity)) return null;
  const sign = first.value < 0 ? -1 : 1;
  return (
    convert(first.value, large.spelling, quantity) +
    sign * convert(second.value, small.spelling, quantity)
  );
}

const VULGAR = /(\d)\s*(?=[¼-¾⅐-⅞])/g;

/** One spelling for the many signs that look alike. */
function plain(typed: string): string {
  return typed
    .replace(VULGAR, '$1 ')
    .replace(/[”“″‟]|''|’’/g, '"')
    .replace(/[’‘′]/g, "'")
    .normalize('NFKC')
    .replace(/[−–‒‐‑—]/g, '-')
    .replace(/⁄/g, '/')
    .replace(/\s+/g, ' ')
    .trim();
}

/** A currency sign stands before its number; it is read like any unit behind it. */
const signBehind = (text: string): string =>
  text.replace(/^(-?)\$ ?(\d[\d., ]*\d|[\d.]+) ?/, '$1$2 $$');

const noteOf = (notes: readonly string[]) => (notes.length > 0 ? { note: notes.join('; ') } : {});

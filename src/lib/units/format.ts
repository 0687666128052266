import type { Quantity } from '$lib/solver/quantity';
import { DISPLAY, shownUnit, type ShownUnit, type UnitSystem } from './display';
import { scaleOf, siOf, type Scale } from './scale';

export interface FormatOptions {
  /** Significant digits, 4 unless told. */
  readonly digits?: number;
  /** Most decimals, whatever the digits; the quantity's own limit unless told. */
  readonly decimals?: number;
  /** Keep this unit, e.g. that of a plot's axis. */
  readonly unit?: ShownUnit;
}

/** One number as printed, in every form a sheet needs it. */
export interface Formatted {
  /** The number alone: thousands separators, true minus sign, `1.23×10⁻⁵` where long. */
  readonly text: string;
  /** Label of the unit, '' for a bare number. */
  readonly unit: string;
  /** Number and unit, typeset. */
  readonly tex: string;
  /** Number and unit for mathjs; put brackets round it inside a larger expression. */
  readonly expr: string;
  /** The number as printed, in `unit`. */
  readonly value: number;
  /** Half a unit in the last printed place, in `unit`. */
  readonly halfUlp: number;
}

/** Beyond these a power of ten is printed. */
const LONG = 1e7;
const SHORT = 1e-4;

/**
 * Print an SI value in the unit of `system`.
 * @example formatQuantity(132379.34, 'pressureDrop', 'US').text // '19.20'
 */
export function formatQuantity(
  si: number,
  quantity: Quantity,
  system: UnitSystem,
  options: FormatOptions = {},
): Formatted {
  const unit = options.unit ?? shownUnit(quantity, system, si);
  const shown = fromSI(si, scaleOf(unit.spelling, siOf(quantity)));
  // What is counted is said whole; where it needs a power of ten that is no longer so.
  const whole = Math.abs(shown) < LONG;
  const told =
    quantity === 'money' && options.decimals === undefined && whole
      ? { ...options, ...CENTS(shown) }
      : options;
  const decimals = told.decimals ?? DISPLAY[quantity].decimals ?? Infinity;
  const digits = quantity === 'count' && whole ? 15 : (told.digits ?? 4);
  const number = printNumber(shown, digits, decimals);
  const tex =
    unit.tex === '' ? number.tex : `${number.tex}${unit.spelling === '%' ? '' : '\\,'}${unit.tex}`;
  if (unit.sign !== undefined) return signed(unit, number, tex);
  return {
    text: number.text,
    unit: unit.label,
    tex,
    expr: exprOf(number.plain, unit.spelling),
    value: number.value,
    halfUlp: number.halfUlp,
  };
}

/** Money: its sign stands before the number, after a minus. */
function signed(
  { sign = '', label, spelling }: ShownUnit,
  { text, plain, value, halfUlp }: Printed,
  tex: string,
): Formatted {
  const put = (number: string, minus: string, what: string) =>
    number.startsWith(minus) ? minus + what + number.slice(minus.length) : what + number;
  return {
    text: put(text, '−', sign),
    unit: label.replace(sign, ''),
    tex: put(tex, '-', `\\${sign}`),
    expr: exprOf(plain, spelling),
    value,
    halfUlp,
  };
}

/** A whole amount is said without cents, any other to the cent. */
const CENTS = (amount: number) => ({
  digits: 15,
  decimals: Math.round(amount * 100) % 100 === 0 ? 0 : 2,
});

/** Number and unit as one text, e.g. `19.20 psi`. */
export function showQuantity(
  si: number,
  quantity: Quantity,
  system: UnitSystem,
  options: FormatOptions = {},
): string {
  const { text, unit } = formatQuantity(si, quantity, system, options);
  return unit === '' ? text : `${text} ${unit}`;
}

/** Looked up by what they are of: a plot asks for every point. */
const shownScales = { US: new Map<Quantity, Scale>(), SI: new Map<Quantity, Scale>() };

function shownScale(quantity: Quantity, system: UnitSystem): Scale {
  let scale = shownScales[system].get(quantity);
  if (!scale) {
    scale = scaleOf(DISPLAY[quantity][system].spelling, siOf(quantity));
    shownScales[system].set(quantity, scale);
  }
  return scale;
}

/** SI value in the unit of an input, an axis or a table head. */
export const toShown = (si: number, quantity: Quantity, system: UnitSystem): number =>
  fromSI(si, shownScale(quantity, system));

/** The inverse of {@link toShown}. */
export const fromShown = (shown: number, quantity: Quantity, system: UnitSystem): number =>
  toSI(shown, shownScale(quantity, system));

export const fromSI = (si: number, { factor, offset }: Scale) => (si - offset) / factor;
export const toSI = (shown: number, { factor, offset }: Scale) => shown * factor + offset;

/**
 * mathjs gives a wrong answer for the difference of two degF, so a temperature is written from
 * absolute zero, as one would by hand.
 */
function exprOf(plain: string, spelling: string): string {
  switch (spelling) {
    case '':
      return plain;
    case '%':
      return `${plain} / 100`;
    case 'degF':
      return `(${plain} + 459.67) degR`;
    case 'degC':
      return `(${plain} + 273.15) K`;
    default:
      // To mathjs's parser `in` is also the word of a conversion: "180 in^2" does not parse.
      return `${plain} ${spelling.replace(/^in\b/, 'inch')}`;
  }
}

interface Printed {
  readonly text: string;
  readonly plain: string;
  readonly tex: string;
  readonly value: number;
  readonly halfUlp: number;
}

/** Print a bare number to so many significant digits and at most so many decimals. */
export function printNumber(x: number, digits: number, decimals = Infinity): Printed {
  if (!Number.isFinite(x)) {
    return { text: '–', plain: 'NaN', tex: '\\text{–}', value: NaN, halfUlp: NaN };
  }
  if (x === 0) return { text: '0', plain: '0', tex: '0', value: 0, halfUlp: 0 };
  const size = Math.abs(x);
  if (size >= LONG || size < SHORT) {
    const [mantissa, exponent] = x.toExponential(digits - 1).split('e') as [string, string];
    const power = Number(exponent);
    // A number too small for its decimals is printed as a zero of that many decimals.
    if (power >= -decimals) {
      return {
        text: `${minus(mantissa)}×10${superscript(power)}`,
        plain: `${mantissa}e${power}`,
        tex: `${mantissa}\\times 10^{${power}}`,
        value: Number(`${mantissa}e${power}`),
        halfUlp: Number(`0.5e${power - digits + 1}`),
      };
    }
  }
  // Exponent after rounding: 9.9996 has one digit before the point until it is printed as 10.00.
  const exponent = Number(x.toExponential(digits - 1).split('e')[1]);
  const places = Math.min(digits - 1 - exponent, decimals);
  const plain = unsignedZero(places >= 0 ? x.toFixed(places) : roundTo(x, places));
  const [whole, fraction] = plain.replace('-', '').split('.') as [string, string?];
  const grouped = whole.length > 4 || (whole.length === 4 && !fraction) ? group(whole, ',') : whole;
  const sign = plain.startsWith('-') ? '−' : '';
  return {
    text: `${sign}${grouped}${fraction ? `.${fraction}` : ''}`,
    plain,
    tex: plain,
    value: Number(plain),
    halfUlp: Number(`0.5e${-places}`),
  };
}

const roundTo = (x: number, places: number) => String(Math.round(x * 10 ** places) * 10 ** -places);
const unsignedZero = (text: string) => (Number(text) === 0 ? text.replace('-', '') : text);
const minus = (text: string) => text.replace('-', '−');
const group = (whole: string, mark: string) => whole.replace(/\B(?=(\d{3})+$)/g, mark);

const SUPERSCRIPTS = '⁰¹²³⁴⁵⁶⁷⁸⁹';
const superscript = (power: number) =>
  String(power)
    .replace(/-/, '⁻')
    .replace(/\d/g, (digit) => SUPERSCRIPTS[Number(digit)]!);

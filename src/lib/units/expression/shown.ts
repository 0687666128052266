/** How an amount is printed: in the reader's units for its kind, in the unit asked for, or in base units. */
import type { Quantity } from '$lib/solver/quantity';
import type { UnitSystem } from '../display';
import { formatQuantity, printNumber, type Formatted } from '../format';
import { unitNamed } from '../names';
import { temperatureKind, type Amount, AmountRefused, amountWords } from './amount';
import {
  baseUnits,
  dimensionOfQuantity,
  isNone,
  isSame,
  isTemperature,
  unitWords,
  usualQuantity,
  type Dimension,
} from './dimension';
import { readUnitProduct } from './read';
import { measureOf, shiftedUnit } from './tree';
import { productTex } from './typeset';
import { unitWord } from './unitWords';

/** A unit asked for by name; it stays whatever the reader's system. */
export interface WishedUnit {
  readonly label: string;
  readonly tex: string;
  /** For mathjs; put behind a number. */
  readonly spelling: string;
  readonly factor: number;
  readonly offset: number;
}

export type Shown =
  | { readonly as: 'quantity'; readonly quantity: Quantity }
  | { readonly as: 'unit'; readonly unit: WishedUnit }
  | { readonly as: 'base'; readonly dimension: Dimension };

export type Choice =
  { readonly ok: true; readonly shown: Shown } | { readonly ok: false; readonly message: string };

/** How `amount` is shown when no unit is asked for. */
export function naturally(amount: Amount): Choice {
  try {
    const quantity = isTemperature(amount.dimension)
      ? amount.quantity === 'beta'
        ? 'beta'
        : temperatureKind(amount)
      : fitting(amount);
    return {
      ok: true,
      shown: quantity ? { as: 'quantity', quantity } : { as: 'base', dimension: amount.dimension },
    };
  } catch (thrown) {
    if (thrown instanceof AmountRefused) return { ok: false, message: thrown.message };
    throw thrown;
  }
}

const fitting = ({ quantity, dimension }: Amount): Quantity | undefined =>
  quantity && isSame(dimensionOfQuantity(quantity), dimension)
    ? quantity
    : usualQuantity(dimension);

/** How `amount` is shown in the unit that `typed` names; empty: naturally. */
export function shownIn(amount: Amount, typed: string): Choice {
  const natural = naturally(amount);
  if (!natural.ok || typed.trim() === '') return natural;
  const unit = wished(typed.trim());
  if (!unit) {
    return {
      ok: false,
      message: `“${typed.trim()}” is not a unit known here. ${expected(amount)}`,
    };
  }
  if (!isSame(unit.dimension, amount.dimension)) {
    return {
      ok: false,
      message: `“${typed.trim()}” measures ${unitWords(unit.dimension)}. ${expected(amount)}`,
    };
  }
  // Steps of a difference are counted without the zero of the scale.
  const steps = isTemperature(amount.dimension) && amount.zeros === 0;
  const { label, tex, spelling, factor, offset } = unit;
  return {
    ok: true,
    shown: {
      as: 'unit',
      unit: {
        label: steps && offset !== 0 ? `Δ${label}` : label,
        tex: steps && offset !== 0 ? `\\Delta ${tex}` : tex,
        spelling,
        factor,
        offset: steps ? 0 : offset,
      },
    },
  };
}

const expected = (amount: Amount) =>
  isNone(amount.dimension)
    ? 'The result is a bare number: leave the unit empty, or write %.'
    : `The result is ${amountWords(amount)}.`;

interface Wished extends WishedUnit {
  readonly dimension: Dimension;
}

function wished(typed: string): Wished | null {
  if (typed === '%') {
    const dimension = dimensionOfQuantity('ratio');
    return { label: '%', tex: '\\%', spelling: '%', factor: 0.01, offset: 0, dimension };
  }
  // As the blanks of the sheets take it, else as an expression does.
  const read = readUnitProduct(typed);
  const named = read.ok ? null : unitNamed(typed, 'ratio');
  const product = named ? readUnitProduct(named.spelling) : read;
  if (!product.ok) return null;
  const { factor, dimension } = measureOf(product.unit);
  const shifted = shiftedUnit(product.unit);
  return {
    label: labelOf(typed),
    tex: productTex(product.unit),
    spelling: product.unit.parts
      .map(({ word, power }) => `(${word.spelling})^(${power})`)
      .join(' * '),
    factor,
    offset: shifted?.offset ?? 0,
    dimension,
  };
}

/** As typed, with the signs of print. */
const labelOf = (typed: string) =>
  typed
    .slice(0, 40)
    .replace(/\bdeg([FCR])\b/g, '°$1')
    .replace(/\bdelta([FC])\b/g, 'Δ°$1')
    .replace(/\*/g, '·')
    .replace(/\^2(?!\d)/g, '²')
    .replace(/\^3(?!\d)/g, '³');

/** Print an SI value as `shown` says. */
export function printAs(si: number, shown: Shown, system: UnitSystem): Formatted {
  switch (shown.as) {
    case 'quantity':
      return formatQuantity(si, shown.quantity, system);
    case 'unit':
      return printIn(si, shown.unit);
    case 'base':
      return printIn(si, baseUnit(shown.dimension, system));
  }
}

function printIn(si: number, unit: WishedUnit): Formatted {
  const number = printNumber((si - unit.offset) / unit.factor, 4);
  const percent = unit.spelling === '%';
  const expr = percent
    ? `${number.plain} / 100`
    : unit.offset !== 0
      ? `(${number.plain} * ${unit.factor} + ${unit.offset}) K`
      : `${number.plain} * ${unit.spelling}`;
  return {
    text: number.text,
    unit: unit.label,
    tex: `${number.tex}${percent ? '' : '\\,'}${unit.tex}`,
    expr,
    value: number.value,
    halfUlp: number.halfUlp,
  };
}

const POWERS: Readonly<Record<string, string>> = {
  '2': '²',
  '3': '³',
  '-1': '⁻¹',
  '-2': '⁻²',
  '-3': '⁻³',
};

function baseUnit(dimension: Dimension, system: UnitSystem): WishedUnit {
  const parts = baseUnits(dimension, system).map(([name, power]) => ({
    word: unitWord(name)!,
    power,
  }));
  const names: Readonly<Record<string, string>> = { lbm: 'lb', degR: '°R' };
  return {
    label: parts
      .map(({ word, power }) => {
        const name = names[word.name] ?? word.name;
        return power === 1 ? name : `${name}${POWERS[String(power)] ?? `^${power}`}`;
      })
      .join('·'),
    tex: productTex({ parts }),
    spelling: parts.map(({ word, power }) => `(${word.spelling})^(${power})`).join(' * '),
    factor: measureOf({ parts }).factor,
    offset: 0,
  };
}

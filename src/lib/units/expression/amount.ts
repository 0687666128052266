/**
 * Amounts with dimension, and the operations on them. Temperatures follow the rules of the sheets'
 * own formulas: they are counted in kelvin; a difference has no zero point; where a temperature is
 * multiplied it counts from absolute zero.
 */
import type { Quantity } from '$lib/solver/quantity';
import { DISPLAY } from '../display';
import {
  dimensionOfQuantity,
  isNone,
  isSame,
  isTemperature,
  multiplied,
  NO_DIMENSION,
  raised,
  siUnit,
  unitWords,
  usualQuantity,
  type Dimension,
} from './dimension';

export interface Amount {
  readonly si: number;
  readonly dimension: Dimension;
  /** Kind of quantity, where it is more than its dimensions. */
  readonly quantity?: Quantity;
  /** Of a temperature, how often absolute zero is in it: 1 a temperature, 0 a difference. */
  readonly zeros: number;
  /** A temperature that can only be meant as counted from absolute zero. */
  readonly absolute?: boolean;
  /** Temperatures were added on the way: sensible only as part of a mean. */
  readonly summed?: boolean;
}

/** Why an operation is refused, in plain words. */
export class AmountRefused extends Error {}
const refuse = (message: string): never => {
  throw new AmountRefused(message);
};

const LARGEST_EXPONENT = 20;
const LARGEST_RESULT = 1e30;

/** An amount of a known kind. */
export function amountOf(si: number, quantity: Quantity): Amount {
  return {
    si,
    dimension: dimensionOfQuantity(quantity),
    // A count worked on is a count no more: half of three is not printed whole.
    ...(quantity !== 'count' && { quantity }),
    zeros: quantity === 'temperature' || quantity === 'absoluteTemperature' ? 1 : 0,
    ...(quantity === 'absoluteTemperature' && { absolute: true }),
  };
}

export const bareNumber = (si: number): Amount => ({ si, dimension: NO_DIMENSION, zeros: 0 });

/** The unit of an amount in SI; empty for a bare number. */
export const siUnitOf = (amount: Amount): string => siUnit(amount.dimension);

/** "a heat flow (W)": an amount as a message names it. */
export function amountWords(amount: Amount): string {
  if (isNone(amount.dimension)) return 'a bare number';
  const quantity =
    amount.quantity ??
    (isTemperature(amount.dimension) && amount.zeros !== 0
      ? 'temperature'
      : usualQuantity(amount.dimension));
  const unit = unitWords(amount.dimension);
  return quantity ? `${DISPLAY[quantity].noun} (${unit})` : unit;
}

/** Refuses what is no number a person could use. */
function checked(amount: Amount): Amount {
  if (!Number.isFinite(amount.si))
    refuse('This has no result: it divides by nought or leaves the real numbers.');
  if (Math.abs(amount.si) > LARGEST_RESULT) refuse('A number on the way is too large to be meant.');
  return amount;
}

const ZERO_WITHIN = 1e-9;
const isWhole = (zeros: number, n: number) => Math.abs(zeros - n) < ZERO_WITHIN;

/** How a temperature stands: a difference, a temperature, or one counted from absolute zero. */
export function temperatureKind(amount: Amount): Quantity {
  if (amount.absolute) return 'absoluteTemperature';
  if (isWhole(amount.zeros, 0)) return 'temperatureDifference';
  if (isWhole(amount.zeros, 1)) return 'temperature';
  if (amount.summed) {
    refuse('Temperatures are added up. Their mean is (a + b) / 2, their difference a - b.');
  }
  return 'absoluteTemperature';
}

/** The kind of a sum or of a choice between two. */
function commonKind(a: Amount, b: Amount, minus: boolean): Quantity | undefined {
  const kinds = [a.quantity, b.quantity];
  if (kinds.includes('pressure') && kinds[0] !== undefined && kinds[1] !== undefined) {
    // Absolute pressures differ by a pressure drop; a drop or a gauge pressure shifts an absolute one.
    if (kinds[0] === kinds[1]) return minus ? 'pressureDrop' : 'pressure';
    return minus && kinds[1] === 'pressure' ? undefined : 'pressure';
  }
  return a.quantity ?? b.quantity;
}

export function sum(a: Amount, b: Amount, sign: 1 | -1): Amount {
  if (!isSame(a.dimension, b.dimension)) {
    refuse(
      sign === 1
        ? `You add ${amountWords(b)} to ${amountWords(a)}: both must measure the same.`
        : `You subtract ${amountWords(b)} from ${amountWords(a)}: both must measure the same.`,
    );
  }
  const si = a.si + sign * b.si;
  if (!isTemperature(a.dimension)) {
    const quantity = commonKind(a, b, sign === -1);
    return checked({ si, dimension: a.dimension, zeros: 0, ...(quantity && { quantity }) });
  }
  const zeros = a.zeros + sign * b.zeros;
  const difference = isWhole(zeros, 0);
  return checked({
    si,
    dimension: a.dimension,
    zeros,
    ...((a.absolute || b.absolute) && !difference && { absolute: true }),
    ...((a.summed || b.summed || (sign === 1 && a.zeros !== 0 && b.zeros !== 0)) && {
      summed: true,
    }),
  });
}

export const negated = (a: Amount): Amount => ({ ...a, si: -a.si, zeros: -a.zeros });

/** A temperature that is multiplied by more than a number written out. */
const fromAbsoluteZero = (a: Amount): Amount => {
  if (!isTemperature(a.dimension)) return a;
  return temperatureKind(a) === 'temperatureDifference'
    ? { ...a, zeros: 0 }
    : { si: a.si, dimension: a.dimension, zeros: 1, absolute: true };
};

/** @param written - the other factor is a number written out: half of a sum of two temperatures is a mean */
export function product(a: Amount, b: Amount, power: 1 | -1, written: 'a' | 'b' | null): Amount {
  const si = power === 1 ? a.si * b.si : a.si / b.si;
  const dimension = multiplied(a.dimension, b.dimension, power);
  const scaled = written === 'a' ? b : written === 'b' ? a : null;
  const factor = written === 'a' ? a.si : power === 1 ? b.si : 1 / b.si;
  if (scaled && (written === 'b' || power === 1)) {
    return checked({
      ...scaled,
      si,
      zeros: scaled.zeros * factor,
    });
  }
  const [x, y] = [fromAbsoluteZero(a), fromAbsoluteZero(b)];
  const kept = isNone(y.dimension) ? x : power === 1 && isNone(x.dimension) ? y : null;
  if (kept && !isNone(kept.dimension)) return checked({ ...kept, si });
  return checked({ si, dimension, zeros: 0 });
}

export function raisedTo(base: Amount, exponent: Amount, written: boolean): Amount {
  if (!isNone(exponent.dimension)) {
    refuse(`The exponent is ${amountWords(exponent)}; it must be a bare number.`);
  }
  if (Math.abs(exponent.si) > LARGEST_EXPONENT) {
    refuse(`An exponent is at most ${LARGEST_EXPONENT} here.`);
  }
  if (!isNone(base.dimension) && !written) {
    refuse(
      'The exponent of a quantity with a unit must be a number written out, such as 2 or 0.5.',
    );
  }
  const si = fromAbsoluteZero(base).si ** exponent.si;
  if (!Number.isFinite(si)) {
    refuse(
      base.si < 0
        ? 'A negative number has no power with a fraction.'
        : 'Nought has no negative power.',
    );
  }
  return checked({ si, dimension: raised(base.dimension, exponent.si), zeros: 0 });
}

export function squareRoot(a: Amount): Amount {
  if (a.si < 0) refuse('The square root of a negative number is asked for.');
  return checked({
    si: Math.sqrt(fromAbsoluteZero(a).si),
    dimension: raised(a.dimension, 0.5),
    zeros: 0,
  });
}

/** A function of bare numbers. */
export function ofNumber(name: string, a: Amount, work: (x: number) => number): Amount {
  if (!isNone(a.dimension)) {
    refuse(
      name === 'round'
        ? `round takes a bare number, not ${amountWords(a)}: divide by the unit first, such as round(Q / gpm).`
        : `${name} takes a bare number, not ${amountWords(a)}: divide it by one of its kind.`,
    );
  }
  if ((name === 'log' || name === 'log10') && !(a.si > 0)) {
    refuse(`${name} is asked of a number that is not above nought.`);
  }
  return checked(bareNumber(work(a.si)));
}

export const absolute = (a: Amount): Amount => {
  const x = isTemperature(a.dimension) && a.zeros !== 0 ? fromAbsoluteZero(a) : a;
  return { ...x, si: Math.abs(x.si) };
};

/** The least or largest of several of one kind. */
export function extreme(name: 'min' | 'max', all: readonly Amount[]): Amount {
  const [first, ...rest] = all as [Amount, ...Amount[]];
  for (const other of rest) {
    if (!isSame(first.dimension, other.dimension)) {
      refuse(
        `${name} compares ${amountWords(first)} with ${amountWords(other)}: all must measure the same.`,
      );
    }
    if (isTemperature(first.dimension) && !isWhole(first.zeros, other.zeros)) {
      refuse(`${name} compares a temperature with a difference of temperatures.`);
    }
  }
  const si = Math[name](...all.map((a) => a.si));
  const quantity = all.map((a) => a.quantity).find((q) => q !== undefined);
  return {
    ...first,
    si,
    ...(quantity && { quantity }),
    ...(all.some((a) => a.absolute) && { absolute: true }),
  };
}

/** Inclusive range of validity, SI. */
export type Interval = readonly [low: number, high: number];

/** What every error of the solver carries; the screen words the numbers in the user's units. */
export interface ErrorFacts {
  /** Stable key of the kind of error, e.g. `out-of-range`. */
  readonly code: string;
  /** Symbol or path of the quantity at fault. */
  readonly quantity?: string;
  readonly value?: number;
  readonly range?: Interval;
  /** The law or the part that refused. */
  readonly law?: string;
}

/** Base of every error the solver throws on purpose. */
export class SolverError extends Error {
  readonly facts: ErrorFacts;
  constructor(message: string, facts: ErrorFacts) {
    super(message);
    this.name = new.target.name;
    this.facts = facts;
  }
}

/** A value lies outside the range for which a law is stated. NaN counts as outside. */
export class OutOfRangeError extends SolverError {
  constructor(law: string, quantity: string, value: number, range: Interval) {
    super(`${law}: ${quantity} = ${value} is outside ${range[0]} to ${range[1]}`, {
      code: 'out-of-range',
      law,
      quantity,
      value,
      range,
    });
  }
}

/** The description of a part contradicts itself (a pump curve that rises, a fan larger than its core). */
export class InvalidInputError extends SolverError {
  /** `quantity` is the path of the field in {@link Loop}, e.g. `pump.curve`. */
  constructor(quantity: string, message: string, value?: number) {
    super(message, { code: 'invalid-input', quantity, value });
  }
}

/** A root was asked for where the function does not change sign, or an iteration ran out. */
export class NoRootError extends SolverError {
  constructor(message: string, facts: Omit<ErrorFacts, 'code'> = {}) {
    super(message, { code: 'no-root', ...facts });
  }
}

/**
 * Something the reader must be told although a value exists: a blend region, a point beyond a
 * curve's last entry, a rating point far away. Travels with the result; the screen and the print show it.
 */
export interface Note {
  readonly code: string;
  readonly message: string;
  readonly quantity?: string;
  readonly value?: number;
  readonly range?: Interval;
}

/**
 * Refuse values outside their stated ranges.
 * @throws {@link OutOfRangeError} for the first offender, NaN included
 */
export function requireWithin<K extends string>(
  law: string,
  ranges: Readonly<Record<K, Interval>>,
  values: Readonly<Record<NoInfer<K>, number>>,
): void {
  for (const key in ranges) {
    const [low, high] = ranges[key];
    const value = values[key];
    // Written with "not" so that NaN fails too.
    if (!(value >= low && value <= high)) throw new OutOfRangeError(law, key, value, ranges[key]);
  }
}

/** Checks of an instrument before it may be trusted: what it should read, and whether it did. */

/** What an instrument should read, SI: a value and how far off it may be. */
export interface Expected {
  readonly value: number;
  readonly plusMinus: number;
}

/**
 * Pressure of the air is this sure, Pa: weather moves it by some 20 hPa about the standard
 * atmosphere; a barometer or a report leaves about 2 hPa (common practice, no source).
 */
export const AIR_PLUS_MINUS = { altitude: 2000, report: 200, station: 200 } as const;

/** Meter leads held together, V; clamp round nothing, A; gauge open to the air, Pa (common practice, no source). */
export const ZERO_PLUS_MINUS = { leads: 0.02, clamp: 0.1, gauge: 1500 } as const;

/** Reading less what it should be; SI. */
export const offBy = (read: number, { value }: Expected): number => read - value;

/** The last half digit of a rounding does not make a good instrument bad. */
const SLACK = 1e-9;

export const within = (read: number, expected: Expected): boolean =>
  Math.abs(offBy(read, expected)) <= expected.plusMinus * (1 + SLACK) + SLACK;

/** What two baths say about a probe and its reader: what explains them, or that nothing single does. */
import { SolverError } from '../../errors';
import { BETA_RANGE } from './beta';
import { inBath, type BathReading } from './bath';
import { fitHypotheses, type FittedHypothesis } from './hypotheses';
import type { ReadSetup } from './reader';
import { solvedFor } from './twoPoints';

/** Bias and pin wrong at once, when no single thing explains both readings. */
export interface TwoThings {
  /** In the circuit, ohm. */
  readonly bias: number;
  /** Bias that the table assumes, where the one in the circuit is as described, ohm. */
  readonly assumed: number;
  /** In the probe's lead, ohm. */
  readonly series: number;
  /** Both could be: no negative resistance, a bias that someone could have fitted. */
  readonly plausible: boolean;
}

/** What an input without its probe reads: nothing below it, or nothing but a wire. */
export type InputEnd = 'open' | 'short';

/** What two readings nearly the same speak of: an end of the reader, or no difference seen at all. */
export type Alike = InputEnd | 'stuck';

export interface Verdict {
  /** All hypotheses, best first. */
  readonly fitted: readonly FittedHypothesis[];
  /** Those that explain every reading within its ±; nothing wrong stands first where it is among them. */
  readonly explaining: readonly FittedHypothesis[];
  /** Null where one thing explains both readings. */
  readonly twoThings: TwoThings | null;
  /** Beta of a table that would show both readings with this circuit; null where no thermistor has it. */
  readonly otherTableBeta: number | null;
  /** Readings so far from their baths that the input looks open or shorted there. */
  readonly ends: readonly (InputEnd | null)[];
  /** Set where both readings are nearly the same: then nothing explains them. */
  readonly alike: Alike | null;
  /** Readings within their ± of an end of the reader's table. */
  readonly tableEnds: readonly (InputEnd | null)[];
}

/** A bias further from the one described than this factor was hardly fitted by anyone. */
const FITTED_FACTOR = 5;
/** More than this in a pin, ohm, is an open plug. */
const PIN_MOST = 500;
/** Readings that differ by less than this share of what their baths do are alike; common practice. */
const ALIKE_SHARE = 0.05;
/** Alike and this factor beyond both baths, no bath was near them: an end of the input. */
const ALIKE_FACTOR = 2;

/**
 * Judge two baths.
 * @throws as {@link fitHypotheses}
 */
export function verdict(
  setup: ReadSetup,
  readings: readonly [BathReading, BathReading],
  readerBiasKnown: boolean,
): Verdict {
  const fitted = fitHypotheses(setup, readings, readerBiasKnown);
  const alike = alikeAt(setup, readings);
  const explaining = fitted
    .filter((one) => one.explains && alike === null)
    // A circuit with nothing wrong needs no other explanation.
    .sort((a, b) => Number(b.id === 'as-described') - Number(a.id === 'as-described'));
  return {
    fitted,
    explaining,
    twoThings: explaining.length > 0 || alike ? null : twoThings(setup, readings),
    otherTableBeta: otherTableBeta(setup, readings),
    ends: readings.map((reading) => inputEnd(setup, reading)),
    alike,
    tableEnds: readings.map((reading) => tableEnd(setup, reading)),
  };
}

/** Believed over true resistance: 1 where the reading is right. */
const overTrue = (setup: ReadSetup, reading: BathReading): number =>
  setup.reader.table.resistance(reading.shown) / inBath(setup, reading);

/**
 * What one reading looks like: the reader takes the probe to have more, or less, than any bias that
 * someone could have fitted would make of it.
 */
function inputEnd(setup: ReadSetup, reading: BathReading): InputEnd | null {
  const ratio = overTrue(setup, reading);
  return ratio > FITTED_FACTOR ? 'open' : ratio < 1 / FITTED_FACTOR ? 'short' : null;
}

function alikeAt(setup: ReadSetup, readings: readonly [BathReading, BathReading]): Alike | null {
  const [one, other] = readings;
  const differ = Math.abs(one.shown - other.shown);
  const enough = ALIKE_SHARE * Math.abs(one.T - other.T);
  if (differ > Math.max(enough, one.plusMinus + other.plusMinus)) return null;
  const ratios = readings.map((reading) => overTrue(setup, reading));
  if (ratios.every((ratio) => ratio > ALIKE_FACTOR)) return 'open';
  return ratios.every((ratio) => ratio < 1 / ALIKE_FACTOR) ? 'short' : 'stuck';
}

/** A table of points may be continued a little, but its maker's ends are where a reader stops. */
function tableEnd({ reader }: ReadSetup, { shown, plusMinus }: BathReading): InputEnd | null {
  const { law, range, span } = reader.table;
  const [low, high] = law.kind === 'table' && span ? span : range;
  const near = (end: number) => Math.abs(shown - end) <= plusMinus;
  return near(low) ? 'open' : near(high) ? 'short' : null;
}

function twoThings(
  setup: ReadSetup,
  readings: readonly [BathReading, BathReading],
): TwoThings | null {
  const { table, bias: readerBias } = setup.reader;
  const R = readings.map((r) => inBath(setup, r)) as [number, number];
  const S = readings.map((r) => table.resistance(r.shown)) as [number, number];
  const { bias, series } = solvedFor(R, S, readerBias);
  if (!(bias > 0)) return null;
  const factor = bias / setup.divider.bias;
  return {
    bias,
    assumed: (readerBias * setup.divider.bias) / bias,
    series,
    plausible:
      series >= 0 && series <= PIN_MOST && factor <= FITTED_FACTOR && factor >= 1 / FITTED_FACTOR,
  };
}

/**
 * Beta between the two readings as shown, of the resistances that the circuit presents.
 *
 * @formula beta = log(S_1 / S_2) / (1 / T_1 - 1 / T_2)
 */
function otherTableBeta(
  setup: ReadSetup,
  [one, other]: readonly [BathReading, BathReading],
): number | null {
  const ratio = Math.log(inBath(setup, one) / inBath(setup, other));
  const beta = ratio / (1 / one.shown - 1 / other.shown);
  const [low, high] = BETA_RANGE.beta;
  return beta >= low && beta <= high ? beta : null;
}

/** A bias that is off, alone, explains the readings; a pull-up to the same supply is one, too. */
export const biasExplains = ({ explaining }: Verdict): boolean =>
  explaining.some(({ id }) => id === 'as-described' || id === 'bias' || id === 'pull-up');

/** Share by which a probe measured in a bath is off its curve; null where it was not measured. */
export function probeOff({ probe }: ReadSetup, { T, ohms }: BathReading): number | null {
  if (ohms === undefined) return null;
  if (!(ohms > 0))
    throw new SolverError('resistance must be above zero', { code: 'invalid-input' });
  return ohms / probe.resistance(T) - 1;
}

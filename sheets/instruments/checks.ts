/** The checks: what each should read here, what it read, and how it stands. */
import type { Values } from '$lib/job/values';
import { offBy, within, ZERO_PLUS_MINUS, type Expected } from '$lib/solver/instruments/plan/checks';
import { ICE_POINT } from '$lib/solver/instruments/probe/boilPoint';
import type { Quantity } from '$lib/solver/quantity';

export type CheckId = 'soak' | 'bath' | 'ice' | 'boil' | 'leads' | 'clamp' | 'gauge' | 'bucket';

export type CheckState = 'not-yet' | 'good' | 'off' | 'not-fitted';

export interface Check {
  readonly id: CheckId;
  readonly name: string;
  readonly how: string;
  readonly quantity: Quantity;
  /** Kind of the ± and of the amount it is off. */
  readonly difference: Quantity;
  /** Null: the pressure of the air is not known. */
  readonly expected: Expected | null;
  /** What it read; null: nothing entered. */
  readonly read: number | null;
  /** How far off, SI; null without a reading. */
  readonly off: number | null;
  /** By the reading where there is one, else as recorded. */
  readonly state: CheckState;
  /** Recorded otherwise than the reading says. */
  readonly contradicts: boolean;
  /** Who and when, as noted beside the reading. */
  readonly signed: string;
}

/** What the checks are judged by, from the study. */
export interface Allowed {
  readonly probe: number;
  readonly pair: number;
  readonly boil: Expected | null;
  readonly meterError: number;
  /** Flow the meter shows of the true flow; null without runs. */
  readonly meterShows: number | null;
}

const zero = (plusMinus: number): Expected => ({ value: 0, plusMinus });

export function checksOf(values: Values, allowed: Allowed): Check[] {
  const degrees = { quantity: 'temperature', difference: 'temperatureDifference' } as const;
  const spread = {
    quantity: 'temperatureDifference',
    difference: 'temperatureDifference',
    expected: zero(allowed.pair),
  } as const;
  const same = (quantity: Quantity) => ({ quantity, difference: quantity });
  const check = (
    id: CheckId,
    path: string,
    what: Pick<Check, 'name' | 'how' | 'quantity' | 'difference' | 'expected'>,
    read: number | null = values[path]?.si ?? null,
  ): Check => {
    const recorded = values[`instruments.${id}`]!.choice as CheckState;
    const { expected } = what;
    const judged =
      read === null || expected === null ? null : within(read, expected) ? 'good' : 'off';
    return {
      id,
      ...what,
      read,
      off: read === null || expected === null ? null : offBy(read, expected),
      state: recorded === 'not-fitted' ? recorded : (judged ?? recorded),
      contradicts:
        judged !== null && (recorded === 'good' || recorded === 'off') && recorded !== judged,
      signed: values[path]?.from ?? '',
    };
  };
  return [
    check('soak', 'measured.soak', {
      ...spread,
      name: 'Cold soak overnight: all probes agree',
      how: 'Key on before the start, engine cold: highest less lowest of all temperatures.',
    }),
    check('bath', 'instruments.bathSpread', {
      ...spread,
      name: 'All probes together in one stirred bath',
      how: 'Warm water, tips side by side, read within half a minute: highest less lowest.',
    }),
    check('ice', 'probe.ice', {
      ...degrees,
      expected: { value: ICE_POINT, plusMinus: allowed.probe },
      name: 'Ice bath',
      how: 'Crushed ice with water, stirred, until the reading stands still.',
    }),
    check('boil', 'probe.boil', {
      ...degrees,
      expected: allowed.boil,
      name: 'Boiling water',
      how: 'Open pot at a rolling boil, tip off the bottom, no glycol.',
    }),
    check('leads', 'instruments.leadsRead', {
      ...same('voltage'),
      expected: zero(ZERO_PLUS_MINUS.leads),
      name: 'Meter’s leads held together',
      how: 'Volts range, tips touching; then on the battery against a second meter.',
    }),
    check('clamp', 'instruments.clampRead', {
      ...same('current'),
      expected: zero(ZERO_PLUS_MINUS.clamp),
      name: 'Clamp round nothing',
      how: 'Zeroed beside the feed, jaws shut, the way round it will be used.',
    }),
    check('gauge', 'instruments.gaugeRead', {
      ...same('pressureDrop'),
      expected: zero(ZERO_PLUS_MINUS.gauge),
      name: 'Pressure gauge open to the air',
      how: 'Before it is screwed in, and again after the run.',
    }),
    check(
      'bucket',
      'meter.runs',
      {
        ...same('percent'),
        expected: { value: 1, plusMinus: allowed.meterError },
        name: 'Flow meter against bucket and watch',
        how: 'Three runs on the flow meter sheet; it should show all of the true flow.',
      },
      allowed.meterShows,
    ),
  ];
}

/** Still to be made. */
export const missing = (checks: readonly Check[]): Check[] =>
  checks.filter((c) => c.state === 'not-yet');
export const failed = (checks: readonly Check[]): Check[] =>
  checks.filter((c) => c.state === 'off');

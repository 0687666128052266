/** What the sheet asks the solver for, once per side; nothing is solved before something is measured. */
import type { Side } from '$lib/job/evaluate';
import { problemOf } from '$lib/job/problem';
import { toConditions, toReadings } from '$lib/job/models/toReadings';
import type { Outcome } from '$lib/job/types';
import { exchangerReading, type ExchangerReading } from '$lib/solver/diagnosis/exchangerReading';
import { gridKey, gridKnown, keepGrid } from '$lib/solver/diagnosis/grid';
import { nextMeasurements, type NextMeasurement } from '$lib/solver/diagnosis/nextMeasurement';
import { diagnose, type Diagnosis } from '$lib/solver/diagnosis/rank';
import type { Conditions } from '$lib/solver/diagnosis/types';
import type { Keeping } from '$lib/workers/background.svelte';

export interface Study {
  readonly conditions: Conditions;
  readonly diagnosis: Diagnosis;
  readonly next: readonly NextMeasurement[];
  /** Null: in and out were not both read, or lie outside the coolant's range. */
  readonly exchanger: ExchangerReading | null;
  /** Volts on the plug that every fault is solved with, where they would follow the flow, V; else null. */
  readonly voltsHeld: number | null;
}

/** Every fault is solved in the background; readings only weigh what is kept here. */
export const KEEPING: Keeping<'faults'> = {
  task: 'faults',
  keyOf: ({ loop, values }) => gridKey(loop, toConditions(values)),
  known: gridKnown,
  keep: keepGrid,
};

/** Whether the diagnosis of a side needs its faults solved at all. */
export const asksForFaults = (side: Side): boolean =>
  side.id === 'asFound' && side.prepared.ok && toReadings(side.values).length > 0;

const known = new WeakMap<Side, Outcome<Study> | null>();

/** Null where nothing was measured; a candidate was not built, so never measured. */
export function studyOf(side: Side): Outcome<Study> | null {
  let found = known.get(side);
  if (found === undefined) known.set(side, (found = study(side)));
  return found;
}

function study(side: Side): Outcome<Study> | null {
  const readings = side.id === 'asFound' ? toReadings(side.values) : [];
  if (readings.length === 0) return null;
  if (!side.prepared.ok) return side.prepared;
  const conditions = toConditions(side.values);
  const { fixedPump, pump } = side.prepared.value.hydraulics;
  try {
    const diagnosis = diagnose(side.loop, readings, conditions);
    const next = nextMeasurements(diagnosis, conditions);
    return {
      ok: true,
      value: {
        conditions,
        diagnosis,
        next,
        exchanger: exchangerOf(side, diagnosis, conditions),
        voltsHeld: fixedPump ? null : pump.volts,
      },
    };
  } catch (thrown) {
    return { ok: false, problem: problemOf(thrown, 'US') };
  }
}

function exchangerOf(side: Side, { readings }: Diagnosis, conditions: Conditions) {
  try {
    return exchangerReading(side.loop, readings, conditions);
  } catch {
    // A reading no coolant has: the ranking says so, these lines are left out.
    return null;
  }
}

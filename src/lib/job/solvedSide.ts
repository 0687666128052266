/** A side of a job from its description: what it leads to is solved when first asked for. */
import { once } from '$lib/once';
import type { PreparedLoop } from '$lib/solver/loop/prepare';
import { steadyIn } from '$lib/solver/loop/steady';
import type { DutyId, Loop, WarmUpRequest, WarmUpSolution } from '$lib/solver/loop/types';
import { coldState, settledState, warmUp } from '$lib/solver/loop/warmUp';
import type { UnitSystem } from '$lib/units';
import type { Side } from './side';
import { toLimits, toSchedule, toStart } from './models/toLoop';
import { problemOf } from './problem';
import type { Outcome } from './types';
import type { Values } from './values';

type Described = Pick<Side, 'id' | 'values' | 'problems' | 'loop'>;

/**
 * The side with its solutions. Refusals of the solver become words; nothing throws.
 * @param units - for the words
 * @param prepare - makes the loop ready, or throws what is wrong with it
 */
export function solvedSide(
  { id, values, problems, loop }: Described,
  units: UnitSystem,
  prepare: (loop: Loop) => PreparedLoop,
): Side {
  const attempt = <T>(work: () => T): Outcome<T> => {
    try {
      return { ok: true, value: work() };
    } catch (thrown) {
      return { ok: false, problem: problemOf(thrown, units) };
    }
  };
  const prepared = attempt(() => {
    const ready = prepare(loop);
    // The air side is checked by being solved; the duties need it anyway.
    for (const duty of Object.values(loop.duties)) ready.airAt(duty.vehicleSpeed);
    return ready;
  });
  const solved = <T>(work: (ready: PreparedLoop) => T) =>
    once((): Outcome<T> => (prepared.ok ? attempt(() => work(prepared.value)) : prepared));

  const steadyAt = (duty: DutyId) =>
    solved((ready) => steadyIn(ready, loop.duties[duty], loop.duties[duty].vehicleSpeed));
  const traffic = steadyAt('traffic');
  const cruise = steadyAt('cruise');
  const pull = steadyAt('pull');
  const request = solved((ready) => requestOf(ready, values));
  const history = once((): Outcome<WarmUpSolution> => {
    const asked = request();
    if (!asked.ok) return asked;
    if (!prepared.ok) return prepared;
    return attempt(() => warmUp(prepared.value, asked.value));
  });

  return {
    id,
    values,
    problems,
    loop,
    limits: toLimits(values),
    log: null,
    prepared,
    steady: {
      get traffic() {
        return traffic();
      },
      get cruise() {
        return cruise();
      },
      get pull() {
        return pull();
      },
    },
    get request() {
      return request();
    },
    get warmUp() {
      return history();
    },
    ...(prepared.ok ? {} : { problem: prepared.problem }),
  };
}

/** The drive that is asked of a loop. */
export function requestOf(ready: PreparedLoop, values: Values): WarmUpRequest {
  const { charge, recoveryBand } = toLimits(values);
  const start = toStart(values);
  return {
    schedule: toSchedule(values),
    start:
      start.kind === 'cruise'
        ? settledState(ready, 'cruise')
        : coldState(ready, start.kind === 'given' ? start.temperature : undefined),
    chargeLimit: charge,
    recoveryBand,
  };
}

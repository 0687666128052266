/**
 * One side drawn many times, drive and margins and all: what a choice is made by, draw by draw. The
 * settled temperatures are drawn more sharply beside it, by `sure/sureness`; the points are the same.
 */
import { warmUp } from '$lib/solver/loop/warmUp';
import { propagate } from '$lib/solver/uncertainty/propagate';
import { assess, currentOf, pumpCurrentOf, type Assessable, type Assessed } from './assess';
import type { Side } from '../evaluate';
import { FIELDS } from '../fields';
import { toSchedule, toStart } from '../models/toLoop';
import { problemOf } from '../problem';
import { drawnSides } from '../sure/drawnSide';
import { SEED, surenessKey } from '../sure/sureness';
import { uncertainOf } from '../sure/surenessInputs';

/** Drives followed a side: on another thread, and where nothing can wait, as on paper. */
export const DRIVES = { full: 256, atOnce: 32 } as const;
/** Points a drive is followed by, besides its edges. */
const DRIVE_POINTS = 150;

/** The results that come out of a drawn drive. */
const READ = {
  chargePull: (a) => a.chargePull,
  chargeAfter: (a) => a.chargeAfter,
  chargeHottest: (a) => a.chargeHottest,
  recovery: (a) => a.recovery,
  tankPeak: (a) => a.tankPeak,
  suction: (a) => a.suction,
  boiling: (a) => a.boiling,
  freezing: (a) => a.freezing,
  feed: (a) => a.feed,
  pumpCurrent: pumpCurrentOf,
  current: currentOf,
} as const satisfies Readonly<Record<string, (a: Assessed) => number | null>>;
export type DrivenResult = keyof typeof READ;
const RESULTS = Object.keys(READ) as DrivenResult[];

/** Draws of each result, SI; NaN where a draw has none. Plain data: it crosses from the other thread. */
export type Driven = Readonly<Record<DrivenResult, Float64Array>>;

/** Inputs that margins and currents ask for and the loop itself may not. */
const BESIDE = [...FIELDS.keys()].filter((path) =>
  /^(feed\.|fans\.current$|events\.ice$)/.test(path),
);

/** What {@link driven} depends on, as text. */
export const drivenKey = (side: Side): string =>
  JSON.stringify([
    surenessKey(side),
    toSchedule(side.values),
    toStart(side.values),
    BESIDE.map((path) => side.values[path]!.text),
  ]);

/** Follow `draws` drives. Yields the share done. Null where the side cannot be solved or nothing has a ±. */
export function* driven(side: Side, draws: number): Generator<number, Driven | null> {
  const inputs = uncertainOf(side.values);
  if (!side.prepared.ok || inputs.length === 0) return null;
  const at = drawnSides(side, inputs);
  const all = yield* propagate(
    {
      inputs: inputs.map(({ distribution }) => distribution),
      axes: inputs.map(({ axis }) => axis),
      outputs: RESULTS.length,
      samples: draws,
      seed: SEED,
    },
    (x) => {
      const drawn = at(x);
      if (!drawn) return null;
      const is = assess(looked(drawn));
      return RESULTS.map((id) => READ[id](is) ?? NaN);
    },
    1,
  );
  return Object.fromEntries(RESULTS.map((id, o) => [id, all.results[o]!])) as Driven;
}

/** What is looked at of a drawn side; its drive is followed by few points. */
function looked({ prepared, request, steady, loop, values }: Side): Assessable {
  const drive = (): Side['warmUp'] => {
    if (!prepared.ok) return prepared;
    if (!request.ok) return request;
    try {
      const asked = { ...request.value, points: DRIVE_POINTS };
      return { ok: true, value: warmUp(prepared.value, asked) };
    } catch (thrown) {
      return { ok: false, problem: problemOf(thrown, 'SI') };
    }
  };
  return { prepared, request, steady, loop, values, warmUp: drive() };
}

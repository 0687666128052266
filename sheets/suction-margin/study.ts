/** What the suction sheet asks the solver for, once per side. */
import type { Side } from '$lib/job/evaluate';
import { Keep } from '$lib/keep';
import { once } from '$lib/once';
import type { PreparedLoop } from '$lib/solver/loop/prepare';
import type { SteadySolution } from '$lib/solver/loop/types';
import {
  pathPoint,
  temperatureOfFirstLoss,
  ventedLoop,
  type FirstLoss,
  type PathPoint,
} from '$lib/solver/suction/path';
import { suctionPicture, type SuctionPicture } from '$lib/solver/suction/picture';
import { whatHelps, type Help } from '$lib/solver/suction/whatHelps';
import type { Keeping } from '$lib/workers/background.svelte';
import { settledOf } from '../wiring/duty';

export interface Study {
  readonly s: SteadySolution;
  readonly prepared: PreparedLoop;
  readonly flows: boolean;
  readonly loss: FirstLoss;
  /** Same liquid, no pressure under the cap; null where the reservoir holds none anyway. */
  readonly vented: PathPoint | null;
  readonly ventedLoss: FirstLoss | null;
  /** For the plots alone: an edit shows its numbers first. */
  readonly picture: SuctionPicture;
  readonly helps: readonly Help[];
}

const pictures = new Keep<SuctionPicture>(4);

/** The pictures are worked out in the background; what is found there is kept here. */
export const KEEPING: Keeping<'suction'> = {
  task: 'suction',
  keyOf: ({ loop }) => JSON.stringify(loop),
  known: (key) => pictures.has(key),
  keep: (key, picture) => picture && pictures.set(key, picture),
};

const known = new WeakMap<Side, Study | null>();

/** The study of a side; null where it could not be solved. The same side gives the same object. */
export function studyOf(side: Side | null): Study | null {
  if (!side) return null;
  let study = known.get(side);
  if (study === undefined) known.set(side, (study = newStudy(side)));
  return study;
}

function newStudy(side: Side): Study | null {
  const s = settledOf(side);
  if (!s || !side.prepared.ok) return null;
  const prepared = side.prepared.value;
  const T = s.liquid.temperature;
  const loss = temperatureOfFirstLoss(prepared);
  const open = side.loop.reservoir.capGauge > 0 ? ventedLoop(prepared) : null;
  const picture = once(() => pictures.of(KEEPING.keyOf(side), () => suctionPicture(prepared)));
  return {
    s,
    prepared,
    flows: s.status !== 'no-flow',
    loss,
    vented: open && pathPoint(open, T),
    ventedLoss: open && temperatureOfFirstLoss(open),
    helps: whatHelps(prepared, T),
    get picture() {
      return picture();
    },
  };
}

/** Runaway: both heats over temperature with the knobs as they stand; the cold crossing along a knob. */
import { runawayModel } from '$lib/solver/loop/runaway/balanceAt';
import { crossings } from '$lib/solver/loop/runaway/crossings';
import { heatCurves } from '$lib/solver/loop/runaway/curves';
import { KNOB_RANGE, type Knob } from '$lib/solver/loop/runaway/types';
import { SolverError } from '$lib/solver/errors';
import { spaced } from '$lib/solver/numerics/spaced';
import type { Side } from '../../evaluate';
import { whatIfOf } from '../../models/toWhatIf';
import { dutyOf } from '../../shownDuty';
import { curveSet, DRAWN_SLOW, type Curves } from './bandSource';

/** Settings of the knob tried, each in so many loops. */
const SETTINGS = 17;
const DRAWN_BRANCHES = 96;

function modelOf(side: Side) {
  if (!side.prepared.ok) return null;
  const ready = side.prepared.value;
  const what = whatIfOf(side.values);
  return { what, model: runawayModel(ready, ready.loop.duties[dutyOf(side)], what) };
}

export const RUNAWAY_HEATS = curveSet({
  name: 'runawayHeats',
  draws: DRAWN_SLOW,
  follows: ({ values }) => whatIfOf(values),
  frame: ({ loop, values }) => loop.site.ambientTemperature + whatIfOf(values).knobs.ambientShift,
  curves(side, from): Curves {
    const made = modelOf(side);
    return made ? { ...heatCurves(made.model.with(made.what.knobs), from) } : {};
  },
});

export const RUNAWAY_BRANCH = curveSet({
  name: 'runawayBranch',
  draws: DRAWN_BRANCHES,
  follows: ({ values }) => [whatIfOf(values), values['runaway.knobMoved']!.choice],
  curves(side): Curves {
    const made = modelOf(side);
    if (!made) return {};
    const knob = side.values['runaway.knobMoved']!.choice as Knob;
    const settled = (at: number): number => {
      try {
        const balance = made.model.tabled.with({ ...made.what.knobs, [knob]: at });
        return crossings(balance).fromCold?.T ?? NaN;
      } catch (error) {
        // A law's end is the end of the branch.
        if (error instanceof SolverError) return NaN;
        throw error;
      }
    };
    const [from, to] = KNOB_RANGE[knob];
    return { cold: spaced(from, to, SETTINGS).map((at) => [at, settled(at)] as const) };
  },
});

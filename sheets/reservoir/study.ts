/** What the reservoir sheet asks the solver for, once per side. */
import type { Side } from '$lib/job/evaluate';
import { pullStart, type PullStart } from '$lib/solver/reservoir/pullStart';
import { volumeRuns, type VolumeRun } from '$lib/solver/reservoir/volumes';
import type { DutyId, SteadySolution } from '$lib/solver/loop/types';
import { dutyOf } from '../wiring/duty';

export const VOLUME_FACTORS = [0.5, 1, 2] as const;

export interface Study {
  /** Shown on every sheet. */
  readonly duty: DutyId;
  /** Driven before and after the pull: the duty shown, cruise where that is the pull itself. */
  readonly around: DutyId;
  /** Settled in `around`; null where there is no balance to start a pull from. */
  readonly before: SteadySolution | null;
  /** The pull's first moment out of `before`. */
  readonly start: PullStart | null;
  /** Half, present and double the liquid, followed in time; empty where a duty of theirs has no solution. */
  readonly runs: readonly VolumeRun[];
}

const known = new WeakMap<Side, Study>();

/** The study of a side; the same side gives the same object. */
export function studyOf(side: Side): Study {
  let study = known.get(side);
  if (!study) known.set(side, (study = newStudy(side)));
  return study;
}

function newStudy(side: Side): Study {
  const si = (path: string) => side.values[path]!.si!;
  const duty = dutyOf(side);
  const around = duty === 'pull' ? 'cruise' : duty;
  const outcome = side.steady[around];
  const shown = side.steady[duty];
  const { pull } = side.steady;
  const { prepared } = side;
  if (!prepared.ok || !outcome.ok || outcome.value.status !== 'balanced') {
    return { duty, around, before: null, start: null, runs: [] };
  }
  const before = outcome.value;
  return {
    duty,
    around,
    before,
    start: pull.ok ? pullStart(prepared.value, 'pull', before.liquid.temperature) : null,
    runs:
      shown.ok && pull.ok
        ? volumeRuns(
            prepared.value,
            {
              settled: shown.value,
              before,
              pullTime: si('reservoirQuestion.pullTime'),
              recoveryBand: side.limits.recoveryBand,
              chargeLimit: side.limits.charge,
            },
            VOLUME_FACTORS,
          )
        : [],
  };
}

/** The run with that many times the present liquid. */
export const runOf = (study: Study, factor: (typeof VOLUME_FACTORS)[number]): VolumeRun | null =>
  study.runs.find((run) => run.factor === factor) ?? null;

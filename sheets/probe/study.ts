/** What the sheet asks the solver for, once per side. */
import type { Side } from '$lib/job/evaluate';
import { problemOf } from '$lib/job/problem';
import { toLot, toProbe, toStock, type ProbeJob } from '$lib/job/models/toProbe';
import type { Outcome } from '$lib/job/types';
import {
  calibrationPoints,
  type CalibrationPoint,
} from '$lib/solver/instruments/probe/calibration';
import { compareProbes, type LotComparison } from '$lib/solver/instruments/probe/compare';
import type { FittedHypothesis } from '$lib/solver/instruments/probe/hypotheses';
import type { ReadSetup } from '$lib/solver/instruments/probe/reader';
import {
  recommended,
  trims,
  type Trim,
  type Trims,
} from '$lib/solver/instruments/probe/trim/trims';
import { verdict, type Verdict } from '$lib/solver/instruments/probe/verdict';

/** Rows of the corrected table. */
const POINTS = 10;
/** Networks shown of each size. */
const BEST = 2;

export interface Study {
  readonly job: ProbeJob;
  /** Nobody gave the probe's law: the one that comes with the blank stands in. */
  readonly curveAssumed: boolean;
  /** Null without both baths. */
  readonly verdict: Verdict | null;
  /** What is taken to be so from here on; null: as described, for want of two baths. */
  readonly leading: FittedHypothesis | null;
  /** The circuit as it is taken to be; null where nothing explains the readings. */
  readonly setup: ReadSetup | null;
  /** Range that counts, K. */
  readonly from: number;
  readonly to: number;
  readonly goodEnough: number;
  readonly trims: Outcome<Trims> | null;
  /** The network to solder; null where none is needed, or none helps. */
  readonly trim: Trim | null;
  readonly corrected: readonly CalibrationPoint[];
  readonly lot: Readonly<Record<'ice' | 'boil', Lot | null>>;
}

export interface Lot extends LotComparison {
  /** Row of the table of each probe compared. */
  readonly rows: readonly number[];
}

/** What states the probe's law, by the choice of law. */
const LAW_PATHS: Readonly<Record<string, readonly string[]>> = {
  'three-points': ['probe.points'],
  table: ['probe.points'],
  beta: ['probe.r25', 'probe.beta'],
  'steinhart-hart': ['probe.a', 'probe.b', 'probe.c'],
};

const known = new WeakMap<Side, Outcome<Study>>();

export function studyOf(side: Side): Outcome<Study> {
  let found = known.get(side);
  if (!found) known.set(side, (found = attempt(() => study(side))));
  return found;
}

function attempt<T>(work: () => T): Outcome<T> {
  try {
    return { ok: true, value: work() };
  } catch (thrown) {
    return { ok: false, problem: problemOf(thrown, 'US') };
  }
}

function study({ values }: Side): Study {
  const si = (path: string) => values[path]!.si!;
  const job = toProbe(values);
  const { ice, boil, readerBiasKnown } = job;
  const judged = ice && boil ? verdict(job.setup, [ice, boil], readerBiasKnown) : null;
  const leading = judged?.explaining[0] ?? null;
  const setup = judged ? (leading?.setup ?? twoThingsSetup(job, judged)) : job.setup;
  const [from, to, goodEnough] = [si('probe.from'), si('probe.to'), si('probe.goodEnough')];
  const found =
    setup &&
    attempt(() =>
      trims({
        setup,
        from,
        to,
        stock: toStock(values),
        stockTolerance: si('probe.stockTolerance'),
        biasTolerance: si('probe.biasTolerance'),
        keepBias: values['probe.keepBias']!.choice === 'keep',
        best: BEST,
      }),
    );
  const points = setup && attempt(() => calibrationPoints(setup, from, to, POINTS));
  return {
    job,
    curveAssumed: LAW_PATHS[values['probe.law']!.choice!]!.every((path) => values[path]!.assumed),
    verdict: judged,
    leading,
    setup,
    from,
    to,
    goodEnough,
    trims: found,
    trim: found?.ok ? recommended(found.value, goodEnough) : null,
    corrected: points?.ok ? points.value : [],
    lot: { ice: lotOf(values, 'ice'), boil: lotOf(values, 'boil') },
  };
}

/** Bias and pin at once, where they could be; no trim is drawn from what nothing explains. */
function twoThingsSetup({ setup, readerBiasKnown }: ProbeJob, { twoThings }: Verdict) {
  if (!twoThings?.plausible) return null;
  const flaw = { series: twoThings.series };
  return readerBiasKnown
    ? { ...setup, divider: { ...setup.divider, bias: twoThings.bias }, flaw }
    : { ...setup, reader: { ...setup.reader, bias: twoThings.assumed }, flaw };
}

function lotOf(values: Side['values'], bath: 'ice' | 'boil'): Lot | null {
  const list = toLot(values, bath);
  if (list.length < 2) return null;
  const compared = compareProbes(
    list.map(({ shown }) => shown),
    values['probe.lotTolerance']!.si!,
  );
  return { ...compared, rows: list.map(({ row }) => row) };
}

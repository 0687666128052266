/** What the sheet asks the solver for, once per side. */
import type { Side } from '$lib/job/evaluate';
import { toLot, toProbe, toStock, type ProbeJob } from '$lib/job/models/toProbe';
import {
  calibrationPoints,
  type CalibrationPoint,
} from '$lib/solver/instruments/probe/calibration';
import { requireInTable } from '$lib/solver/instruments/probe/bath';
import { ICE_POINT } from '$lib/solver/instruments/probe/boilPoint';
import { compareProbes, type LotComparison } from '$lib/solver/instruments/probe/compare';
import type { FittedHypothesis } from '$lib/solver/instruments/probe/hypotheses';
import type { ReadSetup } from '$lib/solver/instruments/probe/reader';
import { chosenTrim, type NoTrim } from '$lib/solver/instruments/probe/trim/choice';
import type { Stock } from '$lib/solver/instruments/probe/trim/search';
import { trims, type Trim, type Trims } from '$lib/solver/instruments/probe/trim/trims';
import { biasExplains, verdict, type Verdict } from '$lib/solver/instruments/probe/verdict';
import { tried, type Tried } from './tried';

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
  /** What there is to solder with. */
  readonly stock: Tried<Stock>;
  /** Nobody gave the list it comes from: an invented example stands in. */
  readonly stockAssumed: boolean;
  readonly trims: Tried<Trims> | null;
  /** The network to solder; null where none is needed, or none helps. */
  readonly trim: Trim | null;
  /** Why there is none: as the solver says, or something is to be repaired first; null where unknown. */
  readonly noTrim: NoTrim | 'repair' | 'no-stock' | null;
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

const known = new WeakMap<Side, Tried<Study>>();

export function studyOf(side: Side): Tried<Study> {
  let found = known.get(side);
  if (!found) known.set(side, (found = tried(() => study(side))));
  return found;
}

function study({ values }: Side): Study {
  const si = (path: string) => values[path]!.si!;
  const job = toProbe(values);
  const { ice, boil, readerBiasKnown } = job;
  // Both are drawn and computed whatever was read.
  for (const T of [ICE_POINT, job.boilPoint]) job.setup.probe.resistance(T);
  for (const reading of [ice, boil]) if (reading) requireInTable(job.setup, reading.shown);
  const judged = ice && boil ? verdict(job.setup, [ice, boil], readerBiasKnown) : null;
  const leading = judged?.explaining[0] ?? null;
  const setup = judged ? (leading?.setup ?? twoThingsSetup(job, judged)) : job.setup;
  const [from, to, goodEnough] = [si('probe.from'), si('probe.to'), si('probe.goodEnough')];
  const stock = tried(() => toStock(values));
  const found =
    setup &&
    tried(() =>
      trims({
        setup,
        from,
        to,
        // What bias is wanted and what error is there does not hang on the box of resistors.
        stock: stock.ok ? stock.value : { values: [] },
        stockTolerance: si('probe.stockTolerance'),
        biasTolerance: si('probe.biasTolerance'),
        keepBias: values['probe.keepBias']!.choice === 'keep',
        best: BEST,
      }),
    );
  const points = setup && tried(() => calibrationPoints(setup, from, to, POINTS));
  return {
    job,
    curveAssumed: LAW_PATHS[values['probe.law']!.choice!]!.every((path) => values[path]!.assumed),
    verdict: judged,
    leading,
    setup,
    from,
    to,
    goodEnough,
    stock,
    stockAssumed: values['probe.stock']!.choice === 'hand' && values['probe.hand']!.assumed,
    trims: found,
    ...choice(found, judged, stock.ok, goodEnough),
    corrected: points?.ok ? points.value : [],
    lot: { ice: lotOf(values, 'ice'), boil: lotOf(values, 'boil') },
  };
}

/** No trim is named where bias does not explain the readings: it would hide what is wrong. */
function choice(
  found: Tried<Trims> | null,
  judged: Verdict | null,
  stocked: boolean,
  goodEnough: number,
): Pick<Study, 'trim' | 'noTrim'> {
  if (!found?.ok) return { trim: null, noTrim: null };
  if (judged && !biasExplains(judged)) return { trim: null, noTrim: 'repair' };
  const { trim, none } = chosenTrim(found.value, goodEnough);
  return { trim, noTrim: none === 'stock-cannot' && !stocked ? 'no-stock' : none };
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

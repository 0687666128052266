/** Bars and rows of this sheet, as data. */
import { CHANNELS } from '$lib/solver/diagnosis/channels';
import { plusMinusRead, severityCurve } from '$lib/solver/diagnosis/severity';
import type { Quantity } from '$lib/solver/quantity';
import type { Chart } from '$lib/kit';
import type { Study } from './study';
import { causeId, causeName, readingName } from './words';

/** Less likely causes get no bar. */
const WORTH_A_BAR = 0.01;
const NEXT_SHOWN = 7;

export const causeRows = ({ diagnosis }: Study) =>
  diagnosis.causes
    .filter((c, i) => i < 2 || c.probability > WORTH_A_BAR)
    .map((c) => ({
      id: causeId(c),
      label: causeName(c),
      found: c.probability,
      ...(diagnosis.set.includes(c) && { remark: 'within nine chances in ten' }),
    }));

export const nextRows = ({ next }: Study) =>
  next
    .filter((n) => n.doubt > WORTH_A_BAR)
    .slice(0, NEXT_SHOWN)
    .map((n) => ({
      id: `${n.place}.${n.channel}`,
      label: readingName(n),
      found: n.perMinute,
      remark: `${n.minutes} min`,
    }));

/** One reading beside what the two leading causes predict; numbers in SI. */
export interface FitRow {
  readonly name: string;
  readonly quantity: Quantity;
  readonly read: number;
  readonly plusMinus: number;
  readonly by: readonly { readonly predicted: number; readonly z: number }[];
}

/** The two leading known causes and how each fits every reading. */
export function fitTable({ diagnosis }: Study): {
  causes: readonly string[];
  rows: readonly FitRow[];
} {
  const best = diagnosis.causes.filter((c) => c.fault).slice(0, 2);
  return {
    causes: best.map(causeName),
    rows: diagnosis.readings.map((reading, i) => ({
      name: readingName(reading),
      quantity: CHANNELS[reading.channel].quantity,
      read: reading.value,
      plusMinus: plusMinusRead(reading),
      by: best.map(({ fit }) => fit[i]!),
    })),
  };
}

/** How bad the leading cause may be; null where it has no degrees. */
export function severityChart({ diagnosis }: Study): Chart | null {
  const first = diagnosis.causes.find((c) => c.fault);
  const severity = first?.fault?.severity;
  if (!first || !severity) return null;
  return {
    x: { name: `${causeName(first)}: ${severity.name}`, quantity: severity.quantity },
    y: { name: 'Share of its belief, per step', quantity: 'percent', zero: true },
    curves: [{ id: 'severity', label: 'belief', points: severityCurve(first), quiet: true }],
  };
}

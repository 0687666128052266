/** The sliders in the reader's units: ends, step, and what is typed for a place. */
import { formatQuantity, type UnitSystem } from '$lib/units';
import type { Knob } from '$lib/solver/loop/runaway/types';

interface Span {
  readonly low: number;
  readonly high: number;
  readonly step: number;
  /** As a person would type it. */
  readonly typed: (at: number) => string;
}

const percent = (low: number, high: number): Span => ({
  low,
  high,
  step: 5,
  typed: (at) => `${at} %`,
});

const PERCENT: Readonly<Record<Exclude<Knob, 'ambientShift'>, Span>> = {
  flow: percent(5, 200),
  fan: percent(10, 150),
  load: percent(10, 300),
};

const DAY: Readonly<Record<UnitSystem, Span>> = {
  US: { low: -45, high: 45, step: 1, typed: (at) => `${at} °F` },
  SI: { low: -25, high: 25, step: 1, typed: (at) => `${at} °C` },
};

export const spans = (knob: Knob, system: UnitSystem): Span =>
  knob === 'ambientShift' ? DAY[system] : PERCENT[knob];

/** Where the slider stands. */
export const slid = (knob: Knob, si: number, system: UnitSystem): number =>
  formatQuantity(si, knob === 'ambientShift' ? 'temperatureDifference' : 'percent', system).value;

/** What is typed for a setting of the solver. */
export function typedKnob(knob: Knob, si: number, system: UnitSystem): string {
  const kind = knob === 'ambientShift' ? 'temperatureDifference' : 'percent';
  return spans(knob, system).typed(formatQuantity(si, kind, system).value);
}

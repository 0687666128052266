/** An axis in the reader's units: where the data end, what the label says. */
import { DISPLAY, formatQuantity, shownUnit, toShown, type UnitSystem } from '$lib/units';
import type { Axis, Chart } from './chart';

export interface ShownAxis {
  readonly label: string;
  /** In shown units. */
  readonly domain: readonly [number, number];
  /** SI to shown units. */
  readonly to: (si: number) => number;
}

/** Every SI value a chart puts on one of its axes. */
export function valuesOn(chart: Chart, axis: 'x' | 'y'): number[] {
  const i = axis === 'x' ? 0 : 1;
  return [
    ...(chart.curves ?? []).flatMap((c) => c.points.map((p) => p[i])),
    ...(chart.dots ?? []).flatMap((d) =>
      d.points.flatMap((p) => (i === 0 ? [p[0]] : [p[1] - (p[2] ?? 0), p[1] + (p[2] ?? 0)])),
    ),
    ...(chart.spots ?? []).flatMap((s) =>
      i === 0 ? [s.x] : [s.y - (s.plusMinus ?? 0), s.y + (s.plusMinus ?? 0)],
    ),
    ...(chart.bands ?? []).flatMap((b) =>
      b.points.flatMap((p) => (i === 0 ? [p[0]] : [p[1], p[2]])),
    ),
    ...(chart.limits ?? []).filter((l) => l.axis === axis).map((l) => l.at),
  ].filter(Number.isFinite);
}

/** Room beyond the data, as a share of their extent, so that no mark sits on the frame. */
const AIR = 0.05;

/** Ends of an axis for these values, SI. */
export function extent(values: readonly number[], axis: Axis): readonly [number, number] {
  if (axis.domain) return axis.domain;
  // From the last place to the first, with half a place beyond.
  if (axis.names) return [axis.names.length + 0.5, 0.5];
  const all = axis.zero ? [...values, 0] : values;
  if (all.length === 0) return [0, 1];
  const low = all.reduce((a, b) => Math.min(a, b));
  const high = all.reduce((a, b) => Math.max(a, b));
  if (low === high) return [low - (Math.abs(low) * AIR || 1), high + (Math.abs(high) * AIR || 1)];
  const air = (high - low) * AIR;
  // An axis that starts at zero keeps its foot there.
  return [low === 0 ? 0 : low - air, high === 0 ? 0 : high + air];
}

/** The axis of a chart in the units of `system`. Long times turn to minutes by the units' own rule. */
export function shownAxis(chart: Chart, which: 'x' | 'y', system: UnitSystem): ShownAxis {
  const axis = chart[which];
  const [low, high] = extent(valuesOn(chart, which), axis);
  const unit = shownUnit(axis.quantity, system, Math.max(Math.abs(low), Math.abs(high)));
  const usual = unit.spelling === DISPLAY[axis.quantity][system].spelling;
  const to = usual
    ? (si: number) => toShown(si, axis.quantity, system)
    : (si: number) => formatQuantity(si, axis.quantity, system, { unit, digits: 12 }).value;
  return {
    label: unit.label ? `${axis.name}, ${unit.label}` : axis.name,
    domain: [to(low), to(high)],
    to,
  };
}

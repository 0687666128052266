/** The curves of pump and loop as points, for plots. */
import { spaced } from '../numerics/spaced';
import type { FlowingLiquid } from './hose';
import { intersection } from './intersection';
import type { HydraulicModel } from './operatingPoint';
import type { PumpModel } from './pump';

/** Flow (m³/s) and head (m). */
export type HeadSample = readonly [flow: number, head: number];

/** Points per curve: at a plot's width no corner shows. */
const POINTS = 61;

/**
 * Head of the pump set at its speed, from no flow to `flowMax` or to where it lifts nothing.
 * Empty when it does not run.
 */
export function pumpCurve(pump: PumpModel, flowMax: number): readonly HeadSample[] {
  if (!(pump.speedRatio > 0)) return [];
  const end = Math.min(flowMax, pump.runOut);
  // Rounding may leave a hair below zero at run-out.
  return spaced(0, end, POINTS).map((flow) => [flow, Math.max(0, pump.head(flow))]);
}

/** Head the loop asks, from no flow to `flowMax`. */
export function systemCurve(
  model: HydraulicModel,
  liquid: FlowingLiquid,
  flowMax: number,
): readonly HeadSample[] {
  return spaced(0, flowMax, POINTS).map((flow) => [flow, model.systemHead(flow, liquid)]);
}

/** How far above a pump's shut-off head the loop's curve is drawn, so that it leaves the crossing clearly. */
const REACH = 1.2;

/**
 * {@link systemCurve} as far as a pump of this shut-off head is concerned: to `flowMax`, or to where the
 * loop asks a fifth more than that head.
 */
export function systemCurveWithin(
  model: HydraulicModel,
  liquid: FlowingLiquid,
  { flowMax, shutOff }: { readonly flowMax: number; readonly shutOff: number },
): readonly HeadSample[] {
  const head = (flow: number) => model.systemHead(flow, liquid);
  const headMax = REACH * shutOff;
  const end = head(flowMax) > headMax ? intersection(() => headMax, head, flowMax).flow : flowMax;
  return systemCurve(model, liquid, end);
}

/** End of the pump set's stated points at its speed, m³/s: beyond it the head is a guess. */
export const endOfCurve = (pump: PumpModel): number =>
  pump.inParallel * pump.speedRatio * pump.rated.lastFlow;

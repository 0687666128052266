import type { ExchangerArrangement } from './arrangement';
import { effectivenessCrossflowUnmixed } from './crossflow';
import { meanDecay } from './quotients';

/** Effectiveness from NTU and Cr, both taken as within range. */
export type EffectivenessLaw = (NTU: number, Cr: number) => number;

const counterflow: EffectivenessLaw = (NTU, Cr) => {
  // Dividing both halves by (1 - Cr) removes the 0/0 of balanced streams.
  const N = NTU * meanDecay(NTU * (1 - Cr));
  return Math.min(1, N / (1 + Cr * N)); // min: rounding only
};

const parallel: EffectivenessLaw = (NTU, Cr) => -Math.expm1(-NTU * (1 + Cr)) / (1 + Cr);

const cminMixed: EffectivenessLaw = (NTU, Cr) => -Math.expm1(-NTU * meanDecay(Cr * NTU));

const cmaxMixed: EffectivenessLaw = (NTU, Cr) => {
  const unmixed = -Math.expm1(-NTU);
  return unmixed * meanDecay(Cr * unmixed);
};

/** Rises with NTU only up to a peak when Cr is above zero: more surface then carries heat back. */
const bothMixed: EffectivenessLaw = (NTU, Cr) =>
  Math.min(1, NTU / (1 / meanDecay(NTU) + 1 / meanDecay(Cr * NTU) - 1)); // min: rounding only

/** The textbook fit to the exact series, up to 3.8 % low; kept to compare with published numbers. */
const bothUnmixedFit: EffectivenessLaw = (NTU, Cr) =>
  -Math.expm1(-NTU * meanDecay(Cr * NTU ** 0.78));

const shellAndTube12: EffectivenessLaw = (NTU, Cr) => {
  const s = Math.hypot(1, Cr);
  return 2 / (1 + Cr + s * ((2 + Math.expm1(-NTU * s)) / -Math.expm1(-NTU * s)));
};

/**
 * The relations without range checks, for inner loops. Callers elsewhere use `effectiveness`.
 * @source Kays & London, Compact Heat Exchangers, 3rd ed. 1984; Bergman et al., Fundamentals of Heat
 *   and Mass Transfer, table of effectiveness relations; forms rearranged, see `quotients.ts`
 */
export const EFFECTIVENESS_LAW: Readonly<Record<ExchangerArrangement, EffectivenessLaw>> = {
  counterflow,
  parallel,
  'crossflow-both-unmixed': effectivenessCrossflowUnmixed,
  'crossflow-both-unmixed-approximate': bothUnmixedFit,
  'crossflow-cmin-mixed': cminMixed,
  'crossflow-cmax-mixed': cmaxMixed,
  'crossflow-both-mixed': bothMixed,
  'shell-and-tube-1-2': shellAndTube12,
};

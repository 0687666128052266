import { OutOfRangeError } from '../errors';
import { brent } from '../numerics/root';
import type { ExchangerArrangement } from './arrangement';
import { EFFECTIVENESS_LAW, type EffectivenessLaw } from './laws';
import { meanDecay, meanLog } from './quotients';

/** The largest NTU a bracketed inverse looks at. */
const NTU_LIMIT = 1e6;

/** NTU from effectiveness and Cr, both taken as within reach. */
type NtuLaw = (effectiveness: number, Cr: number) => number;

const counterflow: NtuLaw = (eps, Cr) => {
  const odds = eps / (1 - eps);
  return odds * meanLog(odds * (1 - Cr));
};

const parallel: NtuLaw = (eps, Cr) => -Math.log1p(-eps * (1 + Cr)) / (1 + Cr);

const cminMixed: NtuLaw = (eps, Cr) => {
  const w = -Math.log1p(-eps);
  return w * meanLog(-Cr * w);
};

const cmaxMixed: NtuLaw = (eps, Cr) => -Math.log1p(-eps * meanLog(-Cr * eps));

const shellAndTube12: NtuLaw = (eps, Cr) => {
  const s = Math.hypot(1, Cr);
  return Math.log1p((2 * eps * s) / (2 - eps * (1 + Cr + s))) / s;
};

/**
 * Root of the relation between the counterflow answer, which is never larger, and `high`.
 * Equal crossflow streams near 1 so slowly that 0.9994 already asks for the limit; beyond: refused.
 */
const bracketed =
  (law: EffectivenessLaw, high: (Cr: number) => number): NtuLaw =>
  (eps, Cr) => {
    if (eps === 0) return 0;
    const limit = high(Cr);
    const low = Math.min(limit, counterflow(eps, Cr));
    let top = low;
    while (law(top, Cr) < eps) {
      if (top === limit) {
        throw new OutOfRangeError('NTU from effectiveness', 'effectiveness', eps, [
          0,
          law(limit, Cr),
        ]);
      }
      top = Math.min(limit, 2 * top);
    }
    if (top === low) return low;
    return brent((NTU) => law(NTU, Cr) - eps, low, top, { xtol: 1e-14 * top }).x;
  };

/**
 * NTU at which the both-mixed relation peaks, where 1/NTU² = sum of the two exponential terms' slopes;
 * written so that the function rises from -1 to 1 and has one root.
 */
function bothMixedPeak(Cr: number): number {
  const g = (x: number) => (x === 0 ? 1 : (x / Math.sinh(x)) ** 2);
  const slope = (NTU: number) => 1 - g(NTU / 2) - g((Cr * NTU) / 2);
  if (!(slope(NTU_LIMIT) > 0)) return NTU_LIMIT; // a Cr this small has no peak to speak of
  return brent(slope, 1e-3, NTU_LIMIT, { xtol: 1e-10 }).x;
}

const NTU_LAW: Readonly<Record<ExchangerArrangement, NtuLaw>> = {
  counterflow,
  parallel,
  'crossflow-both-unmixed': bracketed(EFFECTIVENESS_LAW['crossflow-both-unmixed'], () => NTU_LIMIT),
  'crossflow-both-unmixed-approximate': bracketed(
    EFFECTIVENESS_LAW['crossflow-both-unmixed-approximate'],
    () => NTU_LIMIT,
  ),
  'crossflow-cmin-mixed': cminMixed,
  'crossflow-cmax-mixed': cmaxMixed,
  'crossflow-both-mixed': bracketed(EFFECTIVENESS_LAW['crossflow-both-mixed'], bothMixedPeak),
  'shell-and-tube-1-2': shellAndTube12,
};

/** The inverse relation, without range checks. */
export const ntuLaw = (arrangement: ExchangerArrangement): NtuLaw => NTU_LAW[arrangement];

/** The effectiveness an arrangement nears but does not pass, however large its surface. */
export function effectivenessMax(arrangement: ExchangerArrangement, Cr: number): number {
  switch (arrangement) {
    case 'counterflow':
    case 'crossflow-both-unmixed':
    case 'crossflow-both-unmixed-approximate':
      return 1;
    case 'parallel':
      return 1 / (1 + Cr);
    case 'crossflow-cmin-mixed':
      return Cr === 0 ? 1 : -Math.expm1(-1 / Cr);
    case 'crossflow-cmax-mixed':
      return meanDecay(Cr);
    case 'crossflow-both-mixed':
      return EFFECTIVENESS_LAW[arrangement](bothMixedPeak(Cr), Cr);
    case 'shell-and-tube-1-2':
      return 2 / (1 + Cr + Math.hypot(1, Cr));
  }
}

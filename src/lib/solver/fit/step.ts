/** One damped step of a fit. */
import type { Folded } from './factor';
import { dot, type Linearised } from './linearised';

/** Share of the step at which the residuals' curvature along it is probed. */
const PROBE = 0.1;
/** A step whose curved part is longer than this share of the straight one leaves what is known. */
const CURVED = 0.75;

export interface Step {
  /** To first order, which is what the promised gain speaks of. */
  readonly straight: Float64Array;
  /** To be taken: bent by half the acceleration. */
  readonly bent: Float64Array;
  readonly evaluations: number;
}

/** @returns null where the residuals curve too much along the step: it must be shorter */
export function dampedStep(at: Linearised, folded: Folded, damping: number): Step | null {
  const straight = at.spread(solve(folded, folded.seen, damping));
  const { setUp, p } = at;
  // With a robust loss the curvature of the loss itself would have to be counted too.
  if (setUp.loss.kind !== 'squares') return { straight, bent: straight, evaluations: 0 };
  const probe = Float64Array.from(p, (x, j) => x + PROBE * straight[j]!);
  if (probe.some((x, j) => x < setUp.lower[j]! || x > setUp.upper[j]!))
    return { straight, bent: straight, evaluations: 0 };

  const ahead = new Float64Array(setUp.m);
  setUp.problem.residuals(probe, ahead);
  const along = at.after(straight);
  for (let i = 0; i < ahead.length; i++) {
    const change = along[i]! - at.r[i]!;
    ahead[i] = (2 / PROBE) * ((ahead[i]! - at.r[i]!) / PROBE - change);
    if (!Number.isFinite(ahead[i]!)) return null;
  }
  const bend = at.spread(solve(folded, seenBy(at, folded, ahead), damping));
  if (!(2 * length(at, bend) <= CURVED * length(at, straight))) return null;
  return {
    straight,
    bent: straight.map((x, j) => x + 0.5 * bend[j]!),
    evaluations: 1,
  };
}

/** The step without damping; singular directions are left out. */
export function fullStep(at: Linearised, folded: Folded): Float64Array {
  return at.spread(solve(folded, folded.seen, 0));
}

/** Below this share of the largest, a singular value is rounding. */
const SINGULAR = 1e-13;

/** -(JᵀJ + damping)⁻¹ Jᵀ r, by the singular values of J and what its columns see of r. */
function solve({ s, v }: Folded, seen: Float64Array, damping: number): Float64Array {
  const n = s.length;
  const step = new Float64Array(n);
  for (let a = 0; a < n; a++) {
    const size = s[a]!;
    if (!(size > SINGULAR * s[0]!)) continue;
    const share = (-size * seen[a]!) / (size * size + damping);
    for (let j = 0; j < n; j++) step[j] = step[j]! + share * v[a * n + j]!;
  }
  return step;
}

/** Uᵀ Qᵀ x, found as diag(1/s) Vᵀ Jᵀ x since Q was not kept. */
function seenBy(at: Linearised, { s, v }: Folded, x: Float64Array): Float64Array {
  const n = s.length;
  const slopes = Float64Array.from(at.free, (j) => dot(at.column(j), x) / at.units[j]!);
  return Float64Array.from(s, (size, a) =>
    size > 0 ? dot(v.subarray(a * n, a * n + n), slopes) / size : 0,
  );
}

function length(at: Linearised, step: Float64Array): number {
  let sum = 0;
  for (let j = 0; j < step.length; j++) sum += (step[j]! * at.units[j]!) ** 2;
  return Math.sqrt(sum);
}

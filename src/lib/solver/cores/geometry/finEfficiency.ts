/** How much of a fin works. */
import { requireWithin, type Interval } from '../../errors';

const FIN = {
  h: [0, 1e5],
  k: [1, 500],
  thickness: [1e-6, 0.01],
  halfHeight: [1e-5, 0.5],
} as const satisfies Record<string, Interval>;

/** A thin straight fin held at both ends; by symmetry no heat passes its middle. */
export interface StraightFin {
  /** Coefficient on both faces, W/(m² K). */
  readonly h: number;
  /** Conductivity of the fin, W/(m K). */
  readonly k: number;
  /** m */
  readonly thickness: number;
  /** m, tube to mid fin. */
  readonly halfHeight: number;
}

/**
 * Efficiency of a thin straight fin with an adiabatic tip.
 * @formula eta = tanh(m l) / (m l), m = sqrt(2 h / (k t))
 * @returns 0 to 1
 * @throws {@link OutOfRangeError} for values no fin has, NaN included
 * @source any heat transfer text; Bergman et al., ch. 3
 * @example finEfficiency({ h: 60, k: 200, thickness: 1e-4, halfHeight: 4e-3 }) // 0.96918
 */
export function finEfficiency({ h, k, thickness, halfHeight }: StraightFin): number {
  requireWithin('fin', FIN, { h, k, thickness, halfHeight });
  const ml = Math.sqrt((2 * h) / (k * thickness)) * halfHeight;
  return ml < 1e-6 ? 1 : Math.tanh(ml) / ml;
}

/**
 * Efficiency of a whole surface of which a share is fins and the rest is bare tube.
 * @formula eta_o = 1 - (A_f/A) (1 - eta)
 * @symbol finShare - fin area over all area, 0 to 1
 * @returns 0 to 1
 * @throws {@link OutOfRangeError} outside 0 to 1
 * @source Kays & London, Compact Heat Exchangers, 3rd ed. 1984
 * @example surfaceEfficiency(0.9, 0.85) // 0.915
 */
export function surfaceEfficiency(efficiency: number, finShare: number): number {
  requireWithin('surface', { efficiency: [0, 1], finShare: [0, 1] }, { efficiency, finShare });
  return 1 - finShare * (1 - efficiency);
}

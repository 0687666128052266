/** How sure heat and UA are, by flow and two probes; a curve of it over the ± of the probes. */
import { requireWithin, type Interval } from '../../errors';
import { spaced } from '../../numerics/spaced';

export const HEAT_SHARE_RANGE = {
  flowShare: [0, 1],
  u_drop: [0, 100],
  drop: [1e-6, 200],
} as const satisfies Record<string, Interval>;

/**
 * ± of the heat from flow and drop, as a share of the heat.
 *
 * @formula x_Q = sqrt(x_V^2 + (u_D / dT)^2)
 * @symbol x_V - ± of the flow as a share, 1
 * @symbol u_D - ± of the drop, K; sqrt(2) times that of each probe where they err independently
 * @symbol dT - drop of the liquid, K
 * @returns share, 1; first order, so read as "useless" rather than to the digit above 50 %
 * @throws {@link OutOfRangeError} outside {@link HEAT_SHARE_RANGE}
 * @source JCGM 100:2008 (GUM), 5.1.2
 * @example heatShare({ flowShare: 0.03, u_drop: 0.4, drop: 10 }) // 0.05
 */
export function heatShare(x: { flowShare: number; u_drop: number; drop: number }): number {
  requireWithin('heat by flow and drop', HEAT_SHARE_RANGE, x);
  return Math.hypot(x.flowShare, x.u_drop / x.drop);
}

/**
 * The ± each of two probes may have for the heat to be as sure as wanted; null where the flow alone
 * is less sure than that.
 *
 * @formula u_w = dT * sqrt((x_w^2 - x_V^2) / 2)
 * @symbol x_w - ± of the heat wanted, share
 * @symbol x_V - ± of the flow, share
 * @symbol dT - drop of the liquid, K
 * @returns K
 * @source {@link heatShare} solved for the probes
 * @example probeWanted({ wanted: 0.05, flowShare: 0.03, drop: Math.SQRT2 * 10 }) // 0.4
 */
export function probeWanted(x: { wanted: number; flowShare: number; drop: number }): number | null {
  const left = x.wanted ** 2 - x.flowShare ** 2;
  return left > 0 ? x.drop * Math.sqrt(left / 2) : null;
}

/** ± of the heat over the ± of each probe, from none to `most`. */
export const heatShareCurve = (
  flowShare: number,
  drop: number,
  most: number,
): (readonly [probe: number, share: number])[] =>
  spaced(0, most, 60).map(
    (u) => [u, heatShare({ flowShare, u_drop: Math.SQRT2 * u, drop })] as const,
  );

/** A ± as a share of its value. */
export const shareOf = (plusMinus: number, value: number): number => plusMinus / Math.abs(value);

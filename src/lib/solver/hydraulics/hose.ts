/** One run of hose: friction along it, bends, further losses, and two end fittings that neck it. */
import { InvalidInputError, requireWithin, type Interval } from '../errors';
import type { Hose } from '../loop/types';
import { CHURCHILL_RANGE, churchill } from './friction';
import { contractionK, expansionK, referK } from './fittings';

/** What the hydraulics need to know of a liquid. */
export interface FlowingLiquid {
  /** Density, kg/m³. */
  readonly rho: number;
  /** Dynamic viscosity, Pa s. */
  readonly mu: number;
}

/** Number of end fittings of a run. */
const FITTINGS = 2;

const POSITIVE: Interval = [0, Number.MAX_VALUE];

/** A run reduced to what the loss needs. */
export interface HoseGeometry {
  readonly bore: number;
  readonly area: number;
  readonly lengthOverBore: number;
  readonly relativeRoughness: number;
  /** Sum of all loss coefficients on the hose bore. */
  readonly K: number;
}

export interface HoseDrop {
  readonly pressureDrop: number;
  readonly velocity: number;
  readonly reynolds: number;
  /** Darcy friction factor; null without flow. */
  readonly friction: number | null;
}

/**
 * Loss coefficient of one end fitting on the hose bore: into its bore and out again, both sudden.
 * A fitting wider than its hose loses too, so the smaller of the two bores carries the K.
 *
 * @symbol bore - hose bore, m
 * @symbol fittingBore - bore of the fitting, m; 0: no fitting to count
 * @source Crane TP-410: contraction 0.5 (1 − β²), expansion (1 − β²)², on the smaller bore
 * @example fittingK({ bore: 0.02, fittingBore: 0.01 }) // 15
 */
export function fittingK({ bore, fittingBore }: Pick<Hose, 'bore' | 'fittingBore'>): number {
  if (fittingBore === 0) return 0;
  const small = Math.min(bore, fittingBore);
  const large = Math.max(bore, fittingBore);
  const K = contractionK({ small, large }) + expansionK({ small, large });
  return referK({ K, from: small, to: bore });
}

/**
 * Check a run and reduce it to {@link HoseGeometry}.
 * @throws {@link InvalidInputError} naming the field, below `path`
 * @throws {@link OutOfRangeError} when the wall is rougher than the friction law covers
 */
export function hoseGeometry(hose: Hose, path = 'hose'): HoseGeometry {
  if (!(hose.bore > 0 && hose.bore < 1)) {
    throw new InvalidInputError(`${path}.bore`, 'a hose needs a bore above zero', hose.bore);
  }
  for (const field of ['length', 'roughness', 'bends', 'bendK', 'otherK', 'fittingBore'] as const) {
    if (!(hose[field] >= 0 && hose[field] < Infinity)) {
      throw new InvalidInputError(`${path}.${field}`, `${field} cannot be negative`, hose[field]);
    }
  }
  const relativeRoughness = hose.roughness / hose.bore;
  requireWithin(
    'Churchill',
    { relativeRoughness: CHURCHILL_RANGE.relativeRoughness },
    { relativeRoughness },
  );
  return {
    bore: hose.bore,
    area: (Math.PI / 4) * hose.bore * hose.bore,
    lengthOverBore: hose.length / hose.bore,
    relativeRoughness,
    K: hose.bends * hose.bendK + hose.otherK + FITTINGS * fittingK(hose),
  };
}

/** Pressure lost in a prepared run, Pa; `flow` at or above zero. For use inside a root finder. */
export function lossOf(run: HoseGeometry, flow: number, rho: number, mu: number): number {
  if (flow === 0) return 0;
  const velocity = flow / run.area;
  const Re = (rho * velocity * run.bore) / mu;
  const f = churchill(Re, run.relativeRoughness);
  return (f * run.lengthOverBore + run.K) * 0.5 * rho * velocity * velocity;
}

/**
 * Pressure lost in a run of hose.
 *
 * @formula dp = (f * L / D + K) * rho * V^2 / 2
 * @symbol f - Darcy friction factor by Churchill 1977, 1
 * @symbol L - length, m
 * @symbol D - bore, m
 * @symbol K - bends, further losses and two necking fittings, all on the hose bore, 1
 * @symbol rho - density, kg/m^3
 * @symbol V - mean velocity, m/s
 * @returns pressure drop (Pa), velocity (m/s), Reynolds number, Darcy friction factor
 * @throws {@link OutOfRangeError} for negative flow, or a Reynolds number above the friction law's
 * @throws {@link InvalidInputError} for a run that cannot be
 * @source Darcy-Weisbach; Crane TP-410 for the fittings
 */
export function hosePressureDrop(
  hose: Hose,
  flow: number,
  { rho, mu }: FlowingLiquid,
  path?: string,
): HoseDrop {
  return hoseDrop(hoseGeometry(hose, path), flow, { rho, mu });
}

/** {@link hosePressureDrop} of a run already prepared. */
export function hoseDrop(run: HoseGeometry, flow: number, { rho, mu }: FlowingLiquid): HoseDrop {
  requireWithin('hose', { flow: POSITIVE, rho: POSITIVE, mu: POSITIVE }, { flow, rho, mu });
  if (flow === 0) return { pressureDrop: 0, velocity: 0, reynolds: 0, friction: null };
  const velocity = flow / run.area;
  const reynolds = (rho * velocity * run.bore) / mu;
  requireWithin('Churchill', { Re: [0, CHURCHILL_RANGE.Re[1]] }, { Re: reynolds });
  return {
    pressureDrop: lossOf(run, flow, rho, mu),
    velocity,
    reynolds,
    friction: churchill(reynolds, run.relativeRoughness),
  };
}

/** Volume of liquid a run holds, m³. */
export function hoseVolume({ bore, length }: Pick<Hose, 'bore' | 'length'>): number {
  return (Math.PI / 4) * bore * bore * length;
}

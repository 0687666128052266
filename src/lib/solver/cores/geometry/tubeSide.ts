/** The liquid through the flat tubes of a core. */
import { requireWithin, type Note } from '../../errors';
import type { LiquidProperties } from '../../fluids/properties';
import { ductFlow } from './duct';
import type { CoreSurfaces } from './surfaces';
import type { CoreGeometry } from './types';

/** Drawn aluminium tube, m. @source handbook value, from memory */
export const TUBE_ROUGHNESS = 1.5e-6;
/** Into the tubes and out of them, per pass, on the tube velocity. @source Crane TP-410: 0.5 and 1 */
export const ENDS_PER_PASS = 1.5;
/** The same at the two ports, on the port's velocity. */
export const PORTS = 1.5;

export interface TubeSide {
  /** m/s */
  readonly velocity: number;
  readonly Re: number;
  readonly Pr: number;
  readonly Nu: number;
  /** Darcy. */
  readonly f: number;
  /** m/s */
  readonly portVelocity: number;
  /** W/(m² K) */
  readonly h: number;
  /** W/K */
  readonly hA: number;
  /** Pa: tubes, their ends and the two ports. */
  readonly pressureDrop: number;
  readonly notes: readonly Note[];
}

/**
 * Liquid side of a core of flat tubes: `ductFlow` in each passage between webs.
 *
 * dp = passes (f L/D + 1.5) rho V²/2 + 1.5 rho V_p²/2, V in the tubes, V_p in the ports.
 *
 * @param flow - through the whole core, m³/s
 * @throws {@link OutOfRangeError} for a flow at or below zero
 * @source Darcy-Weisbach; Crane TP-410 for ends; the laws of `ductFlow`
 */
export function tubeSide(
  g: CoreGeometry,
  s: CoreSurfaces,
  flow: number,
  { rho, mu, k, cp }: LiquidProperties,
): TubeSide {
  requireWithin('tube side', { flow: [1e-8, 0.1] }, { flow });
  const D = s.tubeDiameter;
  const velocity = flow / s.passArea;
  const Re = (rho * velocity * D) / mu;
  const Pr = (cp * mu) / k;
  const { Nu, f, notes } = ductFlow(Re, Pr, {
    diameter: D,
    length: g.tubeRun,
    sideRatio: s.passageHeight / s.passageWidth,
    roughness: TUBE_ROUGHNESS,
  });
  const h = (Nu * k) / D;
  const portVelocity = flow / ((Math.PI / 4) * g.portBore ** 2);
  return {
    velocity,
    Re,
    Pr,
    Nu,
    f,
    portVelocity,
    h,
    hA: h * s.liquidArea,
    pressureDrop:
      0.5 *
      rho *
      (g.passes * ((f * g.tubeRun) / D + ENDS_PER_PASS) * velocity ** 2 +
        PORTS * portVelocity ** 2),
    notes,
  };
}

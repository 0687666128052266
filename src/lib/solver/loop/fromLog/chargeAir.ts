/** Charge air before the cooler, out of what was logged of the engine. */
import { pressureAtAltitude } from '../../air/atmosphere';
import { chargeStateAt } from '../../charge/state';
import type { PreparedLoop } from '../prepare';
import type { Logged } from './types';

/** Assumed rise of the manifold above ambient where it was not logged, K; a tenth of it moves the air by 0.6 %. */
const MANIFOLD_RISE = 20;

export interface ChargeAir {
  /** K */
  readonly inlet: Float64Array;
  /** kg/s */
  readonly massFlow: Float64Array;
}

/**
 * Charge air row by row: as logged, else by speed and density of the engine described, compressed as in
 * its pull. A throttled manifold is taken as an open bypass against which nothing is left to work.
 * @returns null where the log holds neither, or the job does not count air by speed and density
 */
export function chargeAirOf({ loop }: PreparedLoop, logged: Logged): ChargeAir | null {
  const { chargeAirIn, chargeAirOut, airFlow, engineSpeed, manifold, t } = logged;
  if (chargeAirIn && airFlow) return { inlet: chargeAirIn, massFlow: airFlow };
  const air = Object.values(loop.duties)
    .map((duty) => duty.air)
    .find((demand) => demand.by === 'speed-density');
  if (!engineSpeed || !manifold || !air) return null;
  const ambientPressure = pressureAtAltitude(loop.site.altitude);
  const inlet = new Float64Array(t.length);
  const massFlow = new Float64Array(t.length);
  for (let k = 0; k < t.length; k++) {
    const ambient = logged.ambient?.[k] ?? loop.site.ambientTemperature;
    const gauge = manifold[k]! - ambientPressure;
    const read = chargeAirOut?.[k] ?? NaN;
    // Stated heat alone gives no state; speed and density always do.
    const state = chargeStateAt(
      { ...loop, site: { ...loop.site, ambientTemperature: ambient } },
      {
        ...loop.duties.pull,
        air: { ...air, rotation: engineSpeed[k]! },
        manifoldGauge: gauge,
        bypassRise: gauge > 0 ? null : 0,
      },
      Number.isFinite(read) ? read : ambient + MANIFOLD_RISE,
    )!;
    inlet[k] = chargeAirIn?.[k] ?? state.compressorOutlet;
    massFlow[k] = airFlow?.[k] ?? state.massFlow;
  }
  return { inlet, massFlow };
}

/** When the air shut in over the liquid lifts the cap. */
import { pressureAtAltitude } from '../../air/atmosphere';
import { coolantVapourPressure } from '../../fluids/coolant';
import { brent } from '../../numerics/root';
import { sealedGauge } from '../../reservoir/airSpaceFormulas';
import type { PreparedLoop } from '../prepare';
import { thermalMass } from '../thermalMass';

/**
 * Reservoir temperature at which the cap lifts, all liquid taken as warm as the reservoir's and the
 * reservoir as closed at ambient temperature; Infinity for a vented one.
 *
 * @source {@link sealedGauge}: ideal gas with Dalton's partial pressures
 */
export function capLiftTemperature(prepared: PreparedLoop): number {
  const { loop, boilingPoint, hottest } = prepared;
  const { reservoir, site, coolant } = loop;
  if (!(reservoir.capGauge > 0)) return Infinity;
  const p_a = pressureAtAltitude(site.altitude);
  const T_1 = Math.max(site.ambientTemperature, prepared.coldest);
  const filled = prepared.liquidAt(T_1).rho;
  const liquid = thermalMass(prepared, T_1).reduce((sum, part) => sum + part.liquidVolume, 0);
  const V_a = reservoir.totalVolume - reservoir.liquidVolume;
  const surplus = (T_2: number) => {
    const V_a2 = V_a - liquid * (filled / prepared.liquidAt(T_2).rho - 1);
    // The liquid has filled the reservoir: nothing is left to squeeze.
    if (!(V_a2 > 0)) return Infinity;
    const p_v1 = coolantVapourPressure(coolant, T_1);
    const p_v2 = coolantVapourPressure(coolant, T_2);
    return sealedGauge.value({ p_a, p_v1, V_a, V_a2, T_2, T_1, p_v2 }) - reservoir.capGauge;
  };
  // At the boiling point vapour alone holds the cap's pressure, so it has lifted by then.
  const end = Math.min(boilingPoint, hottest);
  if (!(T_1 < end)) return end;
  const fb = Math.min(surplus(end), Number.MAX_VALUE);
  if (!(fb > 0)) return boilingPoint;
  const fa = surplus(T_1);
  if (fa >= 0) return T_1;
  const finite = (T: number) => Math.min(surplus(T), Number.MAX_VALUE);
  return brent(finite, T_1, end, { fa, fb, xtol: 1e-6 }).x;
}

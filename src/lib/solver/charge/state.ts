import { AIR_GAS_CONSTANT, airCp } from '../air/air';
import { pressureAtAltitude } from '../air/atmosphere';
import { compressedDewPoint } from '../air/humid';
import { InvalidInputError } from '../errors';
import type { AirDemand, ChargeState, Duty, Loop } from '../loop/types';
import { bypassedCompression } from './bypass';
import { pressureRatio } from './compressor';
import { airMassFlowFromPower, airMassFlowSpeedDensity } from './demand';

/** The parts of a loop that make the charge air. */
export type ChargeSide = Pick<Loop, 'site' | 'inletLoss' | 'duties' | 'chargeCooler'>;

/** Air the engine breathes, kg/s; null when only heat is stated. */
function airMassFlow(air: AirDemand, p_manifold_abs: number, T_manifold: number): number | null {
  switch (air.by) {
    case 'power':
      return airMassFlowFromPower(air);
    case 'speed-density':
      return airMassFlowSpeedDensity({ ...air, p_manifold_abs, T_manifold, R: AIR_GAS_CONSTANT });
    case 'heat':
      return null;
  }
}

/**
 * Air flow at which `loop.inletLoss` was stated: full power is the duty "pull". It is taken at the same
 * manifold temperature; when the pull states heat only, the charge cooler's rated flow stands in.
 */
function fullPowerFlow(loop: ChargeSide, p_ambient: number, T_manifold: number): number {
  const { air, manifoldGauge } = loop.duties.pull;
  const flow = airMassFlow(air, p_ambient + manifoldGauge, T_manifold);
  return flow !== null && flow > 0 ? flow : loop.chargeCooler.rating.airMassFlow;
}

/**
 * The charge air from the filter to the charge cooler's inlet, for a manifold at `T_manifold`.
 *
 * - Losses of the inlet and of the cooler's air side go with the square of the air flow, from full
 *   power and from the cooler's rating.
 * - Bypass closed: the compressor lifts the air to manifold pressure plus the cooler's loss, and
 *   nothing goes round. Bypass open (`bypassRise` set): it works against that rise alone, and
 *   `recirculation` of its outlet air goes round.
 * - The dew point is that of the outside air's moisture at the cooler's inlet pressure.
 * - Specific heat is taken at the compressor outlet, where the cooler's air enters.
 *
 * Only speed-density looks at `T_manifold`, which is the charge cooler's outlet. A hotter manifold
 * breathes less air, and less air is cooled further: outlet less `T_manifold` falls all the way, so
 * whoever knows the cooler finds the one root in a bracket.
 *
 * @param T_manifold - charge air at the engine, K
 * @returns null when the duty states heat outright
 * @throws {@link InvalidInputError} for a closed bypass with the manifold below inlet pressure
 * @throws {@link OutOfRangeError} from the laws used
 */
export function chargeStateAt(
  loop: ChargeSide,
  duty: Duty,
  T_manifold: number,
): ChargeState | null {
  const { site, chargeCooler } = loop;
  const ambientPressure = pressureAtAltitude(site.altitude);
  const manifoldPressure = ambientPressure + duty.manifoldGauge;
  const massFlow = airMassFlow(duty.air, manifoldPressure, T_manifold);
  if (massFlow === null) return null;

  const fullFlow = fullPowerFlow(loop, ambientPressure, T_manifold);
  const inletLoss = loop.inletLoss * (massFlow / fullFlow) ** 2;
  const coolerAirLoss =
    chargeCooler.airLossRated * (massFlow / chargeCooler.rating.airMassFlow) ** 2;

  const open = duty.bypassRise !== null;
  const ratio = pressureRatio({
    p_ambient: ambientPressure,
    dp_inlet: inletLoss,
    p_manifold_abs: open ? ambientPressure - inletLoss + duty.bypassRise : manifoldPressure,
    dp_charge_cooler: open ? 0 : coolerAirLoss,
  });
  if (ratio < 1) {
    throw new InvalidInputError(
      `duties.${duty.id}.manifoldGauge`,
      'the manifold is below the compressor inlet: the air is throttled, so state the rise the compressor still works against (open bypass)',
      duty.manifoldGauge,
    );
  }
  const { T_in, T_out } = bypassedCompression({
    T_in: site.ambientTemperature + duty.intakeRise,
    pressureRatio: ratio,
    efficiency: duty.compressorEfficiency,
    recirculation: open ? duty.recirculation : 0,
  });
  const cp = airCp(T_out);
  return {
    ambientPressure,
    massFlow,
    pressureRatio: ratio,
    compressorInlet: T_in,
    compressorOutlet: T_out,
    airCp: cp,
    capacityRate: massFlow * cp,
    manifoldPressure,
    inletLoss,
    coolerAirLoss,
    dewPoint: compressedDewPoint({
      T: site.ambientTemperature,
      relativeHumidity: site.relativeHumidity,
      p: ambientPressure,
      p_charge: (ambientPressure - inletLoss) * ratio,
    }),
  };
}

/**
 * {@link chargeStateAt} with a first guess for the manifold: air cooled back to ambient. Exact unless
 * the duty goes by speed-density; then its outlet and `T_manifold` must be brought together.
 */
export function chargeState(
  loop: ChargeSide,
  duty: Duty,
  T_manifoldGuess: number = loop.site.ambientTemperature,
): ChargeState | null {
  return chargeStateAt(loop, duty, T_manifoldGuess);
}

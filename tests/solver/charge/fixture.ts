/** An invented car: 600 hp, air and cooler as in the worked questions. Temperatures in °F by {@link F}. */
import type { ChargeSide } from '$lib/solver/charge/state';
import type { AirDemand, Duty, DutyId } from '$lib/solver/loop/types';

export const F = (t: number) => (t - 32) / 1.8 + 273.15;
export const HP = 745.6998715822702; // 550 ft lbf/s, by definition
export const LB = 0.45359237; // by definition
export const PSI = 6894.757293168361; // by definition
export const GPM = (231 * 0.0254 ** 3) / 60; // by definition

export const byPower = (hp: number, lbPerHpHour: number, airFuelRatio: number): AirDemand => ({
  by: 'power',
  power: hp * HP,
  fuelUse: (lbPerHpHour * LB) / (HP * 3600),
  airFuelRatio,
});

export const duty = (id: DutyId, air: AirDemand, more: Partial<Duty> = {}): Duty => ({
  id,
  vehicleSpeed: 20,
  air,
  manifoldGauge: 10 * PSI,
  bypassRise: null,
  recirculation: 0,
  compressorEfficiency: 0.65,
  intakeRise: 0,
  bayRise: 20,
  ...more,
});

const pull = duty('pull', byPower(600, 0.55, 11.8));
const cruise = duty('cruise', byPower(30, 0.6, 14.7), {
  manifoldGauge: -6 * PSI,
  bypassRise: 0.1 * 101325,
  compressorEfficiency: 0.55,
});

/** No losses, sea level, 90 °F, half-humid air. */
export const car: ChargeSide = {
  site: { ambientTemperature: F(90), altitude: 0, relativeHumidity: 0.5 },
  inletLoss: 0,
  duties: { pull, cruise, traffic: { ...cruise, id: 'traffic' } },
  chargeCooler: {
    arrangement: 'crossflow-both-unmixed',
    rating: {
      heat: 21e3,
      airMassFlow: 0.45,
      airInlet: 380,
      liquidFlow: 8 * GPM,
      liquidInlet: 315,
      coolant: { kind: 'ethylene-glycol', massFraction: 0.5 },
    },
    airShare: 0.6,
    airExponent: 0.6,
    liquidExponent: 0.5,
    liquidLoss: { points: [{ flow: 8 * GPM, loss: 3 * PSI }], exponent: 1.8 },
    liquidVolume: 1e-3,
    metalCapacity: 3000,
    cleanliness: 1,
    airLossRated: 0,
  },
};

/**
 * Example loops for tests. Every number is our own invention, of the size the trade meets (common
 * practice, no source): a 450 hp street vehicle with a positive-displacement compressor, and variants.
 */
import type { Duty, Hose, Loop } from '$lib/solver/loop/types';

const inch = 0.0254;
const C = (celsius: number) => celsius + 273.15;

const hose = (length: number, bends: number): Hose => ({
  bore: 0.75 * inch,
  length,
  roughness: 1.5e-6,
  bends,
  bendK: 0.75,
  otherK: 0.5,
  fittingBore: 0.016,
});

const duty = (id: Duty['id'], rest: Partial<Duty> & Pick<Duty, 'air'>): Duty => ({
  id,
  vehicleSpeed: 0,
  manifoldGauge: -40e3,
  bypassRise: 8e3,
  recirculation: 0.3,
  compressorEfficiency: 0.6,
  intakeRise: 8,
  bayRise: 30,
  ...rest,
});

const kW = 1e3;
const perKWh = 1 / 3.6e6;

/** Settles in every duty, with all parts in use: soak, bypass, shroud, condenser, recirculation. */
export const exampleLoop: Loop = {
  site: { ambientTemperature: C(32), altitude: 200, relativeHumidity: 0.45 },
  coolant: { kind: 'ethylene-glycol', massFraction: 0.5 },
  inletLoss: 2.5e3,
  duties: {
    traffic: duty('traffic', {
      air: { by: 'power', power: 9 * kW, fuelUse: 0.4 * perKWh, airFuelRatio: 14.6 },
      intakeRise: 20,
      bayRise: 45,
    }),
    cruise: duty('cruise', {
      vehicleSpeed: 29,
      air: { by: 'power', power: 24 * kW, fuelUse: 0.34 * perKWh, airFuelRatio: 14.6 },
    }),
    pull: duty('pull', {
      vehicleSpeed: 40,
      air: { by: 'power', power: 335 * kW, fuelUse: 0.34 * perKWh, airFuelRatio: 11.8 },
      manifoldGauge: 70e3,
      bypassRise: null,
      recirculation: 0,
    }),
  },
  chargeCooler: {
    arrangement: 'crossflow-both-unmixed',
    rating: {
      heat: 22 * kW,
      airMassFlow: 0.38,
      airInlet: C(110),
      liquidFlow: 5e-4,
      liquidInlet: C(32),
      coolant: { kind: 'water', massFraction: 0 },
    },
    airShare: 0.65,
    airExponent: 0.65,
    liquidExponent: 0.6,
    liquidLoss: { points: [{ flow: 5e-4, loss: 20e3 }], exponent: 1.8 },
    liquidVolume: 1.1e-3,
    metalCapacity: 4.5e3,
    cleanliness: 1,
    airLossRated: 5e3,
  },
  frontExchanger: {
    arrangement: 'crossflow-both-unmixed',
    rating: {
      heat: 15 * kW,
      airMassFlow: 0.85,
      airInlet: C(30),
      liquidFlow: 5e-4,
      liquidInlet: C(65),
      coolant: { kind: 'ethylene-glycol', massFraction: 0.5 },
    },
    airShare: 0.7,
    airExponent: 0.6,
    liquidExponent: 0.5,
    liquidLoss: { points: [{ flow: 5e-4, loss: 9e3 }], exponent: 1.75 },
    liquidVolume: 1.3e-3,
    metalCapacity: 3.6e3,
    cleanliness: 1,
    width: 0.6,
    height: 0.3,
    airLoss: {
      points: [
        { flow: 2, loss: 40 },
        { flow: 4, loss: 115 },
        { flow: 8, loss: 360 },
      ],
      exponent: 2,
    },
  },
  hoses: {
    suction: hose(0.6, 1),
    delivery: hose(1.6, 3),
    transfer: hose(2.2, 3),
    back: hose(1.8, 3),
  },
  pump: {
    curve: [
      { flow: 0, head: 8.2 },
      { flow: 3e-4, head: 7.4 },
      { flow: 6e-4, head: 5.6 },
      { flow: 9e-4, head: 2.9 },
      { flow: 1.1e-3, head: 0.6 },
    ],
    ratedVolts: 13.5,
    volts: 13,
    motor: 'brushed',
    cutoutVolts: 0,
    arrangement: 'one',
    electricPower: 130,
    heatShare: 0.5,
    npshRequired: 2,
  },
  reservoir: {
    liquidVolume: 5e-3,
    totalVolume: 6e-3,
    metalCapacity: 1.8e3,
    capGauge: 0,
    levelAbovePump: 0.15,
    shortCircuit: 0.1,
  },
  fans: {
    count: 2,
    curve: [
      { flow: 0, pressure: 150 },
      { flow: 0.15, pressure: 118 },
      { flow: 0.25, pressure: 75 },
      { flow: 0.36, pressure: 0 },
    ],
    ratedVolts: 13.5,
    volts: 13,
    diameter: 0.25,
    drivenLoss: 12,
    coverage: 0.75,
  },
  airPath: {
    ramRecovery: 0.35,
    stackLoss: { points: [{ flow: 4, loss: 45 }], exponent: 1.8 },
    stackHeat: 3 * kW,
    recirculation: 0.15,
    recirculationFade: 12,
  },
  soak: {
    engineConductance: 6,
    engineTemperature: C(92),
    hoseConductance: 2,
    reservoirConductance: 3,
  },
};

/** The same vehicle, its air flow by speed and density. */
export const speedDensityLoop: Loop = {
  ...exampleLoop,
  duties: {
    ...exampleLoop.duties,
    pull: {
      ...exampleLoop.duties.pull,
      air: { by: 'speed-density', displacement: 0.0058, rotation: 95, volumetricEfficiency: 0.92 },
    },
  },
};

/** The same vehicle with the pump unplugged. */
export const stoppedLoop: Loop = { ...exampleLoop, pump: { ...exampleLoop.pump, volts: 0 } };

/** An invented loop for the tests of liquid and air side. Every figure is made up. */
import type { Core, Hose, Loop } from '../../../src/lib/solver/loop/types';

export const psi = 6894.757293;
export const gpm = 6.30901964e-5;
export const foot = 0.3048;
export const inch = 0.0254;
export const fahrenheit = (t: number) => (t - 32) / 1.8 + 273.15;

/** 50 % by volume of pure ethylene glycol. */
export const halfAndHalf = { kind: 'ethylene-glycol', massFraction: 0.527 } as const;

const hose: Hose = {
  bore: 0.75 * inch,
  length: 1.2,
  roughness: 1.5e-6,
  bends: 2,
  bendK: 0.75,
  otherK: 0.4,
  fittingBore: 0.6 * inch,
};

const core: Core = {
  arrangement: 'crossflow-both-unmixed',
  rating: {
    heat: 20e3,
    airMassFlow: 0.5,
    airInlet: 370,
    liquidFlow: 8 * gpm,
    liquidInlet: fahrenheit(120),
    coolant: halfAndHalf,
  },
  airShare: 0.6,
  airExponent: 0.6,
  liquidExponent: 0.8,
  liquidLoss: { points: [{ flow: 8 * gpm, loss: 3 * psi }], exponent: 1.8 },
  liquidVolume: 1e-3,
  metalCapacity: 3000,
  cleanliness: 1,
};

export const exampleLoop: Loop = {
  site: { ambientTemperature: 305, altitude: 300, relativeHumidity: 0.4 },
  coolant: halfAndHalf,
  inletLoss: 2000,
  duties: {
    traffic: duty('traffic', 0),
    cruise: duty('cruise', 25),
    pull: duty('pull', 40),
  },
  chargeCooler: { ...core, airLossRated: 5000 },
  frontExchanger: {
    ...core,
    liquidLoss: { points: [{ flow: 8 * gpm, loss: 1.5 * psi }], exponent: 1.8 },
    width: 24 * inch,
    height: 12 * inch,
    airLoss: {
      points: [
        { flow: 2, loss: 2.75 * (3 * 2 + 1.7 * 4) },
        { flow: 8, loss: 2.75 * (3 * 8 + 1.7 * 64) },
      ],
      exponent: 2,
    },
  },
  hoses: { suction: hose, delivery: hose, transfer: hose, back: hose },
  pump: {
    curve: parabola(16 * foot, 11 * gpm),
    ratedVolts: 13.5,
    volts: 13.5,
    motor: 'brushed',
    cutoutVolts: 8,
    arrangement: 'one',
    electricPower: 70,
    heatShare: 0.8,
    npshRequired: 1.8,
  },
  reservoir: {
    liquidVolume: 6e-3,
    totalVolume: 7e-3,
    metalCapacity: 900,
    capGauge: 0,
    levelAbovePump: 0.15,
    shortCircuit: 0,
  },
  fans: {
    count: 2,
    curve: [
      { flow: 0, pressure: 150 },
      { flow: 650 * 4.719474432e-4, pressure: 0 },
    ],
    ratedVolts: 13.5,
    volts: 13.5,
    diameter: 10 * inch,
    drivenLoss: 1.5,
    coverage: 1,
  },
  airPath: {
    ramRecovery: 0.4,
    stackLoss: { points: [], exponent: 2 },
    stackHeat: 0,
    recirculation: 0.2,
    recirculationFade: 15,
  },
  soak: {
    engineConductance: 5,
    engineTemperature: 368,
    hoseConductance: 3,
    reservoirConductance: 2,
  },
};

/** Points of H = H0 (1 − (Q/Qm)²). */
export function parabola(H0: number, Qm: number, n = 61) {
  return Array.from({ length: n }, (_, i) => {
    const x = i / (n - 1);
    return { flow: x * Qm, head: H0 * (1 - x * x) };
  });
}

function duty(id: 'traffic' | 'cruise' | 'pull', vehicleSpeed: number): Loop['duties']['pull'] {
  return {
    id,
    vehicleSpeed,
    air: { by: 'heat', heat: 2000 },
    manifoldGauge: 0,
    bypassRise: null,
    recirculation: 0,
    compressorEfficiency: 0.65,
    intakeRise: 5,
    bayRise: 30,
  };
}

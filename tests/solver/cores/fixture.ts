/** Invented cores: a charge cooler and a front exchanger of a 600 hp car. */
import type { Core } from '$lib/solver/loop/types';

export const chargeCore: Core = {
  arrangement: 'crossflow-both-unmixed',
  rating: {
    heat: 21e3,
    airMassFlow: 0.45,
    airInlet: 380,
    liquidFlow: 5e-4,
    liquidInlet: 315,
    coolant: { kind: 'ethylene-glycol', massFraction: 0.5 },
  },
  airShare: 0.6,
  airExponent: 0.6,
  liquidExponent: 0.5,
  liquidLoss: { points: [{ flow: 5e-4, loss: 2e4 }], exponent: 1.8 },
  liquidVolume: 1e-3,
  metalCapacity: 3000,
  cleanliness: 1,
};

export const frontCore: Core = {
  ...chargeCore,
  rating: {
    heat: 14e3,
    airMassFlow: 0.8,
    airInlet: 303.15,
    liquidFlow: 5e-4,
    liquidInlet: 328.15,
    coolant: { kind: 'ethylene-glycol', massFraction: 0.5 },
  },
  airShare: 0.7,
  airExponent: 0.45,
  liquidExponent: 0.8,
};

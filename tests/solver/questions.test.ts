/**
 * Questions people ask, answered by the solver. One list to open first: the answer that matters of
 * each; every other figure of the same question is held where the module is tested:
 *
 * - heat at full power, 200 °F at a cruise: charge/state.test.ts
 * - hose size, what the pump really flows: hydraulics/operatingPoint.test.ts
 * - what two fans really pull: airside/face.test.ts
 * - is it cavitating: suction/npsh.test.ts
 * - volts at the pump: feed/pumpFeed.test.ts
 *
 * Expected figures were computed apart from this project, in Python, from invented but representative
 * parts. Tolerances came with them: closed forms ±0.5 %, what rests on properties or on an iteration
 * ±2 %, temperatures ±1 °F.
 */
import { describe, expect, it } from 'vitest';
import { airSide } from '$lib/solver/airside/face';
import { chargeHeat, chargeOutlet } from '$lib/solver/charge/coolingFormulas';
import { chargeState } from '$lib/solver/charge/state';
import { coolantProperties } from '$lib/solver/fluids/coolant';
import { g } from '$lib/solver/hydraulics/affinity';
import { hydraulicModel } from '$lib/solver/hydraulics/operatingPoint';
import { heatStored, lumpedTemperature, timeConstant } from '$lib/solver/loop/lumped';
import { thermalMass } from '$lib/solver/loop/thermalMass';
import type { DutyId, Hose, Loop } from '$lib/solver/loop/types';
import { car } from './charge/fixture';
import {
  exampleLoop,
  fahrenheit,
  foot,
  gpm,
  halfAndHalf,
  inch,
  parabola,
  psi,
} from './hydraulics/exampleLoop';

const CLOSED = 0.005;
const ITERATED = 0.02;
const cfm = 4.719474432e-4;
const inchOfWater = 249.08891;
const gallon = 231 * inch ** 3; // by definition

const within = (got: number, want: number, share: number) =>
  expect(Math.abs(got / want - 1), `${got} against ${want}`).toBeLessThanOrEqual(share);
const withinOneDegree = (T: number, want: number) =>
  expect(Math.abs(T - fahrenheit(want)) * 1.8, `${T} K against ${want} °F`).toBeLessThanOrEqual(1);

/** Heat and intake temperature with the charge cooler's effectiveness given. */
function cooled(duty: DutyId, eps: number, liquid: number) {
  const state = chargeState(car, car.duties[duty])!;
  const ends = { T_2: state.compressorOutlet, T_l: fahrenheit(liquid) };
  const heat = chargeHeat.value({ eps, C_min: state.capacityRate, ...ends });
  const intake = chargeOutlet.value({ T_2: ends.T_2, Q: heat, C_a: state.capacityRate });
  return { state, heat, intake };
}

describe('How much heat must I remove at full power? (600 hp, 10 psi, 90 °F, liquid 115 °F)', () => {
  const { state, heat, intake } = cooled('pull', 0.7, 115);
  it('the compressor gives 0.4906 kg/s at 225.2 °F', () => {
    within(state.massFlow, 0.4906, CLOSED);
    withinOneDegree(state.compressorOutlet, 225.2);
  });
  // 2 %: the expected figure takes air at 1005 J/(kg K); the solver's air at 380 K has 0.7 % more.
  it('at effectiveness 0.70: 21.1 kW, intake air 148.0 °F', () => {
    within(heat, 21.1e3, ITERATED);
    withinOneDegree(intake, 148);
  });
});

describe('Why 200 °F at a 30 hp cruise? Do I need a bigger exchanger?', () => {
  it('with liquid at 105 °F the duty is 227 W and intake air 105.4 °F: size is not the question', () => {
    const { heat, intake } = cooled('cruise', 0.97, 105);
    within(heat, 227, ITERATED);
    withinOneDegree(intake, 105.4);
  });
  it('with liquid at 205 °F the loop heats the charge, by 1578 W to 202.4 °F', () => {
    const { heat, intake } = cooled('cruise', 0.97, 205);
    within(heat, -1578, ITERATED);
    withinOneDegree(intake, 202.4);
  });
});

const none: Hose = {
  bore: 0.05,
  length: 0,
  roughness: 0,
  bends: 0,
  bendK: 0,
  otherK: 0,
  fittingBore: 0,
};
/** 20 ft in all, eight bends of K 0.75, entrance 0.5, exit 1.0; the dash number is sixteenths of bore. */
const plumbed = (dash: number, H0: number, Qm: number): Loop => ({
  ...exampleLoop,
  hoses: {
    suction: none,
    delivery: {
      ...none,
      bore: (dash / 16) * inch,
      length: 20 * foot,
      roughness: 1.5e-6,
      bends: 8,
      bendK: 0.75,
      otherK: 1.5,
    },
    transfer: none,
    back: none,
  },
  pump: { ...exampleLoop.pump, curve: parabola(H0 * foot, Qm * gpm) },
});
const at120 = coolantProperties(halfAndHalf, fahrenheit(120));

describe('Is −10 hose enough? (20 ft, 8 gal/min, 50/50 at 120 °F)', () => {
  it.each([
    [8, 22.99],
    [10, 8.51],
    [12, 3.8],
    [16, 1.08],
  ])('−%d loses %d psi', (dash, loss) => {
    const head = (loop: Loop) => hydraulicModel(loop).systemHead(8 * gpm, at120);
    const loop = plumbed(dash, 16, 11);
    const bare = { ...loop, hoses: { ...loop.hoses, delivery: none } };
    within(((head(loop) - head(bare)) * at120.rho * g) / psi, loss, ITERATED);
  });
});

describe('What will the pump really flow? (hose as above, cores 3 and 1.5 psi at 8 gal/min)', () => {
  it.each([
    ['small', 6.5, 5.8, 3.53],
    ['medium', 16, 11, 6.1],
    ['large', 28, 26, 9.37],
    ['very large', 50, 42, 13.11],
  ])('a %s pump, %d ft and %d gal/min at most: %d gal/min', (_name, H0, Qm, flow) => {
    within(hydraulicModel(plumbed(12, H0, Qm)).flowAt(at120) / gpm, flow, ITERATED);
  });
});

describe('How far does the tank rise in a pull? (21.12 kW, no rejection, 50/50 and 3 kg of aluminium)', () => {
  /** Capacity of a loop that is a tank of this many gallons and 3 kg of aluminium at 900 J/(kg K), from memory. */
  function capacity(gallons: number): number {
    const empty = { liquidVolume: 0, metalCapacity: 0 };
    const loop: Loop = {
      ...exampleLoop,
      chargeCooler: { ...exampleLoop.chargeCooler, ...empty },
      frontExchanger: { ...exampleLoop.frontExchanger, ...empty },
      hoses: { suction: none, delivery: none, transfer: none, back: none },
      reservoir: {
        ...exampleLoop.reservoir,
        liquidVolume: gallons * gallon,
        totalVolume: gallons * gallon,
        metalCapacity: 3 * 900,
      },
    };
    const parts = thermalMass(loop, fahrenheit(120));
    return parts.reduce((sum, part) => sum + part.capacity, 0);
  }
  const rise = (gallons: number, seconds: number) => {
    const T0 = 300;
    const mass = { C: capacity(gallons), G: 0, Q: 21.12e3, T_surroundings: T0, T0 };
    return (lumpedTemperature(mass, seconds) - T0) * 1.8;
  };
  it.each([
    [1, 10, 23.5],
    [1.5, 10, 16.6],
    [3, 10, 8.8],
    [5, 10, 5.4],
    [3, 60, 52.8],
  ])('%d gal, %d s: %d °F', (gallons, seconds, expected) =>
    within(rise(gallons, seconds), expected, ITERATED),
  );
  it('recovers with a time constant of 123 s: 3 gal, 350 W/K', () => {
    within(timeConstant({ C: capacity(3), G: 350 }), 123, ITERATED);
  });
  it('holds all of the heat that went in', () => {
    const T1 = 300 + rise(3, 10) / 1.8;
    within(heatStored({ C: capacity(3), T0: 300, T1 }), 211.2e3, 1e-9);
  });
});

describe('What do two 10 in fans really pull? (650 cfm and 0.60 in wg each, 24 × 12 in, full shroud)', () => {
  it('914 cfm through a 2.75 in core, not the 1300 on the boxes', () => {
    const fans: Loop['fans'] = {
      ...exampleLoop.fans,
      count: 2,
      curve: [
        { flow: 0, pressure: 0.6 * inchOfWater },
        { flow: 650 * cfm, pressure: 0 },
      ],
    };
    // The fans' curve and the core's loss hold for one and the same air: standard air, at sea level.
    const site = { ...exampleLoop.site, altitude: 0, ambientTemperature: 294.15 };
    const air = airSide({ ...exampleLoop, site, fans }, 0);
    within(air.totalVolumeFlow / cfm, 914, ITERATED);
    within(air.meanFaceVelocity, 2.32, ITERATED);
  });
});

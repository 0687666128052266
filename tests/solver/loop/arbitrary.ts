/** Random loops that are valid, over the sizes the trade meets and somewhat beyond (fast-check). */
import fc from 'fast-check';
import type {
  AirDemand,
  ChargeCooler,
  Coolant,
  Core,
  Duty,
  DutyId,
  Fans,
  FrontExchanger,
  Hose,
  Loop,
  Pump,
} from '$lib/solver/loop/types';
import { exampleLoop } from './example';

const GRAIN = 1_000_000;
/** Evenly spread over the range, its ends now and then. Plain doubles would nearly all lie at the ends. */
const between = (min: number, max: number) =>
  fc.oneof(
    {
      weight: 19,
      arbitrary: fc
        .noBias(fc.integer({ min: 0, max: GRAIN }))
        .map((i) => min + ((max - min) * i) / GRAIN),
    },
    fc.constantFrom(min, max),
  );

export const arbitraryCoolant: fc.Arbitrary<Coolant> = fc.oneof(
  fc.constant<Coolant>({ kind: 'water', massFraction: 0 }),
  fc.record({
    kind: fc.constantFrom('ethylene-glycol' as const, 'propylene-glycol' as const),
    massFraction: between(0.1, 0.6),
  }),
);

const arrangement = fc.constantFrom(
  'counterflow' as const,
  'parallel' as const,
  'crossflow-both-unmixed' as const,
  'crossflow-air-mixed' as const,
  'crossflow-liquid-mixed' as const,
);

/** What any core has, its rating scaled from one that exists so that every arrangement can carry it. */
const core = (rated: Core): fc.Arbitrary<Core> =>
  fc
    .record({
      arrangement,
      size: between(0.8, 1.4),
      heatShare: between(0.2, 0.6),
      airShare: between(0.05, 0.95),
      airExponent: between(0.3, 0.9),
      liquidExponent: between(0, 0.8),
      loss: between(0.2, 6),
      exponent: between(1, 2),
      liquidVolume: between(0, 4e-3),
      metalCapacity: between(0, 1e4),
      cleanliness: between(0, 1),
    })
    .map((x) => ({
      ...rated,
      arrangement: x.arrangement,
      rating: {
        ...rated.rating,
        airMassFlow: rated.rating.airMassFlow * x.size,
        heat: rated.rating.heat * x.size * x.heatShare,
      },
      airShare: x.airShare,
      airExponent: x.airExponent,
      liquidExponent: x.liquidExponent,
      liquidLoss: {
        points: rated.liquidLoss.points.map(({ flow, loss }) => ({ flow, loss: loss * x.loss })),
        exponent: x.exponent,
      },
      liquidVolume: x.liquidVolume,
      metalCapacity: x.metalCapacity,
      cleanliness: x.cleanliness,
    }));

const hose: fc.Arbitrary<Hose> = fc
  .record({
    bore: between(0.009, 0.04),
    length: between(0.1, 6),
    roughness: between(0, 2e-5),
    bends: fc.integer({ min: 0, max: 8 }),
    bendK: between(0, 1.5),
    otherK: between(0, 4),
    necked: between(0.6, 1),
  })
  .map(({ necked, ...run }) => ({ ...run, fittingBore: necked > 0.95 ? 0 : necked * run.bore }));

const pump: fc.Arbitrary<Pump> = fc
  .record({
    head: between(0.5, 2.5),
    flow: between(0.3, 2),
    volts: fc.oneof(between(5, 15), fc.constant(0)),
    motor: fc.constantFrom('brushed' as const, 'held-speed' as const),
    arrangement: fc.constantFrom(
      'one' as const,
      'two-in-series' as const,
      'two-in-parallel' as const,
    ),
    electricPower: between(0, 400),
    heatShare: between(0, 1),
    npshRequired: between(0, 5),
  })
  .map(({ head, flow, ...rest }) => ({
    ...exampleLoop.pump,
    ...rest,
    cutoutVolts: 8,
    curve: exampleLoop.pump.curve.map((p) => ({ flow: p.flow * flow, head: p.head * head })),
  }));

const fans: fc.Arbitrary<Fans> = fc
  .record({
    count: fc.integer({ min: 0, max: 2 }),
    volts: fc.oneof({ weight: 3, arbitrary: between(8, 15) }, fc.constant(0)),
    strength: between(0.3, 2),
    drivenLoss: between(2, 40),
    coverage: between(0.6, 1),
  })
  .map(({ strength, ...rest }) => ({
    ...exampleLoop.fans,
    ...rest,
    curve: exampleLoop.fans.curve.map((p) => ({ ...p, pressure: p.pressure * strength })),
  }));

/** One engine: the harder duty turns it faster, so that full power breathes the most. */
const demand = (power: number, rotation: readonly [number, number]): fc.Arbitrary<AirDemand> =>
  fc.oneof(
    fc.record({
      by: fc.constant('power' as const),
      power: between(0.5 * power, 1.3 * power),
      fuelUse: between(0.25 / 3.6e6, 0.5 / 3.6e6),
      airFuelRatio: between(10, 22),
    }),
    fc.record({
      by: fc.constant('speed-density' as const),
      displacement: between(0.004, 0.006),
      rotation: between(...rotation),
      volumetricEfficiency: between(0.6, 1.1),
    }),
    fc.record({ by: fc.constant('heat' as const), heat: between(0, 40e3) }),
  );

const duty = (
  id: DutyId,
  boosted: boolean,
  power: number,
  rotation: readonly [number, number],
): fc.Arbitrary<Duty> =>
  fc.record({
    id: fc.constant(id),
    vehicleSpeed: id === 'traffic' ? fc.constant(0) : between(5, 60),
    air: demand(power, rotation),
    manifoldGauge: boosted ? between(30e3, 110e3) : between(-45e3, -10e3),
    bypassRise: boosted ? fc.constant(null) : between(0, 20e3),
    recirculation: between(0, 0.6),
    compressorEfficiency: between(0.45, 0.8),
    intakeRise: between(0, 30),
    bayRise: between(0, 70),
  });

/** Valid loops; what is not varied here is that of the example. */
export const arbitraryLoop: fc.Arbitrary<Loop> = fc
  .record({
    site: fc.record({
      ambientTemperature: between(253, 323),
      altitude: between(-100, 3000),
      relativeHumidity: between(0.05, 1),
    }),
    coolant: arbitraryCoolant,
    inletLoss: between(0, 5e3),
    traffic: duty('traffic', false, 10e3, [10, 20]),
    cruise: duty('cruise', false, 25e3, [20, 40]),
    pull: duty('pull', true, 300e3, [60, 110]),
    chargeCooler: core(exampleLoop.chargeCooler),
    frontExchanger: core(exampleLoop.frontExchanger),
    hoses: fc.record({ suction: hose, delivery: hose, transfer: hose, back: hose }),
    pump,
    reservoir: fc.record({
      liquidVolume: between(2e-4, 0.03),
      totalVolume: fc.constant(0.035),
      metalCapacity: between(0, 5e3),
      capGauge: fc.oneof(fc.constant(0), between(0, 150e3)),
      levelAbovePump: between(-0.5, 1),
      shortCircuit: fc.oneof(fc.constant(0), between(0, 0.95)),
    }),
    fans,
    airPath: fc.record({
      ramRecovery: between(0, 0.8),
      stackLoss: fc.constant(exampleLoop.airPath.stackLoss),
      stackHeat: between(0, 6e3),
      recirculation: between(0, 0.7),
      recirculationFade: between(1, 30),
    }),
    soak: fc.record({
      engineConductance: fc.oneof(fc.constant(0), between(0, 20)),
      engineTemperature: between(330, 390),
      hoseConductance: fc.oneof(fc.constant(0), between(0, 8)),
      reservoirConductance: fc.oneof(fc.constant(0), between(0, 8)),
    }),
    liquidOrder: fc.constantFrom('cooler-first' as const, 'front-first' as const),
  })
  .map(({ traffic, cruise, pull, chargeCooler, frontExchanger, ...rest }) => ({
    ...rest,
    duties: { traffic, cruise, pull },
    chargeCooler: { ...exampleLoop.chargeCooler, ...chargeCooler } satisfies ChargeCooler,
    frontExchanger: { ...exampleLoop.frontExchanger, ...frontExchanger } satisfies FrontExchanger,
  }));

export const arbitraryDuty: fc.Arbitrary<DutyId> = fc.constantFrom('traffic', 'cruise', 'pull');

import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import * as formulas from '../../../src/lib/solver/hydraulics/formulas';
import { hydraulicPower, headOf, pumpAffinity } from '../../../src/lib/solver/hydraulics/affinity';
import { frictionChurchill } from '../../../src/lib/solver/hydraulics/friction';
import { fittingK, hoseGeometry, hosePressureDrop } from '../../../src/lib/solver/hydraulics/hose';
import { hydraulicModel } from '../../../src/lib/solver/hydraulics/operatingPoint';
import { pumpModel, speedRatio } from '../../../src/lib/solver/hydraulics/pump';
import { ratedLoss } from '../../../src/lib/solver/hydraulics/ratedLoss';
import { coolantProperties } from '../../../src/lib/solver/fluids/coolant';
import { exampleLoop, halfAndHalf } from './exampleLoop';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const same = (formula: number, plain: number) =>
  expect(Math.abs(formula - plain)).toBeLessThanOrEqual(1e-12 * Math.abs(plain));

const x = fc.record({
  bore: between(0.005, 0.05),
  length: between(0.01, 20),
  roughness: between(0, 1e-4),
  bends: fc.integer({ min: 0, max: 12 }),
  bendK: between(0, 2),
  otherK: between(0, 10),
  neck: between(0.3, 1),
  flow: between(1e-6, 3e-3),
  rho: between(950, 1120),
  mu: between(2e-4, 2e-2),
});

describe('each formula is the plain function, over its range', () => {
  it('a run of hose, line by line', () => {
    fc.assert(
      fc.property(x, ({ neck, flow, rho, mu, ...run }) => {
        const hose = { ...run, fittingBore: neck * run.bore };
        const plain = hosePressureDrop(hose, flow, { rho, mu });
        const D = hose.bore;
        const A = formulas.flowArea.value({ D });
        const V = formulas.velocity.value({ Q: flow, A });
        const Re = formulas.reynolds.value({ rho, V, D, mu });
        const f = formulas.churchillFriction.value({
          Re,
          A: formulas.churchillTurbulent.value({ Re, eps: hose.roughness, D }),
          B: formulas.churchillTransition.value({ Re }),
        });
        const beta = formulas.fittingRatio.value({ D_f: hose.fittingBore, D });
        const K_f = formulas.fittingLoss.value({ beta });
        const { K } = hoseGeometry(hose);
        same(V, plain.velocity);
        same(Re, plain.reynolds);
        same(f, frictionChurchill({ Re, relativeRoughness: hose.roughness / D }));
        same(K_f, fittingK(hose));
        const dp = formulas.hoseLoss.value({ f, L: hose.length, D, K, rho, V });
        same(dp, plain.pressureDrop);
        const h = formulas.runHead.value({
          f,
          L: hose.length,
          D,
          n: hose.bends,
          K_b: hose.bendK,
          K_o: hose.otherK,
          K_f,
          V,
        });
        same(h, headOf({ dp, rho }));
        same(formulas.headFromPressure.value({ dp, rho }), headOf({ dp, rho }));
      }),
    );
  });

  it('core losses, both forms', () => {
    const rated = { rho: 1040, mu: 1.4e-3 };
    const one = ratedLoss({ points: [{ flow: 4e-4, loss: 9e3 }], exponent: 1.7 }, rated, 'core');
    const two = ratedLoss(
      {
        points: [
          { flow: 2e-4, loss: 3e3 },
          { flow: 4e-4, loss: 9e3 },
        ],
        exponent: 2,
      },
      rated,
      'core',
    );
    fc.assert(
      fc.property(x, ({ flow: Q, rho, mu }) => {
        const fluid = { Q, rho, mu, rho_r: rated.rho, mu_r: rated.mu };
        if (one.law.form !== 'power' || two.law.form !== 'linear-quadratic')
          throw new Error('form');
        const { lossRated: dp_r, flowRated: Q_r, n } = one.law;
        same(formulas.coreLossPower.value({ ...fluid, dp_r, Q_r, n }), one.at(Q, { rho, mu }));
        const { linearRated: dp_1, quadraticRated: dp_2, flowRated } = two.law;
        same(
          formulas.coreLossTwoPart.value({ ...fluid, dp_1, dp_2, Q_r: flowRated }),
          two.at(Q, { rho, mu }),
        );
      }),
    );
  });

  it('affinity, power and speed', () => {
    fc.assert(
      fc.property(between(0.1, 1.5), between(1e-5, 3e-3), between(0.1, 20), (s, Q, H) => {
        const plain = pumpAffinity({ Q, H, P: 80 }, s);
        same(formulas.affinityFlow.value({ Q_r: Q, s }), plain.Q);
        same(formulas.affinityHead.value({ H_r: H, s }), plain.H);
        same(formulas.affinityPower.value({ n: 1, P_r: 80, s }), plain.P);
        same(
          formulas.wireToWater.value({ rho: 1050, Q, H, P: 80 }),
          hydraulicPower({ rho: 1050, Q, H }) / 80,
        );
        const motor = { ...exampleLoop.pump, volts: s * 13.5 };
        same(formulas.speedFromVolts.value({ U: motor.volts, U_r: 13.5 }), speedRatio(motor));
        const pump = pumpModel({ ...motor, arrangement: 'two-in-series' });
        const P = formulas.affinityPower.value({
          n: 2,
          P_r: motor.electricPower,
          s: pump.speedRatio,
        });
        same(P, pump.electricPower);
        same(formulas.pumpHeat.value({ x: motor.heatShare, P }), pump.heatToLiquid);
      }),
    );
  });

  it.each(['one', 'two-in-series', 'two-in-parallel'] as const)(
    'head of the pump set: %s',
    (arrangement) => {
      fc.assert(
        fc.property(between(5, 16), between(0, 1.2), (volts, share) => {
          const pump = pumpModel({ ...exampleLoop.pump, arrangement, volts });
          const Q = share * pump.runOut;
          const { inSeries: n_s, inParallel: n_p, speedRatio: s } = pump;
          const head = formulas.pumpSetHead(pump).value({ n_s, n_p, s, Q });
          expect(Math.abs(head - pump.head(Q))).toBeLessThanOrEqual(1e-12 * pump.shutOff);
        }),
      );
    },
  );

  it('both sides of the balance at the operating point', () => {
    const liquid = coolantProperties(halfAndHalf, 320);
    const model = hydraulicModel(exampleLoop);
    const op = model.operatingPoint(liquid, 320);
    const of = (part: string) => op.shares.find((s) => s.part === part)!;
    const right = formulas.systemHeadSum.value({
      h_suction: of('suction').head,
      h_delivery: of('delivery').head,
      h_transfer: of('transfer').head,
      h_back: of('back').head,
      dp_charge: of('chargeCooler').pressureDrop,
      dp_front: of('frontExchanger').pressureDrop,
      rho: liquid.rho,
    });
    const { inSeries: n_s, inParallel: n_p, speedRatio: s } = model.pump;
    same(formulas.pumpSetHead(model.pump).value({ n_s, n_p, s, Q: op.flow }), right);
  });
});

describe('as text', () => {
  const all = [
    ...Object.values(formulas).filter((f) => typeof f !== 'function'),
    formulas.pumpSetHead(pumpModel(exampleLoop.pump)),
  ];
  it('ids are unique and under one topic', () => {
    const ids = all.map((f) => f.id);
    expect(new Set(ids).size).toBe(ids.length);
    for (const id of ids) expect(id).toMatch(/^hydraulics\.[a-z0-9-]+$/);
  });
  it.each(all)('$id can be typeset', (formula) => {
    expect(formula.tex()).toContain(formula.gives.tex);
    expect(formula.tex()).not.toContain('undefined');
  });
});

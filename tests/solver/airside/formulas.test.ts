import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import * as formulas from '../../../src/lib/solver/airside/formulas';
import { airModel } from '../../../src/lib/solver/airside/face';
import { STANDARD_AIR_TEMPERATURE } from '../../../src/lib/solver/airside/losses';
import { fanModel, STANDARD_AIR_DENSITY } from '../../../src/lib/solver/airside/fan';
import { airCp, airViscosity } from '../../../src/lib/solver/air/air';
import { ratedLoss } from '../../../src/lib/solver/hydraulics/ratedLoss';
import { exampleLoop } from '../hydraulics/exampleLoop';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
/** Subnormal numbers carry few digits or one: no relative tolerance can hold among them. */
const SUBNORMAL = 2.3e-308;
const same = (formula: number, plain: number, scale = Math.abs(plain)) =>
  expect(Math.abs(formula - plain)).toBeLessThanOrEqual(1e-11 * scale + SUBNORMAL);

describe('each formula is the plain function, over its range', () => {
  it('the whole face, line by line', () => {
    fc.assert(
      fc.property(between(0, 60), between(1, 16), between(0.58, 1), (speed, volts, coverage) => {
        const loop = {
          ...exampleLoop,
          fans: { ...exampleLoop.fans, volts, coverage },
          airPath: { ...exampleLoop.airPath, stackHeat: 5000 },
        };
        const { frontExchanger: front, fans, airPath, site } = loop;
        const air = airModel(loop).at(speed);
        const zone = air.zones[0]!;
        const rho = air.density;
        const A = formulas.faceArea.value({ w: front.width, h: front.height });
        same(
          formulas.ramPressure.value({ k: airPath.ramRecovery, rho, v: speed }),
          air.ramPressure,
        );

        const u = zone.faceVelocity;
        const q = formulas.fanFlow.value({ u, A, x: coverage, n: fans.count });
        same(q, zone.fanFlow!);
        const fan = fanModel(fans, rho);
        const s = fan.speedRatio;
        const dp_fan =
          q < fan.freeDelivery
            ? formulas.fanPressure(fan).value({ s, rho, q })
            : formulas.drivenFanPressure.value({
                K: fans.drivenLoss,
                rho,
                q,
                q_0: fan.freeDelivery,
                A_d: fan.sweptArea,
              });
        const scale = fan.shutOff + zone.coreLoss;
        same(dp_fan, zone.fanPressure, scale);
        const driving = formulas.drivingPressure.value({ p_ram: air.ramPressure, dp_fan });
        const { coreLoss: dp_core, stackLoss: dp_stack } = zone;
        same(driving, formulas.resistingPressure.value({ dp_core, dp_stack }), scale);

        same(formulas.airMassFlow.value({ rho, u, A, x: coverage }), zone.airMassFlow);
        same(formulas.faceVelocity.value({ Q_a: zone.airMassFlow / rho, A, x: coverage }), u);
        const cp = airCp(site.ambientTemperature);
        same(formulas.stackRise.value({ Q_s: 5000, m_a: air.totalMassFlow, cp }), air.stackRise);
        const fading = { r_0: airPath.recirculation, v: speed, v_f: airPath.recirculationFade };
        same(formulas.recirculation.value(fading), air.recirculation, 1);
      }),
    );
  });

  it('a face partly covered, line by line', () => {
    fc.assert(
      fc.property(
        between(0.5, 60),
        between(0.05, 0.95),
        fc.constantFrom('in-front' as const, 'behind' as const),
        (speed, phi, stackPlace) => {
          const loop = {
            ...exampleLoop,
            fans: { ...exampleLoop.fans, coverage: 0.7 },
            airPath: {
              ...exampleLoop.airPath,
              stackLoss: { points: [{ flow: 4, loss: 45 }], exponent: 1.8 },
              stackHeat: 5000,
              stackShare: phi,
              stackPlace,
            },
          };
          const { frontExchanger: front, site } = loop;
          const air = airModel(loop).at(speed);
          const rho = air.density;
          const A = formulas.faceArea.value({ w: front.width, h: front.height });
          for (const zone of air.zones) {
            const [covered, clear] = zone.parts!;
            const u_c = covered.faceVelocity;
            const u_u = clear.faceVelocity;
            same(formulas.overlapVelocity.value({ phi, u_c, u_u }), zone.faceVelocity);
            const lost = formulas.clearPathLoss.value({ dp_core: clear.coreLoss });
            expect(Math.abs(lost / (covered.coreLoss + covered.stackLoss) - 1)).toBeLessThan(1e-9);
          }
          const [u_cs, u_co] = air.zones.map((zone) => zone.parts![0].faceVelocity);
          const u_c = formulas.coveredFaceVelocity.value({ u_cs: u_cs!, u_co: u_co!, x: 0.7 });
          const m_c = formulas.coveredMassFlow.value({ rho, u_c, A, phi });
          const cp = airCp(site.ambientTemperature);
          const { recirculation: r } = air;
          const dT_c =
            stackPlace === 'behind'
              ? formulas.riseComingRound.value({ r, Q_s: 5000, m_c, cp })
              : formulas.coveredRise.value({ Q_s: 5000, m_c, cp });
          same(dT_c, air.zones[0]!.parts![0].rise);
          same(formulas.riseMixed.value({ dT_c, m_c, m_a: air.totalMassFlow }), air.stackRise);
        },
      ),
    );
  });

  it('air-side losses, both forms', () => {
    const rated = { rho: STANDARD_AIR_DENSITY, mu: airViscosity(STANDARD_AIR_TEMPERATURE) };
    const one = ratedLoss({ points: [{ flow: 4, loss: 90 }], exponent: 1.6 }, rated, 'core');
    const two = ratedLoss(exampleLoop.frontExchanger.airLoss, rated, 'core');
    fc.assert(
      fc.property(between(0.01, 20), between(0.8, 1.4), between(1.5e-5, 2e-5), (u, rho, mu) => {
        if (one.law.form !== 'power' || two.law.form !== 'linear-quadratic')
          throw new Error('form');
        const { lossRated: dp_r, flowRated, n } = one.law;
        const air = { u, rho, mu, mu_r: rated.mu };
        same(
          formulas.airLossPower.value({ ...air, dp_r, u_r: flowRated, n }),
          one.at(u, { rho, mu }),
        );
        const { linearRated: dp_1, quadraticRated: dp_2, flowRated: u_r } = two.law;
        same(formulas.airLossTwoPart.value({ ...air, dp_1, dp_2, u_r }), two.at(u, { rho, mu }));
      }),
    );
  });
});

describe('as text', () => {
  const all = [
    ...Object.values(formulas).filter((f) => typeof f !== 'function'),
    formulas.fanPressure(fanModel(exampleLoop.fans, 1.2)),
  ];
  it.each(all)('$id can be typeset', (formula) => {
    expect(formula.id).toMatch(/^airside\.[a-z0-9-]+$/);
    expect(formula.tex()).toContain(formula.gives.tex);
    expect(formula.tex()).not.toContain('undefined');
  });
});

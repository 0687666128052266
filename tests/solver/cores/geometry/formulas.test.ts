/** What the sheet writes is what the core is made of: each formula against the plain functions. */
import { describe, expect, it } from 'vitest';
import { airConductivity, airCp, airDensity, airViscosity } from '$lib/solver/air/air';
import { airSide, louveredFinOf, offsetStripFinOf } from '$lib/solver/cores/geometry/airSide';
import * as formulas from '$lib/solver/cores/geometry/formulas';
import { coreFromGeometry } from '$lib/solver/cores/geometry/fromGeometry';
import { fanningLouvered } from '$lib/solver/cores/geometry/louveredFin';
import {
  colburnOffsetStrip,
  fanningOffsetStrip,
  offsetStripRatios,
} from '$lib/solver/cores/geometry/offsetStripFin';
import { coreSurfaces } from '$lib/solver/cores/geometry/surfaces';
import type { CoreGeometry } from '$lib/solver/cores/geometry/types';
import { coolantProperties } from '$lib/solver/fluids/coolant';

const g: CoreGeometry = {
  tubeRun: 0.55,
  stack: 0.3,
  depth: 0.05,
  tubeHeight: 2.2e-3,
  tubeWall: 0.35e-3,
  webs: 0,
  finHeight: 8.5e-3,
  finPitch: 1.8e-3,
  finThickness: 0.12e-3,
  fin: { kind: 'louvered', louverAngleDegrees: 25, louverPitch: 1.3e-3, louverLength: 7.2e-3 },
  passes: 2,
  portBore: 0.02,
  conductivity: 180,
};
const point = {
  airMassFlow: 0.7,
  airInlet: 305,
  airPressure: 99e3,
  liquidFlow: 6e-4,
  liquidInlet: 335,
  coolant: { kind: 'ethylene-glycol', massFraction: 0.45 } as const,
};
const made = coreFromGeometry(g, 'crossflow-both-unmixed', point);
const { surfaces: s, air, liquid } = made;
const close = (a: number, b: number) => expect(a / b).toBeCloseTo(1, 10);
const n_f = 1 / g.finPitch;
const N = s.tubes;

describe('formulas of a core from its measures', () => {
  it('areas', () => {
    expect(
      Math.floor(formulas.tubesThatFit.value({ H: g.stack, F_l: g.finHeight, D_m: g.tubeHeight })),
    ).toBe(N);
    const { tubeRun: L, finHeight: F_l, depth: T_d, finThickness: delta } = g;
    close(formulas.finAreaFormula.value({ n_f, L, N, F_l, T_d }), s.finArea);
    close(formulas.bareAreaFormula.value({ N, L, T_d, n_f, delta }), s.bareArea);
    close(formulas.freeAreaFormula.value({ N, F_l, L, n_f, delta }), s.freeFlowArea);
    close(
      formulas.airDiameterFormula.value({
        A_c: s.freeFlowArea,
        T_d,
        A_f: s.finArea,
        A_b: s.bareArea,
      }),
      s.airDiameter,
    );
  });

  it('air side', () => {
    const T = point.airInlet;
    const fin = louveredFinOf(g, s);
    const mu = airViscosity(T);
    const cp = airCp(T);
    const Pr = (mu * cp) / airConductivity(T);
    const G = formulas.massVelocityFormula.value({ m: point.airMassFlow, A_c: s.freeFlowArea });
    close(G, air.massVelocity);
    close(formulas.airReynolds.value({ G, L_r: fin.louverPitch, mu }), air.Re);
    close(
      formulas.louverColburn.value({
        Re: air.Re,
        theta: fin.louverAngleDegrees,
        F_p: fin.finPitch,
        L_p: fin.louverPitch,
        F_l: fin.finHeight,
        T_d: fin.flowDepth,
        L_l: fin.louverLength,
        T_p: fin.tubePitch,
        delta: fin.finThickness,
      }),
      air.j,
    );
    close(formulas.coefficientFromColburn.value({ j: air.j, G, c_p: cp, Pr }), air.h);
    const x = formulas.finParameter.value({
      h: air.h,
      k: g.conductivity,
      delta: g.finThickness,
      F_l: g.finHeight,
    });
    close(formulas.finEfficiencyFormula.value({ x }), air.finEfficiency);
    const areas = { A_f: s.finArea, A_b: s.bareArea };
    close(
      formulas.surfaceEfficiencyFormula.value({ ...areas, eta_f: air.finEfficiency }),
      air.surfaceEfficiency,
    );
    close(
      formulas.airConductanceFormula.value({ ...areas, eta_o: air.surfaceEfficiency, h: air.h }),
      air.hA,
    );
    close(
      formulas.airPressureFormula.value({
        G,
        rho: airDensity({ T, p: point.airPressure }),
        f: air.f,
        A: s.airArea,
        A_c: s.freeFlowArea,
      }),
      air.pressureDrop,
    );
  });

  it('offset-strip and plain fins', () => {
    const strip: CoreGeometry = { ...g, fin: { kind: 'offset-strip', stripLength: 4e-3 } };
    const fin = offsetStripFinOf(strip);
    const r = offsetStripRatios(fin);
    close(
      formulas.stripColburn.value({
        Re: 500,
        a: r.spacingOverHeight,
        d: r.thicknessOverStrip,
        g: r.thicknessOverSpacing,
      }),
      colburnOffsetStrip(500, fin),
    );
    const plain: CoreGeometry = { ...g, fin: { kind: 'plain' } };
    const side = airSide(plain, coreSurfaces(plain), {
      massFlow: 0.5,
      temperature: 300,
      pressure: 1e5,
    });
    const Pr = (airViscosity(300) * airCp(300)) / airConductivity(300);
    close(
      formulas.ductColburn.value({ Nu: side.j * side.Re * Math.cbrt(Pr), Re: side.Re, Pr }),
      side.j,
    );
  });

  it.each([20, 149, 151, 2000])('friction of louvered fins at Re %i', (Re) => {
    const fin = louveredFinOf(g, s);
    const lines = formulas.louverFriction(Re, fin);
    expect(lines).toHaveLength(4);
    const { formula, x } = lines[3]!;
    close(formula.value(x), fanningLouvered(Re, fin));
  });

  it('friction of offset strips', () => {
    const fin = offsetStripFinOf({ ...g, fin: { kind: 'offset-strip', stripLength: 4e-3 } });
    const r = offsetStripRatios(fin);
    close(
      formulas.stripFriction.value({
        Re: 900,
        a: r.spacingOverHeight,
        d: r.thicknessOverStrip,
        g: r.thicknessOverSpacing,
      }),
      fanningOffsetStrip(900, fin),
    );
  });

  it('liquid side, and the core', () => {
    const { rho, mu, k } = coolantProperties(point.coolant, point.liquidInlet);
    const V = formulas.tubeVelocity.value({ Q: point.liquidFlow, A_p: s.passArea });
    close(V, liquid.velocity);
    close(formulas.tubeReynolds.value({ rho, V, D: s.tubeDiameter, mu }), liquid.Re);
    close(formulas.tubeCoefficient.value({ Nu: liquid.Nu, k, D: s.tubeDiameter }), liquid.h);
    close(formulas.tubeConductance.value({ h_l: liquid.h, A_l: s.liquidArea }), liquid.hA);
    close(
      formulas.tubePressure.value({
        rho,
        n: g.passes,
        f: liquid.f,
        L: g.tubeRun,
        D: s.tubeDiameter,
        V,
        V_p: liquid.portVelocity,
      }),
      liquid.pressureDrop,
    );
    close(
      formulas.coreConductance.value({ hA_a: air.hA, R_w: made.wallResistance, hA_l: liquid.hA }),
      made.UA,
    );
  });
});

import { describe, expect, it } from 'vitest';
import { finEfficiency, surfaceEfficiency } from '$lib/solver/cores/geometry/finEfficiency';
import {
  colburnLouvered,
  fanningLouvered,
  type LouveredFin,
} from '$lib/solver/cores/geometry/louveredFin';
import {
  colburnOffsetStrip,
  fanningOffsetStrip,
  offsetStripDiameter,
} from '$lib/solver/cores/geometry/offsetStripFin';
import { outsideData } from '$lib/solver/cores/geometry/ranges';
import { laminarFRe, laminarNusselt } from '$lib/solver/cores/geometry/rectangularDuct';
import { ductFlow } from '$lib/solver/cores/geometry/duct';
import { OutOfRangeError } from '$lib/solver/errors';

const fin: LouveredFin = {
  louverAngleDegrees: 27,
  louverPitch: 1.2e-3,
  louverLength: 6.8e-3,
  finPitch: 1.5e-3,
  finHeight: 8e-3,
  flowDepth: 40e-3,
  finThickness: 0.1e-3,
  tubePitch: 10e-3,
  tubeHeight: 2e-3,
  hydraulicDiameter: 2.4e-3,
};

// From memory of Shah & London 1978, tables of rectangular ducts: side ratio, f Re (Fanning), Nu_T.
describe('laminar flow in rectangular ducts, table of Shah & London', () => {
  it.each([
    [0, 24, 7.541],
    [0.125, 20.585, 5.597],
    [0.25, 18.233, 4.439],
    [0.5, 15.548, 3.391],
    [1, 14.227, 2.976],
  ])('side ratio %f', (ratio, fRe, Nu) => {
    // As printed: f Re to its last digit; the polynomial of Nu_T is stated to 0.1 %.
    expect(Math.abs(laminarFRe(ratio) - fRe)).toBeLessThanOrEqual(0.5e-3);
    expect(Math.abs(laminarNusselt(ratio) / Nu - 1)).toBeLessThan(1e-3 + 5e-4 / Nu);
  });
  it('refuses a ratio above one', () => expect(() => laminarFRe(1.01)).toThrow(OutOfRangeError));
});

describe('flow along a duct', () => {
  const square = { diameter: 0.01, length: 100, sideRatio: 1, roughness: 1e-9 };
  it('tends to the developed laminar values in a long duct', () => {
    const { Nu, f } = ductFlow(100, 0.7, square);
    expect(Nu).toBeCloseTo(2.976, 2);
    expect((f * 100) / 4).toBeCloseTo(14.23, 1);
  });
  it('has no jump at either end of the blend, and says that it blends', () => {
    for (const Re of [2300, 4000]) {
      const below = ductFlow(Re * (1 - 1e-9), 5, square);
      const above = ductFlow(Re * (1 + 1e-9), 5, square);
      expect(above.Nu / below.Nu).toBeCloseTo(1, 6);
      expect(above.f / below.f).toBeCloseTo(1, 6);
    }
    expect(ductFlow(3000, 5, square).notes).toHaveLength(1);
    expect(ductFlow(2000, 5, square).notes).toHaveLength(0);
  });
});

describe('louvered fin', () => {
  it('heat transfer goes with Re to -0.49, the published exponent', () =>
    expect(colburnLouvered(400, fin) / colburnLouvered(100, fin)).toBeCloseTo(4 ** -0.49, 12));
  it('refuses a Reynolds number the logarithms cannot take', () => {
    expect(() => fanningLouvered(1, fin)).toThrow(OutOfRangeError);
    expect(() => colburnLouvered(NaN, fin)).toThrow(OutOfRangeError);
  });
  it('tells a measure outside the data, and one far outside', () => {
    const ranges = { louverPitch: [0.5e-3, 3e-3] } as const;
    expect(outsideData('x', ranges, { louverPitch: 1e-3 })).toEqual([]);
    expect(outsideData('x', ranges, { louverPitch: 4e-3 })[0]!.code).toBe('outside-data');
    const [far] = outsideData('x', ranges, { louverPitch: 7e-3 });
    expect(far!.code).toBe('far-outside-data');
    expect(far!.message).toMatch(/louver pitch is 7 mm; .* 0\.5 mm to 3 mm, so take/);
  });
});

describe('offset-strip fin', () => {
  const strip = { spacing: 1.5e-3, height: 6e-3, thickness: 0.1e-3, stripLength: 3e-3 };
  it('hydraulic diameter tends to 4 A / P of the passage when the sheet is thin', () => {
    const { spacing: s, height: h } = strip;
    expect(offsetStripDiameter({ ...strip, thickness: 1e-12 })).toBeCloseTo(
      (2 * s * h) / (s + h),
      9,
    );
  });
  it('is laminar by its first exponents at low Re and bends at high Re', () => {
    const slope = (law: typeof colburnOffsetStrip, Re: number) =>
      Math.log(law(Re * 1.01, strip) / law(Re / 1.01, strip)) / (2 * Math.log(1.01));
    // Published limits: -0.5403 and -0.7422 laminar; + 0.134 and + 0.4429 turbulent.
    expect(slope(colburnOffsetStrip, 25)).toBeCloseTo(-0.5403, 2);
    expect(slope(fanningOffsetStrip, 25)).toBeCloseTo(-0.7422, 2);
    expect(slope(fanningOffsetStrip, 19_000)).toBeCloseTo(-0.7422 + 0.4429, 1);
    expect(slope(colburnOffsetStrip, 19_000)).toBeGreaterThan(-0.5403 + 0.08);
  });
});

describe('fins', () => {
  it('short thick fins work whole, long thin ones hardly', () => {
    expect(finEfficiency({ h: 50, k: 200, thickness: 1e-3, halfHeight: 1e-4 })).toBeCloseTo(1, 4);
    // tanh(x)/x tends to 1/x.
    const ml = Math.sqrt((2 * 1000) / (200 * 5e-5)) * 0.1;
    expect(finEfficiency({ h: 1000, k: 200, thickness: 5e-5, halfHeight: 0.1 })).toBeCloseTo(
      1 / ml,
      6,
    );
  });
  it('a surface without fins works whole', () => expect(surfaceEfficiency(0.5, 0)).toBe(1));
});

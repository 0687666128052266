import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { fittingK, hosePressureDrop, hoseVolume } from '../../../src/lib/solver/hydraulics/hose';
import { InvalidInputError, OutOfRangeError } from '../../../src/lib/solver/errors';
import type { Hose } from '../../../src/lib/solver/loop/types';

const hose = (change: Partial<Hose>): Hose => ({
  bore: 0.0191,
  length: 2.5,
  roughness: 3e-6,
  bends: 0,
  bendK: 0,
  otherK: 0,
  fittingBore: 0,
  ...change,
});

// Source: fluids 1.3.1 (Churchill_1977) and Darcy-Weisbach; printed to ten digits.
describe('a whole line against another implementation', () => {
  it.each([
    [
      { bore: 0.0191, length: 2.5, roughness: 3e-6, otherK: 4 },
      1053,
      0.0021,
      5e-4,
      1.745072154,
      16713.05461,
      0.02739774861,
      12163.07265,
    ],
    [
      { bore: 0.0254, length: 5, roughness: 4.57e-5, otherK: 1.5 },
      1074,
      0.0079,
      4.2e-4,
      0.8288806014,
      2862.219146,
      0.0428898071,
      3668.34552,
    ],
    [
      { bore: 0.016, length: 1.2, roughness: 1.5e-6, bends: 4, bendK: 1.5 },
      1040,
      0.00137,
      3e-4,
      1.492077591,
      18122.75264,
      0.02671036344,
      9265.183438,
    ],
    // Laminar in the source; Churchill's turbulent terms vanish there.
    [
      { bore: 0.019, length: 3, roughness: 0, otherK: 2 },
      1070,
      0.02,
      5e-5,
      0.1763489674,
      179.2587254,
      0.3570258567,
      971.1983714,
    ],
  ])('%o', (change, rho, mu, flow, velocity, reynolds, friction, dp) => {
    const drop = hosePressureDrop(hose(change), flow, { rho, mu });
    expect(drop.velocity / velocity).toBeCloseTo(1, 9);
    expect(drop.reynolds / reynolds).toBeCloseTo(1, 9);
    expect(drop.friction! / friction).toBeCloseTo(1, 9);
    expect(drop.pressureDrop / dp).toBeCloseTo(1, 8);
  });
});

describe('end fittings that neck the run', () => {
  it('half the bore: (0.375 + 0.5625) × 16 on the hose bore', () =>
    expect(fittingK({ bore: 0.02, fittingBore: 0.01 })).toBeCloseTo(15, 12));
  it('two of them count', () => {
    const liquid = { rho: 1000, mu: 1e-3 };
    const plain = hosePressureDrop(hose({ bore: 0.02 }), 5e-4, liquid);
    const necked = hosePressureDrop(hose({ bore: 0.02, fittingBore: 0.01 }), 5e-4, liquid);
    const velocityPressure = 500 * plain.velocity ** 2;
    expect((necked.pressureDrop - plain.pressureDrop) / velocityPressure).toBeCloseTo(30, 9);
  });
  it('no loss for a fitting of the hose bore, and no jump beside it', () => {
    expect(fittingK({ bore: 0.02, fittingBore: 0.02 })).toBe(0);
    expect(fittingK({ bore: 0.02, fittingBore: 0.0200001 })).toBeLessThan(1e-5);
    expect(fittingK({ bore: 0.02, fittingBore: 0.0199999 })).toBeLessThan(1e-5);
  });
});

describe('behaviour', () => {
  const liquid = { rho: 1050, mu: 1.5e-3 };
  it('no flow, no loss, no friction factor', () =>
    expect(hosePressureDrop(hose({}), 0, liquid)).toEqual({
      pressureDrop: 0,
      velocity: 0,
      reynolds: 0,
      friction: null,
    }));
  it('the loss rises with the flow, in any run', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.005, max: 0.05, noNaN: true }),
        fc.double({ min: 0.01, max: 20, noNaN: true }),
        fc.double({ min: 0, max: 20, noNaN: true }),
        fc.double({ min: 1e-9, max: 5e-3, noNaN: true }),
        fc.double({ min: 1.001, max: 4, noNaN: true }),
        (bore, length, otherK, flow, more) => {
          const run = hose({ bore, length, otherK });
          const low = hosePressureDrop(run, flow, liquid).pressureDrop;
          const high = hosePressureDrop(run, flow * more, liquid).pressureDrop;
          expect(high).toBeGreaterThan(low);
        },
      ),
    );
  });
  it('holds the volume of a cylinder', () =>
    expect(hoseVolume({ bore: 0.02, length: 1 })).toBeCloseTo(3.14159265e-4, 11));
  it('names the field that cannot be', () => {
    expect(() => hosePressureDrop(hose({ bore: 0 }), 1e-4, liquid, 'hoses.suction')).toThrow(
      InvalidInputError,
    );
    try {
      hosePressureDrop(hose({ length: -1 }), 1e-4, liquid, 'hoses.suction');
      expect.unreachable();
    } catch (error) {
      expect((error as InvalidInputError).facts.quantity).toBe('hoses.suction.length');
    }
    expect(() => hosePressureDrop(hose({}), -1e-4, liquid)).toThrow(OutOfRangeError);
    expect(() => hosePressureDrop(hose({ roughness: 0.002 }), 1e-4, liquid)).toThrow(
      OutOfRangeError,
    );
  });
});

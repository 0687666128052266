import { describe, expect, it } from 'vitest';
import {
  contractionK,
  craneBendK,
  craneFittingK,
  craneTurbulentFriction,
  cvToK,
  entranceK,
  EXIT_K,
  expansionK,
  kvToK,
  referK,
} from '../../../src/lib/solver/hydraulics/fittings';
import { OutOfRangeError } from '../../../src/lib/solver/errors';

const degrees = Math.PI / 180;

// Source: fluids 1.3.1, contraction_conical_Crane, diffuser_conical_Crane, re-derived in closed form.
describe('changes of bore, K on the smaller bore', () => {
  it.each([
    [0.02, 0.04, 180, 0.375],
    [0.0254, 0.0508, 60, 0.2651650429],
    [0.0191, 0.0318, 30, 0.1323590011],
  ])('contraction %d of %d at %d degrees', (small, large, angle, K) => {
    expect(contractionK({ small, large, angle: angle * degrees })).toBeCloseTo(K, 9);
  });
  it.each([
    [0.02, 0.04, 180, 0.5625],
    [0.0254, 0.0318, 30, 0.0881887332],
    [0.0191, 0.3, 180, 0.9919095415],
  ])('expansion %d of %d at %d degrees', (small, large, angle, K) => {
    expect(expansionK({ small, large, angle: angle * degrees })).toBeCloseTo(K, 9);
  });
  it('loses nothing where the bore does not change', () => {
    expect(contractionK({ small: 0.02, large: 0.02 })).toBe(0);
    expect(expansionK({ small: 0.02, large: 0.02 })).toBe(0);
  });
  it('refuses bores the wrong way round', () => {
    expect(() => contractionK({ small: 0.03, large: 0.02 })).toThrow(OutOfRangeError);
    expect(() => expansionK({ small: NaN, large: 0.02 })).toThrow(OutOfRangeError);
  });
});

describe('entrance, exit, referring', () => {
  // Source: Crane TP-410 table (0.5, 0.78, 1.0 from memory; the rounded rows also in fluids 1.3.1).
  it.each([
    [{ kind: 'flush-sharp' as const }, 0.5],
    [{ kind: 'inward-projecting' as const }, 0.78],
    [{ kind: 'rounded' as const, radiusOverBore: 0.02 }, 0.28],
    [{ kind: 'rounded' as const, radiusOverBore: 0.1 }, 0.09],
    [{ kind: 'rounded' as const, radiusOverBore: 0 }, 0.5],
    [{ kind: 'rounded' as const, radiusOverBore: 0.5 }, 0.04],
  ])('%o', (entrance, K) => expect(entranceK(entrance)).toBeCloseTo(K, 12));
  it('exit loses the velocity head', () => expect(EXIT_K).toBe(1));
  it('the same loss on either bore: half the bore, four times the speed, sixteen times its square', () =>
    expect(referK({ K: 0.5, from: 0.01, to: 0.02 })).toBeCloseTo(8, 12));
});

describe('flow coefficients', () => {
  // Source: fluids 1.3.1 Cv_to_K, Kv_to_K; 0.5 % for the reference temperature of the water.
  it.each([
    [20, 0.0254, 2.225944693],
    [8.5, 0.0191, 3.940352834],
  ])('Cv %d on bore %d', (Cv, bore, K) => {
    expect(Math.abs(cvToK({ Cv, bore }) / K - 1)).toBeLessThan(0.005);
  });
  it('Kv 17.3', () => {
    expect(Math.abs(kvToK({ Kv: 17.3, bore: 0.0254 }) / 2.223603865 - 1)).toBeLessThan(0.005);
  });
  // Source: IEC 60534 practice, Cv = 1.156 Kv (printed to four digits).
  it('Cv of 1.156 is Kv of 1', () => {
    const ratio = cvToK({ Cv: 1.156, bore: 0.02 }) / kvToK({ Kv: 1, bore: 0.02 });
    expect(Math.abs(ratio - 1)).toBeLessThan(2e-3);
  });
  it('refuses zero', () => expect(() => kvToK({ Kv: 0, bore: 0.02 })).toThrow(OutOfRangeError));
});

describe('Crane multiples', () => {
  // Source: Crane TP-410 prints f_T 0.022 for 1 in and 0.019 for 2 in; the formula gives about 1 % more.
  it.each([
    [0.0266, 0.022],
    [0.0525, 0.019],
  ])('f_T at bore %d', (bore, fT) =>
    expect(Math.abs(craneTurbulentFriction(bore) / fT - 1)).toBeLessThan(0.025),
  );
  // Source: fluids 1.3.1 bend_rounded_Crane, a smooth fit of the table; 3 % for the rounding of its rows.
  it.each([
    [1, 0.02226074252, 0.4452148504],
    [3, 0.02226074252, 0.2698274849],
    [1.5, 0.02000346989, 0.2812571696],
    [2, 0.01884741319, 0.2239989008],
  ])('bend of %d diameters', (radiusOverBore, frictionTurbulent, K) =>
    expect(Math.abs(craneBendK({ radiusOverBore, frictionTurbulent }) / K - 1)).toBeLessThan(0.03),
  );
  it('a standard elbow is 30 f_T', () =>
    expect(craneFittingK('elbow-90-standard', 0.022)).toBeCloseTo(0.66, 12));
  it('refuses a bend tighter than its bore', () =>
    expect(() => craneBendK({ radiusOverBore: 0.5, frictionTurbulent: 0.02 })).toThrow(
      OutOfRangeError,
    ));
});

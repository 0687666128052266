import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import {
  COLEBROOK_RANGE,
  churchill,
  frictionChurchill,
  frictionColebrook,
  frictionFullyRough,
  frictionLaminar,
} from '../../../src/lib/solver/hydraulics/friction';
import { OutOfRangeError } from '../../../src/lib/solver/errors';

const near = (got: number, want: number, rel: number) =>
  expect(Math.abs(got / want - 1)).toBeLessThanOrEqual(rel);

// Source: fluids 1.3.1 (an open library), Colebrook and Churchill_1977; printed to ten digits.
describe('Darcy friction factor against another implementation', () => {
  it.each([
    [4000, 0, 0.03990701406],
    [1e4, 0, 0.03088295035],
    [1e5, 1e-4, 0.01851386608],
    [1e5, 0.01, 0.03850354353],
    [2e5, 0.04, 0.06480130528],
    [1e6, 5e-5, 0.01264887723],
  ])('Colebrook at Re %d, roughness %d', (Re, relativeRoughness, f) => {
    near(frictionColebrook({ Re, relativeRoughness }), f, 2e-10);
  });
  it.each([
    [500, 0, 0.128],
    [2000, 1e-4, 0.03204331876],
    [3000, 1e-3, 0.04369154057],
    [1e4, 1e-3, 0.03269019858],
    [1e6, 0.01, 0.03799149951],
  ])('Churchill at Re %d, roughness %d', (Re, relativeRoughness, f) => {
    near(frictionChurchill({ Re, relativeRoughness }), f, 2e-10);
  });
  it('fully rough', () =>
    near(frictionFullyRough({ relativeRoughness: 0.01 }), 0.03790371189, 2e-10));
});

describe('the laws among themselves', () => {
  it('laminar is 64/Re', () => expect(frictionLaminar({ Re: 640 })).toBe(0.1));

  it('Colebrook leaves nothing over', () => {
    fc.assert(
      fc.property(
        fc.double({ min: Math.log(4000), max: Math.log(1e8), noNaN: true }),
        fc.double({ min: 0, max: COLEBROOK_RANGE.relativeRoughness[1], noNaN: true }),
        (logRe, relativeRoughness) => {
          const Re = Math.min(1e8, Math.max(4000, Math.exp(logRe)));
          const x = 1 / Math.sqrt(frictionColebrook({ Re, relativeRoughness }));
          const rest = x + 2 * Math.log10((2.51 * x) / Re + relativeRoughness / 3.7);
          expect(Math.abs(rest / x)).toBeLessThan(4e-15);
        },
      ),
    );
  });

  it('Churchill becomes 64/Re as the flow turns laminar', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1e-6, max: 1000, noNaN: true }),
        fc.double({ min: 0, max: 0.05, noNaN: true }),
        (Re, relativeRoughness) => {
          near(frictionChurchill({ Re, relativeRoughness }), 64 / Re, 1e-6);
        },
      ),
    );
  });

  it('has no step where the turbulent terms are left out', () => {
    for (const eD of [0, 0.001, 0.05]) near(churchill(100 - 1e-12, eD), churchill(100, eD), 1e-13);
  });

  // Churchill's own claim is agreement with the Moody chart; trade figure: at worst 1.7 % at Re 4000, smooth.
  it('Churchill stays within 2 % of Colebrook on smooth walls from Re 4000 up', () => {
    for (let k = 0; k <= 40; k++) {
      const Re = 4000 * 10 ** (k / 10);
      if (Re > 1e7) break;
      const x = { Re, relativeRoughness: 1e-5 };
      near(frictionChurchill(x), frictionColebrook(x), 0.02);
    }
  });

  it('friction times speed squared never falls as the flow rises', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1e-3, max: 1e7, noNaN: true }),
        fc.double({ min: 1.0001, max: 3, noNaN: true }),
        fc.double({ min: 0, max: 0.05, noNaN: true }),
        (Re, more, eD) => {
          expect(churchill(Re * more, eD) * more * more).toBeGreaterThan(churchill(Re, eD));
        },
      ),
    );
  });
});

describe('ranges', () => {
  it.each([
    () => frictionLaminar({ Re: 2301 }),
    () => frictionLaminar({ Re: NaN }),
    () => frictionColebrook({ Re: 3999, relativeRoughness: 0 }),
    () => frictionColebrook({ Re: 1e5, relativeRoughness: 0.06 }),
    () => frictionChurchill({ Re: 0, relativeRoughness: 0 }),
    () => frictionChurchill({ Re: 1e4, relativeRoughness: -1e-9 }),
    () => frictionFullyRough({ relativeRoughness: 0 }),
  ])('refuses what lies outside (%#)', (call) => expect(call).toThrow(OutOfRangeError));
});

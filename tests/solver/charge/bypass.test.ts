import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { OutOfRangeError } from '$lib/solver/errors';
import { bypassedCompression } from '$lib/solver/charge/bypass';
import { compressorOutlet } from '$lib/solver/charge/compressor';

describe('open bypass', () => {
  const one = { T_in: 305, pressureRatio: 1.12, efficiency: 0.55 };

  it('is the state that going round again and again settles to', () => {
    // The same mixing done by hand: start with fresh air and let it go round 200 times.
    let T_in = one.T_in;
    let T_out = NaN;
    for (let round = 0; round < 200; round++) {
      T_out = compressorOutlet({ ...one, T_in });
      T_in = 0.6 * one.T_in + 0.4 * T_out;
    }
    const got = bypassedCompression({ ...one, recirculation: 0.4 });
    expect(got.T_in).toBeCloseTo(T_in, 9);
    expect(got.T_out).toBeCloseTo(T_out, 9);
  });

  it('carries all the power of the compressor on to the charge cooler', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 0.8, noNaN: true }), (r) => {
        const { T_in, T_out } = bypassedCompression({ ...one, recirculation: r });
        // Per kg that leaves: 1/(1 - r) kg pass the compressor.
        expect(T_out - one.T_in).toBeCloseTo((T_out - T_in) / (1 - r), 8);
      }),
    );
  });

  it('refuses a share that runs away', () => {
    expect(() => bypassedCompression({ ...one, recirculation: 0.85 })).toThrow(OutOfRangeError);
    expect(() => bypassedCompression({ ...one, recirculation: NaN })).toThrow(OutOfRangeError);
    expect(() => bypassedCompression({ ...one, recirculation: -0.1 })).toThrow(OutOfRangeError);
  });
});

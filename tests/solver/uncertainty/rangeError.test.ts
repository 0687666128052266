import { describe, expect, it } from 'vitest';
import { OutOfRangeError } from '$lib/solver/errors';
import { spread } from '$lib/solver/uncertainty/propagate';
import { rangeError } from '$lib/solver/uncertainty/rangeError';

/** Pseudo-random numbers of their own, after Marsaglia's xorshift (2003), 32 bits: 13, 17, 5. */
function* uniform(): Generator<number, never> {
  let x = 2463534242;
  for (;;) {
    x ^= x << 13;
    x ^= x >>> 17;
    x ^= x << 5;
    yield ((x >>> 0) + 0.5) / 2 ** 32;
  }
}

describe('the error of a range read from draws', () => {
  it('is 0.951/√N: tables give z = 1.95996 and φ(z) = 0.05845', () => {
    // √(2·0.025·0.95) / (2·1.95996·0.05845) = 0.21794 / 0.22912
    for (const N of [32, 256, 2048]) expect(rangeError(N) * Math.sqrt(N)).toBeCloseTo(0.9512, 3);
  });

  it('is how far ranges of random normal draws scatter (Box and Muller)', () => {
    const random = uniform();
    const next = () => random.next().value;
    const normal = () => Math.sqrt(-2 * Math.log(next())) * Math.cos(2 * Math.PI * next());
    const times = 2000;
    const N = 256;
    let squares = 0;
    for (let k = 0; k < times; k++) {
      const s = spread(Float64Array.from({ length: N }, normal))!;
      squares += ((s.high - s.low) / 2 / 1.95996 - 1) ** 2;
    }
    // The scatter of 2000 is known to 1/√4000 = 1.6 %; N is not infinite, so three times that.
    expect(Math.sqrt(squares / times) / rangeError(N)).toBeGreaterThan(0.95);
    expect(Math.sqrt(squares / times) / rangeError(N)).toBeLessThan(1.05);
  });

  it('refuses no draws', () => {
    expect(() => rangeError(0)).toThrow(OutOfRangeError);
  });
});

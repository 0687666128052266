/** Points that fill a cube more evenly than chance: averages over them settle faster. */
import { requireWithin } from '../errors';
import { LATTICE_VECTOR } from './lattice.coefficients';
import { seededRandom } from './random';

export const LATTICE_RANGE = {
  dimensions: [1, LATTICE_VECTOR.length],
  index: [0, 2 ** 20 - 1],
} as const;

/** Bits of a 20-bit number in reverse order, as a fraction: the van der Corput sequence. */
function radicalInverse(index: number): number {
  let reversed = 0;
  for (let bit = 0, rest = index; bit < 20; bit++, rest >>>= 1)
    reversed = reversed * 2 + (rest & 1);
  return reversed / 2 ** 20;
}

/**
 * A randomly shifted lattice sequence on [0, 1)^dimensions. The same seed gives the same points; any
 * first 2^m of them make a whole lattice, and more can be added later.
 *
 * @formula x_j = frac(phi_2(i) z_j + Delta_j)
 * @returns writes point `index` into `into`
 * @throws {@link OutOfRangeError} for more dimensions or points than the rule was made for
 * @source Cools, Kuo & Nuyens 2006; random shift by Cranley & Patterson, SIAM J. Numer. Anal. 13
 *   (1976) 904
 */
export function lattice(
  dimensions: number,
  seed: number,
): (index: number, into: Float64Array) => void {
  requireWithin('lattice', { dimensions: LATTICE_RANGE.dimensions }, { dimensions });
  const random = seededRandom(seed);
  const shift = Float64Array.from({ length: dimensions }, () => random.uniform());
  return (index, into) => {
    requireWithin('lattice', { index: LATTICE_RANGE.index }, { index });
    const phi = radicalInverse(index);
    for (let j = 0; j < dimensions; j++) {
      const x = phi * LATTICE_VECTOR[j]! + shift[j]!;
      into[j] = x - Math.floor(x);
    }
  };
}

/** What is known of a value that is not known exactly. */
import { InvalidInputError } from '../errors';

export interface Normal {
  readonly kind: 'normal';
  readonly mean: number;
  readonly sd: number;
}

export type Distribution =
  | Normal
  /** Anywhere between two bounds, none more likely. */
  | { readonly kind: 'interval'; readonly low: number; readonly high: number }
  | {
      readonly kind: 'triangular';
      readonly low: number;
      readonly mode: number;
      readonly high: number;
    };

/**
 * What an expanded uncertainty says: normal, with the coverage factor taken out of it.
 *
 * @formula u = U / k
 * @symbol U - half width stated, in the unit of the value
 * @symbol k - coverage factor, 1; 2 where 95 of 100 are meant
 * @throws {@link InvalidInputError} for a half width below zero, or a factor that is not above zero
 * @source JCGM 100:2008, 4.3.3 and 6.2.1
 * @example calibrated(20, 0.3, 3).sd // 0.1
 */
export function calibrated(value: number, U: number, k: number): Normal {
  requireOrder(U >= 0, 'U', U);
  if (!(k > 0)) throw new InvalidInputError('k', 'a coverage factor is above zero', k);
  return { kind: 'normal', mean: value, sd: U / k };
}

/**
 * Anywhere within a half width and never beyond: none likelier than another, or the value itself likeliest.
 *
 * @formula u = a / sqrt(3), or a / sqrt(6) where the value is likeliest; (b_up + b_down) / sqrt(12) for
 *   bounds that lie unevenly
 * @symbol a - half width, in the unit of the value
 * @symbol down - half width downwards, where that is another one
 * @throws {@link InvalidInputError} for a half width below zero
 * @source JCGM 100:2008, 4.3.7 (interval), 4.3.8 (uneven bounds) and 4.3.9 (triangular)
 */
export function within(
  kind: 'interval' | 'triangular',
  value: number,
  a: number,
  down: number = a,
): Distribution {
  requireOrder(a >= 0, 'a', a);
  requireOrder(down >= 0, 'down', down);
  const bounds = { low: value - down, high: value + a };
  return kind === 'interval' ? { kind, ...bounds } : { kind, ...bounds, mode: value };
}

/**
 * Inverse of the standard normal distribution.
 * @symbol p - probability, 0 to 1, both ends out
 * @returns z, 1; relative error below 1e-15
 * @throws {@link InvalidInputError} outside 0 to 1, NaN included
 * @source Wichura, Algorithm AS 241 (PPND16), Appl. Statist. 37 (1988) 477-484 (coefficients from memory)
 * @example normalQuantile(0.975) // 1.959963984540054
 */
export function normalQuantile(p: number): number {
  if (!(p > 0 && p < 1)) throw new InvalidInputError('probability', 'lies between 0 and 1', p);
  const q = p - 0.5;
  if (Math.abs(q) <= 0.425) return q * ratio(0.180625 - q * q, CENTRE);
  const r = Math.sqrt(-Math.log(q < 0 ? p : 1 - p));
  const z = r <= 5 ? ratio(r - 1.6, TAIL) : ratio(r - 5, FAR_TAIL);
  return q < 0 ? -z : z;
}

type Rational = readonly [above: readonly number[], below: readonly number[]];

/** Horner's rule for seven degrees; every draw of every input comes by here. */
function poly(c: readonly number[], x: number): number {
  let sum = c[7]!;
  for (let i = 6; i >= 0; i--) sum = sum * x + c[i]!;
  return sum;
}
const ratio = (x: number, [above, below]: Rational) => poly(above, x) / poly(below, x);

// prettier-ignore
const CENTRE: Rational = [
  [3.3871328727963666080, 1.3314166789178437745e2, 1.9715909503065514427e3, 1.3731693765509461125e4,
    4.5921953931549871457e4, 6.7265770927008700853e4, 3.3430575583588128105e4, 2.5090809287301226727e3],
  [1, 4.2313330701600911252e1, 6.8718700749205790830e2, 5.3941960214247511077e3,
    2.1213794301586595867e4, 3.9307895800092710610e4, 2.8729085735721942674e4, 5.2264952788528545610e3],
];
// prettier-ignore
const TAIL: Rational = [
  [1.42343711074968357734, 4.63033784615654529590, 5.76949722146069140550, 3.64784832476320460504,
    1.27045825245236838258, 2.41780725177450611770e-1, 2.27238449892691845833e-2, 7.74545014278341407640e-4],
  [1, 2.05319162663775882187, 1.67638483018380384940, 6.89767334985100004550e-1,
    1.48103976427480074590e-1, 1.51986665636164571966e-2, 5.47593808499534494600e-4, 1.05075007164441684324e-9],
];
// prettier-ignore
const FAR_TAIL: Rational = [
  [6.65790464350110377720, 5.46378491116411436990, 1.78482653991729133580, 2.96560571828504891230e-1,
    2.65321895265761230930e-2, 1.24266094738807843860e-3, 2.71155556874348757815e-5, 2.01033439929228813265e-7],
  [1, 5.99832206555887937690e-1, 1.36929880922735805310e-1, 1.48753612908506148525e-2,
    7.86869131145613259100e-4, 1.84631831751005468180e-5, 1.42151175831644588870e-7, 2.04426310338993978564e-15],
];

/**
 * The value below which a share `p` lies: turns an even number into a draw.
 * @throws {@link InvalidInputError} where the description contradicts itself
 * @source triangular: JCGM 101:2008, 6.4.5; normal: {@link normalQuantile}
 */
export function quantile(d: Distribution, p: number): number {
  switch (d.kind) {
    case 'normal':
      requireOrder(d.sd >= 0, 'sd', d.sd);
      return d.sd === 0 ? d.mean : d.mean + d.sd * normalQuantile(p);
    case 'interval':
      requireOrder(d.low <= d.high, 'low', d.low);
      return d.low + (d.high - d.low) * p;
    case 'triangular': {
      requireOrder(d.low <= d.mode && d.mode <= d.high, 'mode', d.mode);
      const width = d.high - d.low;
      if (width === 0) return d.mode;
      const turn = (d.mode - d.low) / width;
      return p < turn
        ? d.low + Math.sqrt(p * width * (d.mode - d.low))
        : d.high - Math.sqrt((1 - p) * width * (d.high - d.mode));
    }
  }
}

/** Standard deviation. @source JCGM 100:2008, 4.3.7 and 4.3.9; triangular from its moments */
export function standardDeviation(d: Distribution): number {
  switch (d.kind) {
    case 'normal':
      return d.sd;
    case 'interval':
      return (d.high - d.low) / Math.sqrt(12);
    case 'triangular': {
      const { low: a, mode: c, high: b } = d;
      return Math.sqrt((a * a + b * b + c * c - a * b - a * c - b * c) / 18);
    }
  }
}

function requireOrder(right: boolean, quantity: string, value: number): void {
  if (!right) throw new InvalidInputError(quantity, 'bounds are out of order', value);
}

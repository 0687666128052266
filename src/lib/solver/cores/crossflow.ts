import { meanDecay } from './quotients';

/** Below this mean every term is summed from the first; e^-mean is then far from underflow. */
const WINDOW_FROM = 150;
/** Beyond this many standard deviations a Poisson tail is below 1e-16. */
const TAIL_DEVIATIONS = 9;
/** A chance whose share of the sum cannot be seen in a double. */
const NEGLIGIBLE = 1e-17;

/**
 * Effectiveness of one crossflow pass with both streams unmixed, by the exact series.
 *
 * eps = (1 / (Cr NTU)) * sum over n >= 0 of P_n(NTU) P_n(Cr NTU),  P_n(x) = 1 - e^-x sum_{k<=n} x^k / k!
 *
 * P_n(x) is the chance that a Poisson count of mean x exceeds n, so every term lies between 0 and 1
 * and nothing cancels, unlike the Bessel form. The second factor is carried divided by Cr NTU, which
 * makes Cr = 0 an ordinary point. For a large Cr NTU the terms before the window
 * mean ± 9 sqrt(mean) are exactly 1 / (Cr NTU) each and are summed at once.
 *
 * The widely printed closed expression is a fit, up to 3.8 % low; it is not used here.
 *
 * @symbol NTU - UA / C_min, 1; 0 to 1e6, not checked here
 * @symbol Cr - C_min / C_max, 1; 0 to 1, not checked here
 * @returns effectiveness, 1; rounding error only
 * @source Nusselt; Mason 1954; Baclic 1978, doi:10.1115/1.3450864
 */
export function effectivenessCrossflowUnmixed(NTU: number, Cr: number): number {
  const b = Cr * NTU;
  const whole = b < WINDOW_FROM;
  // Chance of exactly n, and of more than n; those of the second stream divided by b.
  let n = whole ? 0 : Math.floor(b - TAIL_DEVIATIONS * Math.sqrt(b));
  let pointA = whole ? Math.exp(-NTU) : poisson(n, NTU);
  let pointB = whole ? Math.exp(-b) : poisson(n, b) / b; // whole: e^-b is the next value, at n = 1
  let tailA = whole ? -Math.expm1(-NTU) : 1 - pointA;
  let tailB = whole ? meanDecay(b) : 1 / b - pointB;
  let sum = whole ? 0 : n / b;

  for (;;) {
    sum += tailA * tailB;
    if (n > b && pointB <= NEGLIGIBLE * sum) return Math.min(1, sum);
    n += 1;
    pointA *= NTU / n;
    if (n > 1) pointB *= b / n;
    tailA -= pointA;
    tailB -= pointB;
  }
}

/** Chance that a Poisson count of this mean is exactly n; n from 35 up. */
function poisson(n: number, mean: number): number {
  // Stirling about the mean: the large parts cancel on paper, not in the arithmetic.
  const u = (mean - n) / n;
  const stirling = 1 / (12 * n) - 1 / (360 * n ** 3) + 1 / (1260 * n ** 5);
  return Math.exp(n * (Math.log1p(u) - u) - stirling) / Math.sqrt(2 * Math.PI * n);
}

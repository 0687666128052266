/** Share of the bracket that golden-section search keeps at each step. */
const GOLDEN = (Math.sqrt(5) - 1) / 2;

/**
 * Largest value of `f` between `a` and `b`, both ends included, where it has one hump: golden-section
 * search down to a width of `xtol`. With several humps, one of them.
 *
 * @source Kiefer, Proc. Amer. Math. Soc. 4 (1953) 502-506
 * @example maximum((x) => 1 - (x - 2) ** 2, 0, 5, 1e-6).x // 2
 */
export function maximum(
  f: (x: number) => number,
  a: number,
  b: number,
  xtol: number,
): { readonly x: number; readonly value: number } {
  let best = { x: a, value: f(a) };
  const look = (x: number) => {
    const value = f(x);
    if (value > best.value) best = { x, value };
    return value;
  };
  look(b);
  let low = a;
  let high = b;
  let left = high - GOLDEN * (high - low);
  let right = low + GOLDEN * (high - low);
  let fLeft = look(left);
  let fRight = look(right);
  while (high - low > xtol && left < right) {
    if (fLeft < fRight) {
      low = left;
      left = right;
      fLeft = fRight;
      right = low + GOLDEN * (high - low);
      fRight = look(right);
    } else {
      high = right;
      right = left;
      fRight = fLeft;
      left = high - GOLDEN * (high - low);
      fLeft = look(left);
    }
  }
  return best;
}

/** Evaluation of Melinder's polynomials. No range is held here: `glycol.ts` and `coolant.ts` do that. */
import type { MelinderTable } from './melinder-2010.coefficients';
import type { LiquidProperties } from './properties';

const KELVIN = 273.15;

export interface Melinder {
  /** Liquid properties at mass fraction `x` (0 to 1) and temperature `T`, K. */
  properties(x: number, T: number): LiquidProperties;
  /** Freezing point at mass fraction `x`, K. */
  freezingPoint(x: number): number;
}

/** Polynomial over the 18 rows of the table, Horner in both variables. */
function surface(c: Float64Array, X: number, Y: number): number {
  return (
    c[0]! +
    Y * (c[1]! + Y * (c[2]! + Y * c[3]!)) +
    X *
      (c[4]! +
        Y * (c[5]! + Y * (c[6]! + Y * c[7]!)) +
        X *
          (c[8]! +
            Y * (c[9]! + Y * (c[10]! + Y * c[11]!)) +
            X * (c[12]! + Y * (c[13]! + Y * c[14]!) + X * (c[15]! + Y * c[16]! + X * c[17]!))))
  );
}

export function melinder({ xm, Tm, rows }: MelinderTable): Melinder {
  const column = (n: 0 | 1 | 2 | 3 | 4) => Float64Array.from(rows, (row) => row[n]);
  const freezing = column(0);
  const rho = column(1);
  const cp = column(2);
  const k = column(3);
  const lnMu = column(4);
  return {
    properties(x, T) {
      const X = 100 * x - xm;
      const Y = T - KELVIN - Tm;
      return {
        rho: surface(rho, X, Y),
        cp: surface(cp, X, Y),
        mu: 1e-3 * Math.exp(surface(lnMu, X, Y)), // the column is ln(mPa s)
        k: surface(k, X, Y),
      };
    },
    // The column has terms in T too (a millionth of a kelvin); a freezing point is a function of x alone.
    freezingPoint: (x) => KELVIN + surface(freezing, 100 * x - xm, 0),
  };
}

/** Flow, pump heat and liquid of a loop, read from piecewise polynomials instead of solved each time. */
import { LazyTable } from '../../numerics/lazyTable';
import type { LiquidFlow, PreparedLoop } from '../prepare';

const PIECE = 12;
const RTOL = 1e-6;

/** Within 1e-6 of `flowAt`, between the freezing point and the temperature up to which the pump moves the liquid. */
export function flowTable(prepared: PreparedLoop): PreparedLoop['flowAt'] {
  const { coldest, movedUpTo } = prepared;
  const fill = (T: number, out: Float64Array) => {
    const { liquid, flow, pumpHeat } = prepared.flowAt(T);
    out.set([flow, pumpHeat, liquid.rho, liquid.cp, liquid.mu, liquid.k]);
  };
  const table = new LazyTable(fill, 6, coldest, movedUpTo, PIECE, RTOL);
  const out = new Float64Array(6);
  return (T): LiquidFlow => {
    table.at(T, out);
    const [flow, pumpHeat, rho, cp, mu, k] = out as unknown as [
      number,
      number,
      number,
      number,
      number,
      number,
    ];
    return { flow: Math.max(flow, 0), pumpHeat, liquid: { rho, cp, mu, k } };
  };
}

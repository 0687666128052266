/** Flow, pump heat and liquid of a loop, read from piecewise polynomials instead of solved each time. */
import { LazyTable } from '../../numerics/lazyTable';
import type { LiquidFlow, PreparedLoop } from '../prepare';
import { currentAt } from './flow';

const PIECE = 12;
const RTOL = 1e-5;

/** Where flow and current at a temperature come from: solved, or read. */
export interface FlowSource {
  readonly flowAt: PreparedLoop['flowAt'];
  /** Of the pump on its feed, A; asked for only where a breaker may open. */
  readonly currentAt: (T: number) => number;
}

/** Solved each time. */
export const flowSolved = (prepared: PreparedLoop): FlowSource => ({
  flowAt: prepared.flowAt,
  currentAt: (T) => currentAt(prepared, T),
});

/** Within 1e-4 of `flowAt` (1e-5 where it is smooth), between the freezing point and the temperature up to which the pump moves the liquid. */
export function flowTable(prepared: PreparedLoop, breaker: boolean): FlowSource {
  const { coldest, movedUpTo } = prepared;
  const fill = (T: number, out: Float64Array) => {
    const { liquid, flow, pumpHeat } = prepared.flowAt(T);
    out.set([flow, pumpHeat, liquid.rho, liquid.cp, liquid.mu, liquid.k]);
    if (breaker) out[6] = currentAt(prepared, T);
  };
  const table = new LazyTable(fill, 7, coldest, movedUpTo, PIECE, RTOL);
  const out = new Float64Array(7);
  const flowAt = (T: number): LiquidFlow => {
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
  const currentOf = (T: number) => {
    table.at(T, out);
    return out[6]!;
  };
  return { flowAt, currentAt: currentOf };
}

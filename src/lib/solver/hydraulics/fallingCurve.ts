/**
 * A curve known from points that falls from its first to its last: head of a pump, pressure of a fan.
 * Through the points by shape-preserving cubics; flat before the first, straight after the last.
 */
import { InvalidInputError } from '../errors';
import { pchip } from '../numerics/interpolate';

export interface CurvePoint {
  readonly flow: number;
  /** Head, m, or pressure, Pa. */
  readonly lift: number;
}

export interface FallingCurve {
  value(flow: number): number;
  slope(flow: number): number;
  readonly firstFlow: number;
  readonly lastFlow: number;
  readonly lastLift: number;
  /** Lift at no flow. */
  readonly shutOff: number;
  /** Flow at which the curve, continued straight, lifts nothing. */
  readonly runOut: number;
}

/**
 * @param path - of the points in the loop, for errors
 * @param lifts - what falls, in words: `head`, `pressure`
 * @throws {@link InvalidInputError} for fewer than two points, flows not rising, a lift that rises
 */
export function fallingCurve(
  points: readonly CurvePoint[],
  path: string,
  lifts: string,
): FallingCurve {
  checkPoints(points, path, lifts);
  const x = points.map((p) => p.flow);
  const y = points.map((p) => p.lift);
  const fit = pchip(x, y);
  const last = points.length - 1;
  const firstFlow = x[0]!;
  const lastFlow = x[last]!;
  const shutOff = y[0]!;
  const lastLift = y[last]!;
  // A fit may end flat between points that fall; the last chord then says how the curve goes on.
  const chord = (lastLift - y[last - 1]!) / (lastFlow - x[last - 1]!);
  const endSlope = Math.min(fit.slope(lastFlow), chord);

  return {
    value(flow) {
      if (flow <= firstFlow) return shutOff;
      if (flow >= lastFlow) return lastLift + endSlope * (flow - lastFlow);
      return fit.value(flow);
    },
    slope(flow) {
      if (flow < firstFlow) return 0;
      if (flow > lastFlow) return endSlope;
      return fit.slope(flow);
    },
    firstFlow,
    lastFlow,
    lastLift,
    shutOff,
    runOut: lastFlow - lastLift / endSlope,
  };
}

function checkPoints(points: readonly CurvePoint[], path: string, lifts: string): void {
  const refuse = (message: string, value?: number): never => {
    throw new InvalidInputError(path, message, value);
  };
  if (points.length < 2) refuse(`the curve needs at least two points of flow and ${lifts}`);
  points.forEach((p, i) => {
    if (!(p.flow >= 0 && p.flow < Infinity)) refuse('a flow on the curve is negative', p.flow);
    if (!(p.lift >= 0 && p.lift < Infinity)) refuse(`a ${lifts} on the curve is negative`, p.lift);
    const before = points[i - 1];
    if (before === undefined) return;
    if (p.flow === before.flow) refuse('two points of the curve have the same flow', p.flow);
    if (p.flow < before.flow) refuse('the points of the curve must stand in order of flow', p.flow);
    if (p.lift > before.lift) {
      refuse(`the ${lifts} must fall as the flow rises; at this flow it rises`, p.flow);
    }
  });
  const [beforeLast, last] = points.slice(-2) as [CurvePoint, CurvePoint];
  if (last.lift === beforeLast.lift) {
    refuse(`the ${lifts} must fall between the last two points`, last.flow);
  }
}

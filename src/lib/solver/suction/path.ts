/** The suction side along the way a loop goes as its liquid warms. */
import { prepareLoop, type PreparedLoop } from '../loop/prepare';
import { FLOW_STANDING } from '../loop/standstill';
import { brent } from '../numerics/root';
import { spaced } from '../numerics/spaced';
import { suctionMargin } from './npsh';

/** Where the loop would be with its liquid at one temperature. */
export interface PathPoint {
  readonly temperature: number;
  readonly flow: number;
  readonly available: number;
  readonly required: number;
  readonly margin: number;
  readonly headLeft: number;
}

/** Suction side at `T` (K) and the flow the loop then has. `T` outside the liquid's range counts as its end. */
export function pathPoint(prepared: PreparedLoop, T: number): PathPoint {
  const inside = Math.min(Math.max(T, prepared.coldest), prepared.hottest);
  const { liquid, flow } = prepared.flowAt(inside);
  const { available, required, headLeft } = prepared.hydraulics.suctionAt(flow, liquid, inside);
  const margin = suctionMargin({ available, required });
  return { temperature: inside, flow, available, required, margin, headLeft };
}

/** The loop's path: flow and suction margin against temperature. */
export const operatingPath = (
  prepared: PreparedLoop,
  temperatures: readonly number[],
): readonly PathPoint[] => temperatures.map((T) => pathPoint(prepared, T));

/** The loop with its cap off: what is left when the reservoir holds no pressure. */
export const ventedLoop = ({ loop }: PreparedLoop): PreparedLoop =>
  prepareLoop({ ...loop, reservoir: { ...loop.reservoir, capGauge: 0 } });

/** Flow the loop would have if its suction side took nothing from the pump, m³/s. */
export const healthyFlow = ({ hydraulics, liquidAt }: PreparedLoop, T: number): number =>
  hydraulics.flowAt(liquidAt(T));

/** {@link operatingPath}, the point of the first loss put in: the path turns sharply there. */
export function pathThrough(
  prepared: PreparedLoop,
  temperatures: readonly number[],
  loss: FirstLoss,
): readonly PathPoint[] {
  const path = operatingPath(prepared, temperatures);
  if (loss.kind !== 'at') return path;
  const { point } = loss;
  const before = path.filter(({ temperature }) => temperature < point.temperature);
  if (before.length === 0) return path;
  return [...before, point, ...path.slice(before.length)];
}

/** Where, warming up, the pump has lost 3 % of its head. */
export type FirstLoss =
  | { readonly kind: 'at'; readonly point: PathPoint }
  /** The margin holds up to `upTo`, the hottest the liquid can be here, K. */
  | { readonly kind: 'never'; readonly upTo: number; readonly margin: number }
  /** It is gone at every temperature of the liquid. */
  | { readonly kind: 'always' }
  /** The pump moves nothing, so nothing is asked of its suction side. */
  | { readonly kind: 'no-flow' };

/** Temperatures looked at between freezing and boiling point. */
const LOOKS = 33;

/**
 * Temperature at which the pump starts to lose head: where, from cold to hot, the suction head available
 * first falls to the one required (NPSH3, the 3 % point). The flow follows the liquid's own properties,
 * and the head lost where cavitation is counted.
 *
 * @source ISO 9906:2012 (NPSH3); bracketed root (Brent)
 */
export function temperatureOfFirstLoss(prepared: PreparedLoop): FirstLoss {
  const { coldest, hottest } = prepared;
  const marginAt = (T: number) => pathPoint(prepared, T).margin;
  const path = operatingPath(prepared, spaced(coldest, hottest, LOOKS));
  if (path.every(({ flow }) => !(flow >= FLOW_STANDING))) return { kind: 'no-flow' };
  const after = path.findIndex(({ margin }, i) => i > 0 && margin < 0 && path[i - 1]!.margin >= 0);
  if (after < 0) {
    const { margin, temperature } = path[path.length - 1]!;
    return margin >= 0 ? { kind: 'never', upTo: temperature, margin } : { kind: 'always' };
  }
  const [a, b] = [path[after - 1]!, path[after]!];
  const T = brent(marginAt, a.temperature, b.temperature, { fa: a.margin, fb: b.margin }).x;
  return { kind: 'at', point: pathPoint(prepared, T) };
}

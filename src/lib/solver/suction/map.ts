/** Suction margin over liquid temperature and flow, as a grid and as lines of equal margin. */
import type { PreparedLoop } from '../loop/prepare';
import { spaced } from '../numerics/spaced';
import { suctionMargin } from './npsh';

export interface SuctionMap {
  /** K, rising. */
  readonly temperatures: readonly number[];
  /** m³/s, rising from none. */
  readonly flows: readonly number[];
  /** Margin, m: one row per flow, one value per temperature. */
  readonly margin: readonly (readonly number[])[];
}

/** What part of the plane is drawn. */
export interface MapSpan {
  readonly temperatures: readonly [from: number, to: number];
  readonly flowMax: number;
}

/** Steps of the grid: straight lines between them do not show at a plot's width. */
const COLUMNS = 61;
const ROWS = 31;
/** Below ambient, K, and over the largest flow, that the map shows. */
const COLDER = 10;
const WIDER = 1.2;

/** From just below ambient to the hottest the liquid can be, and a little beyond the flow it ever has. */
export function mapSpan(prepared: PreparedLoop): MapSpan {
  const { coldest, hottest, loop } = prepared;
  const from = Math.min(Math.max(coldest, loop.site.ambientTemperature - COLDER), hottest - 1);
  const flows = spaced(from, hottest, 9).map((T) => prepared.flowAt(T).flow);
  return { temperatures: [from, hottest], flowMax: WIDER * Math.max(...flows) };
}

/**
 * Suction head available less required at every temperature and flow of the span, whether the loop ever
 * gets there or not: the hose, the level and the pump decide it, the loop only chooses the point.
 */
export function suctionMap(prepared: PreparedLoop, span = mapSpan(prepared)): SuctionMap {
  const temperatures = spaced(...span.temperatures, COLUMNS);
  const flows = spaced(0, span.flowMax, ROWS);
  const columns = temperatures.map((T) => ({ T, liquid: prepared.liquidAt(T) }));
  const margin = flows.map((flow) =>
    columns.map(({ T, liquid }) => suctionMargin(prepared.hydraulics.suctionAt(flow, liquid, T))),
  );
  return { temperatures, flows, margin };
}

/** Largest flow at which column `i` still has `level`; none: 0, all of the map: its end. */
function flowWith({ flows, margin }: SuctionMap, i: number, level: number): number {
  for (let row = flows.length - 1; row >= 0; row--) {
    const here = margin[row]![i]!;
    if (here < level) continue;
    if (row === flows.length - 1) return flows[row]!;
    const share = (here - level) / (here - margin[row + 1]![i]!);
    return flows[row]! + share * (flows[row + 1]! - flows[row]!);
  }
  return 0;
}

/** Line of equal margin, from the hot end down to where it leaves the map. */
export function marginContour(map: SuctionMap, level: number): [T: number, flow: number][] {
  const points: [number, number][] = [];
  const end = map.flows[map.flows.length - 1]!;
  map.flows.forEach((flow, row) => {
    const heads = map.margin[row]!;
    const after = heads.findIndex((m, i) => i > 0 && m < level && heads[i - 1]! >= level);
    if (after < 0) return;
    const [a, b] = [heads[after - 1]!, heads[after]!];
    const [T, next] = [map.temperatures[after - 1]!, map.temperatures[after]!];
    points.push([T + ((a - level) / (a - b)) * (next - T), Math.min(flow, end)]);
  });
  return points;
}

/** Flows between two margins at every temperature: `low` at their upper, `high` at their lower one. */
export const marginBand = (
  map: SuctionMap,
  [lower, upper]: readonly [number, number],
): [T: number, low: number, high: number][] =>
  map.temperatures.map((T, i) => [T, flowWith(map, i, upper), flowWith(map, i, lower)]);

/** Multiples of `step` that the map spans, `zero` among them, lowest first; at most `most` from the top. */
export function marginLevels({ margin }: SuctionMap, step: number, most: number): number[] {
  const all = margin.flat();
  const top = Math.floor(Math.max(...all) / step);
  const bottom = Math.max(Math.ceil(Math.min(...all) / step), Math.min(0, top) - most);
  const count = Math.max(0, top - bottom + 1);
  return Array.from({ length: count }, (_, i) => (bottom + i) * step);
}

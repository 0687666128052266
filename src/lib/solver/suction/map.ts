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
const COLUMNS = 45;
const ROWS = 17;
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
  const columns = temperatures.map((T) => prepared.hydraulics.suctionOver(prepared.liquidAt(T), T));
  const margin = flows.map((flow) => columns.map((at) => suctionMargin(at(flow))));
  return { temperatures, flows, margin };
}

/** Hottest of the map's temperatures at which row `row` still has `level`; none: the coldest. */
function hottestWith({ temperatures, margin }: SuctionMap, row: number, level: number): number {
  const heads = margin[row]!;
  const last = heads.length - 1;
  for (let i = last; i >= 0; i--) {
    const here = heads[i]!;
    if (here < level) continue;
    if (i === last) return temperatures[i]!;
    const share = (here - level) / (here - heads[i + 1]!);
    return temperatures[i]! + share * (temperatures[i + 1]! - temperatures[i]!);
  }
  return temperatures[0]!;
}

/** Line of equal margin as (flow, temperature), where it runs inside the map. */
export function marginContour(map: SuctionMap, level: number): [flow: number, T: number][] {
  const [coldest, hottest] = [map.temperatures[0]!, map.temperatures[map.temperatures.length - 1]!];
  return map.flows
    .map((flow, row): [number, number] => [flow, hottestWith(map, row, level)])
    .filter(([, T]) => T > coldest && T < hottest);
}

/** Temperatures between two margins at every flow: `low` at the upper margin, `high` at the lower one. */
export const marginBand = (
  map: SuctionMap,
  [lower, upper]: readonly [number, number],
): [flow: number, low: number, high: number][] =>
  map.flows.map((flow, row) => [flow, hottestWith(map, row, upper), hottestWith(map, row, lower)]);

/** Multiples of `step` that the map spans, `zero` among them, lowest first; at most `most` from the top. */
export function marginLevels({ margin }: SuctionMap, step: number, most: number): number[] {
  const all = margin.flat();
  const top = Math.floor(Math.max(...all) / step);
  const bottom = Math.max(Math.ceil(Math.min(...all) / step), Math.min(0, top) - most);
  const count = Math.max(0, top - bottom + 1);
  return Array.from({ length: count }, (_, i) => (bottom + i) * step);
}

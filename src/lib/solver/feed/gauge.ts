import { requireWithin, type Interval } from '../errors';

/** Gauges of ASTM B258 for which the law is used: -3 stands for 4/0, -2 for 3/0, -1 for 2/0, 0 for 1/0. */
export const GAUGE_RANGE = { awg: [-3, 40] } as const satisfies Record<string, Interval>;

/** How one says how thick a wire is: by American gauge, or by area of copper. */
export type WireSize =
  | { readonly by: 'awg'; readonly awg: number }
  /** m² */
  | { readonly by: 'area'; readonly area: number };

/** Areas of copper dealt with, m²: thinner than any feed to thicker than any battery cable. */
export const AREA_RANGE = { area: [5e-9, 2e-4] } as const satisfies Record<string, Interval>;

/**
 * Diameter of a solid round wire of an American gauge.
 *
 * @formula d = 0.000127 * 92^((36 - awg) / 39)
 * @symbol awg - gauge number, 1; 0, -1, -2, -3 stand for 1/0 to 4/0
 * @returns d, m
 * @throws {@link OutOfRangeError} outside {@link GAUGE_RANGE}, NaN included
 * @source ASTM B258: 36 gauge is 0.005 in, 4/0 is 0.46 in, 39 equal ratios between
 * @example wireDiameter({ awg: 10 }) // 0.0025882
 */
export function wireDiameter({ awg }: { awg: number }): number {
  requireWithin('ASTM B258', GAUGE_RANGE, { awg });
  return 0.000127 * Math.pow(92, (36 - awg) / 39);
}

/**
 * Area of copper of an American gauge, as a solid round wire. Stranded wire is made to about the same area.
 *
 * @formula A = pi / 4 * (0.000127 * 92^((36 - awg) / 39))^2
 * @symbol awg - gauge number, 1; 0, -1, -2, -3 stand for 1/0 to 4/0
 * @returns A, m²
 * @throws {@link OutOfRangeError} outside {@link GAUGE_RANGE}, NaN included
 * @source ASTM B258
 * @example wireArea({ awg: 14 }) // 2.0809e-6
 */
export function wireArea({ awg }: { awg: number }): number {
  const d = wireDiameter({ awg });
  return (Math.PI / 4) * d * d;
}

/**
 * Area of copper, m², however the size was stated.
 * @throws {@link OutOfRangeError} outside {@link GAUGE_RANGE} or {@link AREA_RANGE}
 */
export function copperArea(size: WireSize): number {
  if (size.by === 'awg') return wireArea({ awg: size.awg });
  requireWithin('wire size', AREA_RANGE, { area: size.area });
  return size.area;
}

/**
 * Gauge number, not rounded, whose area is `area`: tells between which gauges a metric wire lies.
 *
 * @formula awg = 36 - 39 * log(sqrt(4 * area / pi) / 0.000127) / log(92)
 * @symbol area - area of copper, m²
 * @returns awg, 1
 * @throws {@link OutOfRangeError} outside {@link AREA_RANGE}
 * @source ASTM B258, solved for the gauge
 * @example gaugeOfArea({ area: 2.5e-6 }) // 13.209
 */
export function gaugeOfArea({ area }: { area: number }): number {
  requireWithin('wire size', AREA_RANGE, { area });
  return 36 - (39 * Math.log(Math.sqrt((4 * area) / Math.PI) / 0.000127)) / Math.log(92);
}

/** Gauge as it is spoken and printed: 14, 1/0, 4/0. */
export function gaugeName(awg: number): string {
  return awg > 0 ? String(awg) : `${1 - awg}/0`;
}

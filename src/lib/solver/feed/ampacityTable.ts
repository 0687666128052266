/**
 * Current a single copper wire with 105 °C insulation is allowed in free air at 30 °C, A, by gauge.
 * ABYC E-11 (boats), as reprinted by a seller of cable; the standard itself was not read.
 * Road-vehicle makers publish no common table: this is a stated practice, not a road-vehicle rule.
 */
export const ABYC_E11_105C_AT_30C: readonly (readonly [awg: number, amps: number])[] = [
  [18, 20],
  [16, 25],
  [14, 35],
  [12, 45],
  [10, 60],
  [8, 80],
  [6, 120],
  [4, 160],
  [2, 210],
  [1, 245],
  [0, 285],
  [-1, 330],
  [-3, 445],
];

/**
 * Largest resistance of a road-vehicle cable at 20 °C, plain copper, ohm/m, by nominal area, mm².
 * ISO 6722-1:2011 (superseded by ISO 19642). From memory: not compared with the printed page.
 */
export const ISO_6722_LARGEST_RESISTANCE: readonly (readonly [area_mm2: number, r: number])[] = [
  [0.35, 54.4e-3],
  [0.5, 37.1e-3],
  [0.75, 24.7e-3],
  [1, 18.5e-3],
  [1.5, 12.7e-3],
  [2, 9.42e-3],
  [2.5, 7.6e-3],
  [3, 6.15e-3],
  [4, 4.71e-3],
  [5, 3.94e-3],
  [6, 3.14e-3],
  [10, 1.82e-3],
  [16, 1.16e-3],
  [25, 0.743e-3],
  [35, 0.527e-3],
  [50, 0.368e-3],
  [70, 0.259e-3],
  [95, 0.196e-3],
  [120, 0.153e-3],
];

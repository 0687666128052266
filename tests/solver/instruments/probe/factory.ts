/** A published probe: resistances of a factory's service table, as found in one, 0 to 100 °C. */
export const FACTORY = [
  [0, 5975],
  [20, 2502],
  [40, 1152],
  [60, 575.8],
  [80, 308.6],
  [100, 175.7],
].map(([t, R]) => ({ T: t! + 273.15, R: R! }));

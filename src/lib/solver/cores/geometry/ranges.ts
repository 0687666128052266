import type { Interval, Note } from '../../errors';

/**
 * What the reader must know when a correlation is used outside the data it was fitted to. The law
 * still gives a value there; beyond a factor of two of a bound it is a guess and says so.
 */
export function outsideData<K extends string>(
  law: string,
  ranges: Readonly<Record<K, Interval>>,
  values: Readonly<Record<NoInfer<K>, number>>,
): Note[] {
  const notes: Note[] = [];
  for (const quantity in ranges) {
    const range = ranges[quantity];
    const value = values[quantity];
    if (value >= range[0] && value <= range[1]) continue;
    const far = value < range[0] / 2 || value > range[1] * 2;
    notes.push({
      code: far ? 'far-outside-data' : 'outside-data',
      message: far
        ? `${law}: ${quantity} lies far outside the cores this law was fitted to; take the value as a guess.`
        : `${law}: ${quantity} lies outside the cores this law was fitted to.`,
      quantity,
      value,
      range,
    });
  }
  return notes;
}

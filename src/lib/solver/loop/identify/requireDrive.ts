/** What a model needs of the columns that drive it. */
import { InvalidInputError } from '../../errors';
import type { Drive } from './types';

/** @throws {@link InvalidInputError} where a column is missing, short or has gaps, or time does not rise */
export function requireDrive(drive: Drive, needs: readonly (keyof Drive)[]): void {
  const { t } = drive;
  if (t.length < 2) throw new InvalidInputError('log', 'a log needs at least two rows');
  for (let k = 1; k < t.length; k++) {
    if (!(t[k]! > t[k - 1]!))
      throw new InvalidInputError('log.t', `time does not rise at row ${k + 1}`, t[k]);
  }
  for (const key of needs) {
    const column = drive[key] as Float64Array | undefined;
    if (!column) throw new InvalidInputError(`log.${key}`, 'this model needs it row by row');
    if (column.length !== t.length)
      throw new InvalidInputError(`log.${key}`, 'it has another number of rows than the time');
    const bad = column.findIndex((x) => !Number.isFinite(x));
    if (bad >= 0)
      throw new InvalidInputError(
        `log.${key}`,
        `it has no number at row ${bad + 1}; what drives the loop must be filled`,
      );
  }
}

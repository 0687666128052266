/** Which rows of a log name its columns and which count; whatever stands above them is passed over. */
import { LogError } from './errors';
import { heading, type Heading } from './header';
import { cellNumber, clockSeconds, dateSeconds, timeFormOf, type TimeForm } from './number';
import { isAnyUnit } from './units';

type Row = readonly string[];

export interface Head {
  readonly skip: number;
  readonly headings: readonly Heading[];
  readonly repeats: readonly Row[];
  readonly forms: readonly (TimeForm | null)[];
}

/** What begins a remark. */
const MARK = /^\s*(#+|\/\/|%)\s*(?=\S)/;

const filled = (row: Row) => row.filter((cell) => cell.trim() !== '');

/**
 * The table begins with the first row that reads as its later rows do; the row of names, and one of units,
 * are the last above it that are wide enough. A line `Sample rate,10` is neither.
 *
 * @throws {@link LogError} `no-header`, `no-numbers`, `one-row`
 */
export function headOf(
  rows: readonly Row[],
  width: number,
  decimalComma: boolean,
  withoutHeader: boolean,
): Head {
  const reads = (cell: string) =>
    Number.isFinite(cellNumber(cell, decimalComma)) ||
    Number.isFinite(clockSeconds(cell)) ||
    Number.isFinite(dateSeconds(cell));
  // A remark may hold a comma too; names behind such a mark are as many as there are columns.
  const isNames = (row: Row | undefined) =>
    row !== undefined &&
    filled(row).length >= (MARK.test(row[0]!) ? width : 0.5 * width) &&
    filled(row).filter((cell) => !reads(cell)).length >= 2;
  const some = rows.filter((row) => row.length > 1 && filled(row).length > 0);
  const wide = some.filter((row) => 2 * filled(row).length >= width);
  const full = wide.length > 1 ? wide : some;
  // Columns of words tell nothing of a row; the later half is beyond whatever stands above the table.
  const words = formsOf(full.slice(full.length >> 1), width, decimalComma).map(
    (form, j) => form === null && full.some((row) => (row[j] ?? '').trim() !== ''),
  );
  const isData = (row: Row) => {
    if (row.length < 2 || 2 * row.length <= width) return false;
    const telling = row.filter((cell, j) => cell.trim() !== '' && !words[j]);
    const numbers = telling.filter(reads).length;
    // A name and its value are half a number: in a row of the table the first one counts.
    return numbers > 0 && 2 * numbers >= telling.length + (reads(telling[0]!) ? 0 : 1);
  };
  const above = (i: number) =>
    rows.slice(0, i).filter((row) => 2 * row.length > width && filled(row).length > 0);
  const begins = (row: Row, i: number) => {
    if (!isData(row)) return false;
    const next = rows.slice(i + 1).find((later) => filled(later).length > 0);
    return next === undefined || isData(next) || isNames(above(i).at(-1));
  };
  const first = rows.findIndex(begins);
  if (first < 0) {
    if (rows.some(isNames))
      throw new LogError('one-row', 'There are names of columns but no row of numbers below them.');
    throw new LogError('no-numbers', 'No row of numbers found in this file.');
  }
  const before = above(first);
  const last = before.at(-1);
  const units = last && isNames(before.at(-2)) && looksLikeUnits(last) ? last : null;
  const names = units ? before.at(-2)! : before.findLast(isNames);
  if (!names && !withoutHeader)
    throw new LogError(
      'no-header',
      'The first row holds numbers, not names. Put a row with the names of the columns on top, or read on with Column 1, Column 2, …',
      { row: first + 1 },
    );
  const count = Math.max(names?.length ?? 0, width);
  const headings = Array.from({ length: count }, (_, j) =>
    heading(unmarked(names?.[j] ?? '', j) || `Column ${j + 1}`, units?.[j] ?? ''),
  );
  return {
    skip: first,
    headings,
    repeats: names ? (units ? [names, units] : [names]) : [],
    forms: formsOf(rows.slice(first), count, decimalComma),
  };
}

/** A name without the mark of a remark that some loggers put before the first. */
const unmarked = (name: string, j: number) =>
  j === 0 ? name.trim().replace(MARK, '') : name.trim();

/** Most of its cells are units, a stroke or nothing. */
function looksLikeUnits(row: readonly string[]): boolean {
  const plain = (cell: string) => cell.trim().replace(/^[([{]\s*(.*?)\s*[)\]}]$/, '$1');
  const filled = row.map(plain).filter((cell) => cell !== '');
  return (
    filled.length > 0 &&
    2 * filled.filter((c) => isAnyUnit(c) || c.length <= 2).length >= filled.length
  );
}

function formsOf(
  rows: readonly (readonly string[])[],
  width: number,
  decimalComma: boolean,
): (TimeForm | null)[] {
  return Array.from({ length: width }, (_, j) =>
    timeFormOf(
      rows.map((row) => row[j] ?? ''),
      decimalComma,
    ),
  );
}

/** How a log is laid out: what parts its cells, its decimal mark, which row names the columns. */
import Papa from 'papaparse';
import { LogError } from './errors';
import { heading, type Heading } from './header';
import { LIMITS } from './limits';
import { cellNumber, clockSeconds, dateSeconds, timeFormOf, type TimeForm } from './number';
import { isAnyUnit } from './units';

export interface Layout {
  readonly delimiter: ',' | ';' | '\t';
  readonly decimalComma: boolean;
  readonly newline: '\n' | '\r\n' | '\r';
  /** Rows before the first row of numbers. */
  readonly skip: number;
  readonly headings: readonly Heading[];
  /** Cells of the rows that name columns and units: where one comes again it is skipped. */
  readonly repeats: readonly (readonly string[])[];
  /** Form of each column: a number, a clock, a date; null: text throughout the rows seen. */
  readonly forms: readonly (TimeForm | null)[];
}

export interface LayoutChoice {
  /** Read on without names: columns are called Column 1, Column 2, … */
  readonly withoutHeader?: boolean;
}

const DELIMITERS = [',', ';', '\t'] as const;
/** Rows looked at. */
const LOOK_ROWS = 60;

/**
 * Lay out a log by its first rows.
 * @param head - whole rows from the start of the file
 * @throws {@link LogError} `empty`, `no-table`, `no-header`, `too-many-columns`, `one-row`
 */
export function layoutOf(head: string, choice: LayoutChoice = {}): Layout {
  const newline = /\r\n/.test(head) ? '\r\n' : /\n/.test(head) || !/\r/.test(head) ? '\n' : '\r';
  if (head.trim() === '') throw new LogError('empty', 'There is nothing in this file.');
  const read = DELIMITERS.map((delimiter) => {
    const { data } = Papa.parse<string[]>(head, { delimiter, newline, preview: LOOK_ROWS });
    return { delimiter, rows: data, width: widthOf(data) };
  });
  // A decimal comma parts cells too: semicolon and tab are believed first where they make a table.
  const order = [read[1]!, read[2]!, read[0]!].filter(({ width }) => width > 1);
  const best = order.reduce<(typeof read)[number] | null>(
    (a, b) => (a === null || b.width > a.width * (a.delimiter === ',' ? 1 : 2) ? b : a),
    null,
  );
  if (!best)
    throw new LogError(
      'no-table',
      'No columns found: cells are to be parted by commas, semicolons or tabs.',
    );
  const { delimiter, rows, width } = best;
  if (width > LIMITS.columns)
    throw new LogError(
      'too-many-columns',
      `${width} columns; at most ${LIMITS.columns} are read. Export only the channels of the loop.`,
      { value: width, limit: LIMITS.columns },
    );
  const decimalComma = commaDecimals(rows);
  return { delimiter, decimalComma, newline, ...headOf(rows, width, decimalComma, choice) };
}

/** The width that most rows have; 1 where they differ too much to be a table. */
function widthOf(rows: readonly (readonly string[])[]): number {
  const counts = new Map<number, number>();
  for (const row of rows) {
    if (row.length > 1 && row.some((cell) => cell.trim() !== ''))
      counts.set(row.length, (counts.get(row.length) ?? 0) + 1);
  }
  let best = 1;
  let most = 0;
  for (const [width, count] of counts) {
    if (count > most || (count === most && width > best)) [best, most] = [width, count];
  }
  return best;
}

const WITH_COMMA = /^\s*[+-]?\d+,\d+(e[+-]?\d+)?\s*$/i;
const WITH_POINT = /^\s*[+-]?\d+\.\d+(e[+-]?\d+)?\s*$/i;

/** More cells with a decimal comma than with a point; between commas such a cell stands in quotes. */
function commaDecimals(rows: readonly (readonly string[])[]): boolean {
  let commas = 0;
  let points = 0;
  for (const cell of rows.flat()) {
    if (WITH_COMMA.test(cell)) commas++;
    else if (WITH_POINT.test(cell)) points++;
  }
  return commas > points;
}
/** Which rows name and which count. */
function headOf(
  rows: readonly (readonly string[])[],
  width: number,
  decimalComma: boolean,
  { withoutHeader }: LayoutChoice,
): Omit<Layout, 'delimiter' | 'decimalComma' | 'newline'> {
  const reads = (cell: string) =>
    Number.isFinite(cellNumber(cell, decimalComma)) ||
    Number.isFinite(clockSeconds(cell)) ||
    Number.isFinite(dateSeconds(cell));
  const isData = (row: readonly string[]) => {
    const filled = row.filter((cell) => cell.trim() !== '');
    return row.length > 1 && filled.length > 0 && 2 * filled.filter(reads).length >= filled.length;
  };
  const isNames = (row: readonly string[]) =>
    row.length > 1 && row.filter((cell) => cell.trim() !== '' && !reads(cell)).length >= 2;
  const first = rows.findIndex(isData);
  if (first < 0) {
    if (rows.some(isNames))
      throw new LogError('one-row', 'There are names of columns but no row of numbers below them.');
    throw new LogError('no-numbers', 'No row of numbers found in this file.');
  }
  const above = rows.slice(0, first).filter((row) => row.some((cell) => cell.trim() !== ''));
  const units = above.at(-1);
  const unitRow =
    units !== undefined && above.length > 1 && isNames(above.at(-2)!) && looksLikeUnits(units);
  const names = unitRow ? above.at(-2)! : above.at(-1);
  if (!names || !isNames(names)) {
    if (!withoutHeader)
      throw new LogError(
        'no-header',
        'The first row holds numbers, not names. Put a row with the names of the columns on top, or read on with Column 1, Column 2, …',
        { row: first + 1 },
      );
    return {
      skip: first,
      headings: Array.from({ length: width }, (_, j) => heading(`Column ${j + 1}`, '')),
      repeats: [],
      forms: formsOf(rows.slice(first), width, decimalComma),
    };
  }
  const count = Math.max(names.length, width);
  const headings = Array.from({ length: count }, (_, j) =>
    heading(names[j]?.trim() || `Column ${j + 1}`, unitRow ? (units[j] ?? '') : ''),
  );
  return {
    skip: first,
    headings,
    repeats: unitRow ? [names, units] : [names],
    forms: formsOf(rows.slice(first), count, decimalComma),
  };
}

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

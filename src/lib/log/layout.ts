/** How a log is laid out: what parts its cells, its decimal mark, which row names the columns. */
import Papa from 'papaparse';
import { LogError } from './errors';
import type { Heading } from './header';
import { headOf } from './headRows';
import { LIMITS } from './limits';
import type { TimeForm } from './number';

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
const LOOK_ROWS = 200;

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
  return {
    delimiter,
    decimalComma,
    newline,
    ...headOf(rows, width, decimalComma, choice.withoutHeader ?? false),
  };
}

/**
 * The width of the rows that hold most of the cells, however many narrow lines stand above them; 1 where no
 * row has two cells.
 */
function widthOf(rows: readonly (readonly string[])[]): number {
  const cells = new Map<number, number>();
  for (const row of rows) {
    if (row.length > 1 && row.some((cell) => cell.trim() !== ''))
      cells.set(row.length, (cells.get(row.length) ?? 0) + row.length - 1);
  }
  let best = 1;
  let most = 0;
  for (const [width, count] of cells) {
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

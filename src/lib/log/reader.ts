/** A log read piece by piece, so that a worker can tell how far it is and be stopped. */
import Papa from 'papaparse';
import { encodingOf, markLength, type Encoding } from './decode';
import { LogError, type LogNote } from './errors';
import type { Heading } from './header';
import { layoutOf, type Layout, type LayoutChoice } from './layout';
import { LIMITS } from './limits';
import type { TimeForm } from './number';
import { plainRows, type PlainRows } from './plainRows';
import { Table } from './table';

export interface LogColumn {
  readonly heading: Heading;
  readonly form: TimeForm | null;
  /** As written in its own unit; seconds for clocks and dates; NaN for gaps and texts. */
  readonly values: Float64Array;
  readonly empty: number;
  readonly text: number;
  /** Some of the texts met. */
  readonly examples: readonly string[];
}

export interface Log {
  readonly columns: readonly LogColumn[];
  readonly rows: number;
  readonly layout: Layout;
  readonly notes: readonly LogNote[];
}

export interface LogReaderOptions extends LayoutChoice {
  /** Size the file claims, bytes: refused before a byte is read when it is too large. */
  readonly claimedSize?: number;
}

/** Bytes gathered before the layout is settled. */
const LOOK = 64 * 1024;
const QUOTE = 34;
const NEWLINE = 10;

/**
 * Push parser: `push` each piece, then `finish`. Cells and quotes after RFC 4180, by a CSV parser; pieces
 * without a quote are read straight from their bytes, which is the same and faster.
 */
export class LogReader {
  private bytes = 0;
  /** Bytes not yet read; once a quote is met: text not yet read. */
  private rest: Uint8Array = new Uint8Array(0);
  private text = '';
  private decoder: TextDecoder | null = null;
  private encoding: Encoding = 'utf-8';
  private layout: Layout | null = null;
  private table!: Table;

  /** @throws {@link LogError} `too-large` */
  constructor(private readonly options: LogReaderOptions = {}) {
    requireSize(options.claimedSize ?? 0);
  }

  get bytesRead(): number {
    return this.bytes;
  }

  get rowsRead(): number {
    return this.layout ? this.table.rows : 0;
  }

  /** @throws {@link LogError} for what cannot be read; see {@link LogProblem} */
  push(piece: Uint8Array): void {
    this.bytes += piece.length;
    requireSize(this.bytes);
    if (this.decoder) this.parseText(this.decoder.decode(piece, { stream: true }), false);
    else {
      this.rest = joined(this.rest, piece);
      if (this.layout || this.rest.length >= LOOK) this.parse(false);
    }
  }

  finish(): Log {
    if (this.decoder) this.parseText(this.decoder.decode(), true);
    else this.parse(true);
    const { layout, table } = this;
    if (table.rows < 2)
      throw new LogError('one-row', 'A log needs at least two rows of numbers; this has one.');
    const columns = table.columns.map((builder, j): LogColumn => ({
      heading: layout!.headings[j]!,
      // A slow channel may begin only after the rows by which the form was told.
      form: builder.form ?? (builder.holdsNumbers ? 'number' : null),
      values: builder.finish(),
      empty: builder.empty,
      text: builder.text,
      examples: builder.examples,
    }));
    if (!columns.some(({ values }, j) => j > 0 && values.some(Number.isFinite)))
      throw new LogError('no-numbers', 'Every channel of this log is empty or text: only gaps.');
    return { columns, rows: table.rows, layout: layout!, notes: table.notes() };
  }

  private parse(last: boolean): void {
    if (!this.layout) this.begin(last);
    const fast = this.encoding === 'utf-8' || this.encoding === 'windows-1252';
    if (fast && this.layout!.newline !== '\r' && !this.rest.includes(QUOTE)) {
      if (last && this.rest.at(-1) !== NEWLINE)
        this.rest = joined(this.rest, Uint8Array.of(NEWLINE));
      this.rest = this.rest.subarray(plainRows(this.rest, this.sink(this.rest)));
      this.requireRow(this.rest.length);
      return;
    }
    // From the first quote on everything goes through the parser.
    this.decoder = new TextDecoder(this.encoding);
    const { rest } = this;
    this.rest = new Uint8Array(0);
    this.parseText(this.decoder.decode(rest, { stream: !last }), last);
  }

  /** Settle encoding and layout, and pass over the rows above the numbers. */
  private begin(last: boolean): void {
    const head = this.rest.subarray(0, LOOK);
    this.encoding = encodingOf(head);
    const text = new TextDecoder(this.encoding).decode(head, { stream: true });
    const whole = last && head.length === this.rest.length;
    const cut = whole ? text.length : Math.max(text.lastIndexOf('\n'), text.lastIndexOf('\r'));
    this.layout = layoutOf(text.slice(0, cut > 0 ? cut : text.length), this.options);
    this.table = new Table(this.layout);
    const { skip, delimiter, newline } = this.layout;
    if (skip === 0) {
      this.rest = this.rest.subarray(markLength(head));
      return;
    }
    // The parser's fast mode counts one row too many here.
    const config = { delimiter, newline, preview: skip, fastMode: false };
    const above = Papa.parse(text, config).meta.cursor;
    this.rest = this.rest.subarray(markLength(head) + bytesOf(text.slice(0, above), this.encoding));
  }

  private parseText(more: string, last: boolean): void {
    this.text += more;
    const { delimiter, newline } = this.layout!;
    const parser = new Papa.Parser({ delimiter, newline });
    const { data, meta } = parser.parse(this.text, 0, !last) as {
      data: string[][];
      meta: { cursor: number };
    };
    for (const row of data) if (row.length > 1 || row[0]!.trim() !== '') this.table.row(row);
    this.text = last ? '' : this.text.slice(meta.cursor);
    this.requireRow(this.text.length);
  }

  /** Cells of plain bytes into the table. */
  private sink(bytes: Uint8Array): PlainRows {
    const { table } = this;
    const { columns } = table;
    const { delimiter, decimalComma } = this.layout!;
    const decoder = new TextDecoder(this.encoding);
    const cut = (start: number, end: number) => decoder.decode(bytes.subarray(start, end));
    let heading = false;
    let more = false;
    return {
      delimiter: delimiter.charCodeAt(0),
      mark: (decimalComma ? ',' : '.').charCodeAt(0),
      number(column, value) {
        if (column < columns.length) columns[column]!.number(value);
        else more = true;
      },
      text(column, start, end) {
        if (heading) return;
        const cell = end > start ? cut(start, end) : '';
        if (column === 0 && table.mayBeHeading(cell)) {
          const stop = bytes.indexOf(NEWLINE, start);
          heading = table.isHeading(cut(start, stop).split(delimiter));
          if (heading) return;
        }
        if (column < columns.length) columns[column]!.cell(cell);
        else if (cell.trim() !== '') more = true;
      },
      ended(cells) {
        if (heading) table.skipHeading();
        else table.ended(cells, more);
        heading = false;
        more = false;
      },
    };
  }

  private requireRow(length: number): void {
    if (length <= LIMITS.row) return;
    const row = this.rowsRead + this.layout!.skip;
    throw new LogError(
      'open-quote',
      `What begins after row ${row} does not end: a quote is never closed.`,
      { row },
    );
  }
}

function requireSize(bytes: number): void {
  if (bytes <= LIMITS.bytes) return;
  throw new LogError(
    'too-large',
    `${(bytes / 1e9).toPrecision(2)} GB; at most ${LIMITS.bytes / 1e6} MB are read. Cut the log to the drive that matters.`,
    { value: bytes, limit: LIMITS.bytes },
  );
}

function bytesOf(text: string, encoding: Encoding): number {
  if (encoding === 'utf-8') return new TextEncoder().encode(text).length;
  return encoding === 'windows-1252' ? text.length : 2 * text.length;
}

function joined(a: Uint8Array, b: Uint8Array): Uint8Array {
  if (a.length === 0) return b;
  const both = new Uint8Array(a.length + b.length);
  both.set(a);
  both.set(b, a.length);
  return both;
}

/** Bytes per piece: large enough to be fast, small enough that a worker answers in between. */
export const PIECE = 512 * 1024;

/** Read a log that is all there. */
export function readLog(bytes: Uint8Array, options: LogReaderOptions = {}): Log {
  const reader = new LogReader({ claimedSize: bytes.length, ...options });
  for (let i = 0; i < bytes.length; i += PIECE) reader.push(bytes.subarray(i, i + PIECE));
  return reader.finish();
}

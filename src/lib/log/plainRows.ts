/** Rows of bytes without quotes: numbers are read where they stand, hardly a cell is cut out. */

const BLANK = 32;
const NEWLINE = 10;
const RETURN = 13;
const PLUS = 43;
const MINUS = 45;
const ZERO = 48;

/** Powers of ten a double holds exactly: a mantissa of 15 digits over one is rounded once, as it should be. */
const POWER = Array.from({ length: 23 }, (_, i) => Number(`1e${i}`));

export interface PlainRows {
  /** Byte between cells, and the decimal mark. */
  readonly delimiter: number;
  readonly mark: number;
  /** A cell that is a plain number. */
  number(column: number, value: number): void;
  /** Any other cell. */
  text(column: number, start: number, end: number): void;
  /** The row of `cells` cells from `start` to `end` is done. */
  ended(cells: number, start: number, end: number): void;
}

/**
 * Hand every whole row on, a few times faster than by cutting it up. Quotes give a row a meaning that this
 * cannot see, so bytes that hold one go to the CSV parser instead. Blank rows are passed over.
 * @returns where the first row not handed on begins
 */
export function plainRows(bytes: Uint8Array, to: PlainRows): number {
  const end = bytes.lastIndexOf(NEWLINE) + 1;
  const { delimiter, mark } = to;
  let row = 0;
  let i = 0;
  while (row < end) {
    let column = 0;
    for (;;) {
      // One cell, up to the delimiter or the line's end.
      const start = i;
      let c = bytes[i]!;
      let negative = false;
      if (c === MINUS || c === PLUS) {
        negative = c === MINUS;
        c = bytes[++i]!;
      }
      let mantissa = 0;
      let digits = 0;
      let decimals = 0;
      for (; c >= ZERO && c < ZERO + 10; c = bytes[++i]!) {
        mantissa = mantissa * 10 + (c - ZERO);
        digits++;
      }
      if (c === mark && mark !== delimiter) {
        c = bytes[++i]!;
        for (; c >= ZERO && c < ZERO + 10; c = bytes[++i]!) {
          mantissa = mantissa * 10 + (c - ZERO);
          digits++;
          decimals++;
        }
      }
      const plain =
        digits > 0 && digits <= 15 && (c === delimiter || c === NEWLINE || c === RETURN);
      while (c !== delimiter && c !== NEWLINE) c = bytes[++i]!;
      if (plain) {
        const value = decimals === 0 ? mantissa : mantissa / POWER[decimals]!;
        to.number(column++, negative ? -value : value);
      } else {
        const stop = c === NEWLINE && i > start && bytes[i - 1] === RETURN ? i - 1 : i;
        // A row with nothing in it is none.
        if (column > 0 || c === delimiter || !blank(bytes, start, stop))
          to.text(column++, start, stop);
      }
      i++;
      if (c === NEWLINE) break;
    }
    if (column > 0) to.ended(column, row, i - 1);
    row = i;
  }
  return end;
}

function blank(bytes: Uint8Array, start: number, end: number): boolean {
  for (let i = start; i < end; i++) if (bytes[i]! > BLANK) return false;
  return true;
}

import { COUNT, NODES, series, powers } from './chebyshev';

/** Halvings of a cell before its error is accepted and reported. */
const DEEPEST = 7;
/** Share of a cell's width that is not worth a cell of its own. */
const SLIVER = 0.1;

interface Cell {
  readonly low: number;
  readonly high: number;
  readonly depth: number;
  /** Coefficients in powers of the place in the cell (-1 to 1), ascending, one run per component. */
  coefficients: Float64Array | null;
  halves: readonly [Cell, Cell] | null;
}

/**
 * A function of one variable with several components, replaced piece by piece by polynomials of degree
 * eight where, and only where, it is asked for. A piece is halved until the last two terms of its
 * Chebyshev series vanish within the tolerance: what lies beyond them is smaller still where the
 * function is smooth, and about their size where it is not. Continuous, since pieces share their edges.
 */
export class LazyTable {
  /** Largest end of a series met and kept, over the largest value of that component in its piece. */
  worst = 0;
  /** Calls of the function. */
  calls = 0;
  private readonly cells: Cell[] = [];
  private readonly known = new Map<number, Float64Array>();
  private latest: Cell;

  /**
   * @param f - writes its components for x into `out`
   * @param width - of a cell before any halving
   * @param rtol - size allowed for the end of a series
   * @param anchor - where a cell begins: what is asked for together is then found together
   */
  constructor(
    private readonly f: (x: number, out: Float64Array) => void,
    private readonly dimension: number,
    private readonly low: number,
    private readonly high: number,
    width: number,
    private readonly rtol: number,
    anchor = low,
  ) {
    // The first edge inside; none so close to an end that a sliver is left.
    let from = low;
    const first = Math.floor((low - anchor) / width + 1 + SLIVER);
    for (let i = first; anchor + i * width < high - SLIVER * width; i++) {
      this.cells.push(cell(from, anchor + i * width, 0));
      from = anchor + i * width;
    }
    this.cells.push(cell(from, high, 0));
    this.latest = this.cells[0]!;
  }

  /** Values at `x`; beyond the ends, the values at the ends. */
  at(x: number, out: Float64Array): void {
    const inside = x > this.low ? (x < this.high ? x : this.high) : this.low;
    let piece = this.latest;
    if (!(inside >= piece.low && inside <= piece.high && piece.coefficients)) {
      piece = this.latest = this.find(inside);
    }
    const c = piece.coefficients!;
    const s = (2 * inside - piece.low - piece.high) / (piece.high - piece.low);
    for (let i = 0, o = 0; i < this.dimension; i++, o += COUNT) {
      // Written out: read some thousand times a run.
      const upper = c[o + 5]! + s * (c[o + 6]! + s * (c[o + 7]! + s * c[o + 8]!));
      const middle = c[o + 2]! + s * (c[o + 3]! + s * (c[o + 4]! + s * upper));
      out[i] = c[o]! + s * (c[o + 1]! + s * middle);
    }
  }

  private find(x: number): Cell {
    let piece = this.cells.find(({ high }) => x < high) ?? this.cells.at(-1)!;
    for (;;) {
      if (!piece.coefficients && !piece.halves) this.fill(piece);
      if (!piece.halves) return piece;
      piece = x <= piece.halves[0].high ? piece.halves[0] : piece.halves[1];
    }
  }

  private value(x: number): Float64Array {
    let values = this.known.get(x);
    if (!values) {
      values = new Float64Array(this.dimension);
      this.f(x, values);
      this.calls++;
      this.known.set(x, values);
    }
    return values;
  }

  private fill(piece: Cell): void {
    const { low, high, depth } = piece;
    const middle = low + (high - low) / 2;
    const place = (s: number) =>
      s === -1 ? low : s === 1 ? high : s === 0 ? middle : middle + (s * (high - low)) / 2;
    const nodes = NODES.map((s) => this.value(place(s)));
    const coefficients = new Float64Array(COUNT * this.dimension);
    const values = new Float64Array(COUNT);
    let worst = 0;
    for (let i = 0; i < this.dimension; i++) {
      let scale = Number.MIN_VALUE;
      for (let k = 0; k < COUNT; k++) {
        values[k] = nodes[k]![i]!;
        scale = Math.max(scale, Math.abs(values[k]!));
      }
      const terms = series(values);
      worst = Math.max(worst, (Math.abs(terms[COUNT - 2]!) + Math.abs(terms[COUNT - 1]!)) / scale);
      powers(terms, coefficients, i * COUNT);
    }
    if (worst > this.rtol && depth < DEEPEST) {
      piece.halves = [cell(low, middle, depth + 1), cell(middle, high, depth + 1)];
      return;
    }
    this.worst = Math.max(this.worst, worst);
    piece.coefficients = coefficients;
  }
}

const cell = (low: number, high: number, depth: number): Cell => ({
  low,
  high,
  depth,
  coefficients: null,
  halves: null,
});

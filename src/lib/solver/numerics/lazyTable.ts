/** Shares of a cell at which the function is read (Chebyshev's, ends included) … */
const NODES = [0, 0.5 - Math.SQRT1_2 / 2, 0.5, 0.5 + Math.SQRT1_2 / 2, 1] as const;
/** … and those at which the polynomial through them is checked: about where it strays most. */
const CHECKS = [0.06, 0.32, 0.68, 0.94] as const;
const ORDER = NODES.length;
/** Halvings of a cell before its error is accepted and reported. */
const DEEPEST = 6;

interface Cell {
  readonly low: number;
  readonly high: number;
  readonly depth: number;
  /** Coefficients in powers of the cell's share, ascending, one run of {@link ORDER} per component. */
  coefficients: Float64Array | null;
  halves: readonly [Cell, Cell] | null;
}

/**
 * A function of one variable with several components, replaced piece by piece by polynomials of degree
 * four where, and only where, it is asked for. A piece is halved until the polynomial agrees with the
 * function at points between the nodes. Continuous, since pieces share their edges.
 */
export class LazyTable {
  /** Largest disagreement met and kept, over the largest value of that component in its piece. */
  worst = 0;
  /** Calls of the function. */
  calls = 0;
  private readonly cells: Cell[] = [];
  private readonly known = new Map<number, Float64Array>();
  private latest: Cell;

  /**
   * @param f - writes its components for x into `out`
   * @param width - of a cell before any halving
   * @param rtol - disagreement allowed at the points of check
   */
  constructor(
    private readonly f: (x: number, out: Float64Array) => void,
    private readonly dimension: number,
    private readonly low: number,
    private readonly high: number,
    width: number,
    private readonly rtol: number,
  ) {
    const count = Math.max(1, Math.ceil((high - low) / width));
    const edge = (i: number) => (i === count ? high : low + ((high - low) * i) / count);
    for (let i = 0; i < count; i++) this.cells.push(cell(edge(i), edge(i + 1), 0));
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
    const s = (inside - piece.low) / (piece.high - piece.low);
    for (let i = 0, o = 0; i < this.dimension; i++, o += ORDER) {
      out[i] = c[o]! + s * (c[o + 1]! + s * (c[o + 2]! + s * (c[o + 3]! + s * c[o + 4]!)));
    }
  }

  private find(x: number): Cell {
    const share = (x - this.low) / (this.high - this.low || 1);
    let piece = this.cells[Math.min(this.cells.length - 1, Math.floor(share * this.cells.length))]!;
    // Edges are rounded, so the neighbour may be the one that holds x.
    if (x < piece.low || x > piece.high) {
      piece = this.cells.find(({ low, high }) => x >= low && x <= high)!;
    }
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
    const place = (s: number) => (s === 0 ? low : s === 1 ? high : low + s * (high - low));
    const nodes = NODES.map((s) => this.value(place(s)));
    const coefficients = new Float64Array(ORDER * this.dimension);
    let worst = 0;
    for (let i = 0; i < this.dimension; i++) {
      const values = nodes.map((node) => node[i]!);
      coefficients.set(polynomial(values), i * ORDER);
    }
    const scale = Array.from({ length: this.dimension }, (_, i) =>
      Math.max(...nodes.map((node) => Math.abs(node[i]!)), Number.MIN_VALUE),
    );
    for (const s of CHECKS) {
      const truth = this.value(place(s));
      for (let i = 0, o = 0; i < this.dimension; i++, o += ORDER) {
        const c = coefficients;
        const got = c[o]! + s * (c[o + 1]! + s * (c[o + 2]! + s * (c[o + 3]! + s * c[o + 4]!)));
        worst = Math.max(worst, Math.abs(got - truth[i]!) / scale[i]!);
      }
    }
    if (worst > this.rtol && depth < DEEPEST) {
      const middle = low + (high - low) / 2;
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

/** Coefficients, ascending, of the polynomial through the values at {@link NODES}: divided differences. */
function polynomial(values: readonly number[]): number[] {
  const d = [...values];
  for (let k = 1; k < ORDER; k++) {
    for (let i = ORDER - 1; i >= k; i--) {
      d[i] = (d[i]! - d[i - 1]!) / (NODES[i]! - NODES[i - k]!);
    }
  }
  // Newton's form multiplied out, from the innermost bracket.
  const c = new Array<number>(ORDER).fill(0);
  for (let k = ORDER - 1; k >= 0; k--) {
    for (let j = ORDER - 1; j >= 1; j--) c[j] = c[j - 1]! - NODES[k]! * c[j]!;
    c[0] = d[k]! - NODES[k]! * c[0]!;
  }
  return c;
}

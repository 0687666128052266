/**
 * A solution between the steps: on each step a cubic in the share s of the step,
 * y = (1 - s) y0 + s (y1 + (1 - s) (q2 + s q3)). Steps may come from several runs, one after the other.
 */
export class DenseSolution {
  readonly dimension: number;
  private count = 0;
  /** Start and length of each step. */
  private times = new Float64Array(2 * 64);
  /** y0, y1, q2, q3 of each step. */
  private parts: Float64Array;

  constructor(dimension: number) {
    this.dimension = dimension;
    this.parts = new Float64Array(4 * dimension * 64);
  }

  get steps(): number {
    return this.count;
  }

  startOf(step: number): number {
    return this.times[2 * step]!;
  }

  endOf(step: number): number {
    return this.times[2 * step]! + this.times[2 * step + 1]!;
  }

  /** Room for one more step; the caller writes its four parts from the offset returned. */
  append(t: number, h: number): number {
    if (2 * this.count === this.times.length) {
      this.times = grown(this.times);
      this.parts = grown(this.parts);
    }
    this.times[2 * this.count] = t;
    this.times[2 * this.count + 1] = h;
    return this.count++ * 4 * this.dimension;
  }

  /** Write component `i` of the step whose offset {@link append} gave. */
  put(offset: number, i: number, y0: number, y1: number, q2: number, q3: number): void {
    const n = this.dimension;
    this.parts[offset + i] = y0;
    this.parts[offset + n + i] = y1;
    this.parts[offset + 2 * n + i] = q2;
    this.parts[offset + 3 * n + i] = q3;
  }

  /** Cut the last step at `t`, where a run was stopped. */
  shorten(t: number): void {
    const last = this.count - 1;
    const s = (t - this.startOf(last)) / this.times[2 * last + 1]!;
    const n = this.dimension;
    const end = new Float64Array(n);
    this.at(last, t, end);
    const o = last * 4 * n;
    for (let i = 0; i < n; i++) {
      // Same cubic, written on the shorter step: match the coefficients of s² and s³.
      const q2 = this.parts[o + 2 * n + i]!;
      const q3 = this.parts[o + 3 * n + i]!;
      this.parts[o + n + i] = end[i]!;
      this.parts[o + 3 * n + i] = q3 * s * s * s;
      this.parts[o + 2 * n + i] = s * s * (q2 - q3) + q3 * s * s * s;
    }
    this.times[2 * last + 1] = t - this.startOf(last);
  }

  /** Forget every step from the one numbered `steps` on. */
  truncate(steps: number): void {
    this.count = Math.min(this.count, steps);
  }

  /** Value at `t` on step `step`. */
  at(step: number, t: number, out: Float64Array): void {
    const n = this.dimension;
    const s = (t - this.times[2 * step]!) / this.times[2 * step + 1]!;
    const r = 1 - s;
    let o = step * 4 * n;
    for (let i = 0; i < n; i++, o++) {
      out[i] =
        r * this.parts[o]! +
        s * (this.parts[o + n]! + r * (this.parts[o + 2 * n]! + s * this.parts[o + 3 * n]!));
    }
  }

  /** The step that holds `t`; an edge belongs to the earlier step; clamped to first and last. */
  stepAt(t: number): number {
    let low = 0;
    let high = this.count - 1;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (this.endOf(middle) < t) low = middle + 1;
      else high = middle;
    }
    return low;
  }

  /** Value at any `t` covered. */
  value(t: number, out: Float64Array): void {
    this.at(this.stepAt(t), t, out);
  }
}

function grown(array: Float64Array): Float64Array<ArrayBuffer> {
  const larger = new Float64Array(2 * array.length);
  larger.set(array);
  return larger;
}

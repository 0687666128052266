/** One column as it grows. */
import { cellNumber, clockSeconds, dateSeconds, type TimeForm } from './number';

export class ColumnBuilder {
  private values = new Float64Array(1024);
  private count = 0;
  /** Cells with nothing in them, and with something that is no number. */
  empty = 0;
  text = 0;
  /** The first few texts met, each once. */
  readonly examples: string[] = [];

  constructor(
    readonly form: TimeForm | null,
    private readonly decimalComma: boolean,
  ) {}

  /** A cell that reads as a plain number; in a column of clocks or dates that is none of them. */
  number(value: number): void {
    if (this.form === 'number' || this.form === null) this.put(value);
    else this.cell(String(value));
  }

  cell(cell: string): void {
    const text = cell.trim();
    if (text === '') {
      this.empty++;
      this.put(NaN);
      return;
    }
    const value = this.read(text);
    if (Number.isNaN(value)) {
      this.text++;
      const example = text.slice(0, 40);
      if (this.examples.length < 4 && !this.examples.includes(example)) this.examples.push(example);
    }
    this.put(value);
  }

  /** Whether any cell was a number. */
  get holdsNumbers(): boolean {
    return this.values.subarray(0, this.count).some(Number.isFinite);
  }

  finish(): Float64Array {
    return this.values.slice(0, this.count);
  }

  private read(text: string): number {
    if (this.form === 'clock') return clockSeconds(text);
    if (this.form === 'date') return dateSeconds(text);
    return cellNumber(text, this.decimalComma);
  }

  private put(value: number): void {
    if (this.count === this.values.length) {
      const larger = new Float64Array(2 * this.values.length);
      larger.set(this.values);
      this.values = larger;
    }
    this.values[this.count++] = value;
  }
}

/** The columns of a log as its rows come in. */
import { ColumnBuilder } from './column';
import { LogError, type LogNote } from './errors';
import type { Layout } from './layout';
import { LIMITS } from './limits';
import { counted, times } from './plural';

export class Table {
  readonly columns: readonly ColumnBuilder[];
  rows = 0;
  private short = 0;
  private long = 0;
  private repeated = 0;

  constructor(private readonly layout: Layout) {
    this.columns = layout.forms.map((form) => new ColumnBuilder(form, layout.decimalComma));
  }

  /** Whether a row is the heading over again, as a logger writes it after a break. */
  isHeading(cells: readonly string[]): boolean {
    return this.layout.repeats.some((names) =>
      names.every((name, j) => name.trim() === (cells[j] ?? '').trim()),
    );
  }

  /** Whether a row that begins so may be the heading over again. */
  mayBeHeading(firstCell: string): boolean {
    return this.layout.repeats.some(([name]) => name!.trim() === firstCell.trim());
  }

  row(cells: readonly string[]): void {
    if (this.mayBeHeading(cells[0] ?? '') && this.isHeading(cells)) {
      this.skipHeading();
      return;
    }
    for (let j = 0; j < this.columns.length && j < cells.length; j++)
      this.columns[j]!.cell(cells[j]!);
    this.ended(
      cells.length,
      cells.slice(this.columns.length).some((cell) => cell.trim() !== ''),
    );
  }

  skipHeading(): void {
    this.repeated++;
  }

  /** A row of `cells` cells is in; `more`: something stood beyond the last column. */
  ended(cells: number, more: boolean): void {
    const { columns } = this;
    if (cells < columns.length) {
      this.short++;
      for (let j = cells; j < columns.length; j++) columns[j]!.cell('');
    }
    if (more) this.long++;
    this.rows++;
    if (this.rows > LIMITS.rows || this.rows * columns.length > LIMITS.cells)
      throw new LogError(
        'too-many-rows',
        `More than ${this.rows - 1} rows of ${columns.length} columns. Cut the log to the drive that matters, or leave out channels.`,
        { limit: this.rows - 1 },
      );
  }

  notes(): LogNote[] {
    const { short, long, repeated } = this;
    const notes: LogNote[] = [];
    const say = (code: string, count: number, message: string, column?: string) =>
      notes.push({ code, count, message, column });
    if (repeated > 0)
      say('repeated-header', repeated, `The heading comes again ${times(repeated)}; skipped.`);
    if (short > 0)
      say('short-rows', short, `Rows with too few cells: ${short}; what is missing is a gap.`);
    if (long > 0)
      say(
        'long-rows',
        long,
        `Rows with more cells than there are columns: ${long}; the rest is not read.`,
      );
    this.columns.forEach((column, j) => {
      const { text, examples } = column;
      const name = this.layout.headings[j]!.text;
      if (text > 0 && !column.holdsNumbers)
        say('text-column', text, `${name} holds no numbers.`, name);
      else if (text > 0)
        say(
          'text-cells',
          text,
          `${name}: ${counted(text, 'cell is', 'cells are')} text (${examples.join(', ')}); taken as ${text === 1 ? 'a gap' : 'gaps'}.`,
          name,
        );
    });
    return notes;
  }
}

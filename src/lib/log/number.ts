/** Cells to numbers: the plain ones fast, times of day and dates by their parts, everything else NaN. */

const PLAIN = /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i;

/**
 * Number in a cell; NaN where there is none. `12.5`, `-0,5` (with a decimal comma), `1.2e-3`, blanks
 * around. A thousands mark is refused: it cannot be told from a decimal mark.
 */
export function cellNumber(cell: string, decimalComma: boolean): number {
  const text = decimalComma ? cell.replace(',', '.').trim() : cell.trim();
  return PLAIN.test(text) ? Number(text) : NaN;
}

/** How a column writes its time. */
export type TimeForm = 'number' | 'clock' | 'date';

const CLOCK = /^(?:(\d{1,3}):)?(\d{1,2}):(\d{1,2})(?:[.,:](\d+))?\s*(am|pm)?$/i;
const ISO = /^(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})[T\s]+(.+?)(Z|[+-]\d{2}:?\d{2})?$/i;
/** Day first with points, month first with strokes, as each is written where it is used. */
const POINTS = /^(\d{1,2})\.(\d{1,2})\.(\d{4})[,\s]+(.+)$/;
const STROKES = /^(\d{1,2})\/(\d{1,2})\/(\d{4})[,\s]+(.+)$/;

/** Seconds of a time of day or a running clock `h:mm:ss.s`, `mm:ss.s`; NaN where it is none. */
export function clockSeconds(cell: string): number {
  const match = CLOCK.exec(cell.trim());
  if (!match) return NaN;
  const [, h, m, s, fraction, half] = match;
  let hours = Number(h ?? 0);
  if (half) hours = (hours % 12) + (half.toLowerCase() === 'pm' ? 12 : 0);
  if (Number(m) > 59 || Number(s) > 60) return NaN;
  return hours * 3600 + Number(m) * 60 + Number(s) + (fraction ? Number(`0.${fraction}`) : 0);
}

/** Seconds of a date with a time; zone marks are left out, a log keeps one zone. */
export function dateSeconds(cell: string): number {
  const text = cell.trim();
  const iso = ISO.exec(text);
  if (iso) return joined(iso[1]!, iso[2]!, iso[3]!, iso[4]!);
  const points = POINTS.exec(text);
  if (points) return joined(points[3]!, points[2]!, points[1]!, points[4]!);
  const strokes = STROKES.exec(text);
  if (strokes) return joined(strokes[3]!, strokes[1]!, strokes[2]!, strokes[4]!);
  return NaN;
}

function joined(year: string, month: string, day: string, clock: string): number {
  const days = Date.UTC(Number(year), Number(month) - 1, Number(day)) / 1000;
  return days + clockSeconds(/^\d{1,2}:\d{2}$/.test(clock) ? `${clock}:00` : clock);
}

/** The form most of the cells given have; null where none fits half of them. */
export function timeFormOf(cells: readonly string[], decimalComma: boolean): TimeForm | null {
  const filled = cells.filter((cell) => cell.trim() !== '');
  const share = (read: (cell: string) => number) =>
    filled.filter((cell) => Number.isFinite(read(cell))).length / filled.length;
  if (filled.length === 0) return null;
  if (share((cell) => cellNumber(cell, decimalComma)) >= 0.5) return 'number';
  if (share(dateSeconds) >= 0.5) return 'date';
  if (share(clockSeconds) >= 0.5) return 'clock';
  return null;
}

/** Where direct labels go so that none covers another. Pure geometry in pixels. */

/** Mean width of a letter of the text face, in its size. */
const LETTER = 0.53;

/** Rough width of a text; good enough to reserve room. */
export const textWidth = (text: string, size: number): number => text.length * size * LETTER;

/** Break a text into lines of at most `width` px, at spaces. */
export function wrap(text: string, width: number, size: number): string[] {
  const lines: string[] = [];
  for (const word of text.split(' ')) {
    const last = lines.at(-1);
    if (last !== undefined && textWidth(`${last} ${word}`, size) <= width) {
      lines[lines.length - 1] = `${last} ${word}`;
    } else lines.push(word);
  }
  return lines;
}

export interface Wish {
  /** Where the middle of the label would like to be, and how tall it is. */
  readonly at: number;
  readonly height: number;
}

/**
 * Middles of labels in one column, moved apart as little as they need to be and kept between `low`
 * and `high`. Labels keep their order; what does not fit at all overlaps evenly at the ends.
 */
export function spread(wishes: readonly Wish[], low: number, high: number): number[] {
  const order = wishes.map((_, i) => i).toSorted((a, b) => wishes[a]!.at - wishes[b]!.at);
  const placed = new Array<number>(wishes.length).fill(0);
  let edge = low;
  for (const i of order) {
    const { at, height } = wishes[i]!;
    placed[i] = Math.max(at, edge + height / 2);
    edge = placed[i]! + height / 2;
  }
  edge = high;
  for (const i of order.toReversed()) {
    const { height } = wishes[i]!;
    placed[i] = Math.min(placed[i]!, edge - height / 2);
    edge = placed[i]! - height / 2;
  }
  return placed;
}

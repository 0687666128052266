/** What stands at each spot of a plot and where: its words, or a number where words have no room. */
import { differenceOf, shown, spreadText, worded } from '../format';
import type { UnitSystem } from '../types';
import type { Chart, Spot } from './chart';
import { textWidth } from './labels';
import { place, type Box, type Pixel, type Placed } from './place';
import { TEXT_SIZE } from './theme';

export const LINE_HEIGHT = TEXT_SIZE * 1.2;

/** Both values of a spot in words. */
export const spotValues = (spot: Spot, chart: Chart, system: UnitSystem): string =>
  `${worded(spot.x, chart.x.quantity, system)}, ${withSpread(spot, chart, system)}`;

function withSpread({ y, plusMinus }: Spot, { y: axis }: Chart, system: UnitSystem): string {
  const { text, unit } = shown(y, axis.quantity, system);
  const spread =
    plusMinus === undefined
      ? ''
      : `\u00a0±\u00a0${spreadText(plusMinus, differenceOf(axis.quantity), system, y)}`;
  return `${text}${spread}${unit && `\u00a0${unit}`}`;
}

/** So many names fit into a narrow plot. */
const FEW_LABELS = 4;

export interface SpotLabel {
  readonly lines: readonly string[];
  readonly where: Placed;
}

export interface SpotLabels {
  readonly labels: readonly SpotLabel[];
  /** Each spot bears a number, and a key below the plot must tell them. */
  readonly numbered: boolean;
}

export interface Room {
  readonly frame: Box;
  /** The curves as dots, so that covering them can be counted. */
  readonly dots: readonly Pixel[];
  /** Other words of the plot. */
  readonly taken: readonly Box[];
  /** A key below the plot tells the values. */
  readonly compact: boolean;
}

/** Labels of the spots at these pixels; numbers where their words would cover others or leave the frame. */
export function labelSpots(
  chart: Chart,
  at: readonly Pixel[],
  system: UnitSystem,
  room: Room,
): SpotLabels {
  const spots = chart.spots ?? [];
  if (!room.compact || spots.length <= FEW_LABELS) {
    const words = spots.map((spot) =>
      room.compact ? [spot.label] : [spot.label, spotValues(spot, chart, system)],
    );
    const labels = placed(words, at, room);
    if (isClear(labels, room)) return { labels, numbered: false };
  }
  const numbers = spots.map((_, i) => [String(i + 1)]);
  return { labels: placed(numbers, at, room), numbered: true };
}

/** Room kept beside a label, so that two numbers are not read as one, px. */
const APART = 5;

function placed(
  words: readonly (readonly string[])[],
  at: readonly Pixel[],
  { frame, dots, taken }: Room,
): SpotLabel[] {
  // A marker is as much in the way as a label.
  const boxes = [
    ...taken,
    ...at.map(([x, y]) => ({ left: x - 11, right: x + 11, top: y - 11, bottom: y + 11 })),
  ];
  return words.map((lines, i) => {
    const width = Math.max(...lines.map((line) => textWidth(line, TEXT_SIZE))) * 1.06;
    const where = place(at[i]!, { width, height: lines.length * LINE_HEIGHT }, frame, dots, boxes);
    boxes.push({ ...where.box, left: where.box.left - APART, right: where.box.right + APART });
    return { lines, where };
  });
}

/** Letters end within their lines: so much of two boxes, or of one and the frame, may meet, px. */
const SLACK = 2;

const meet = (a: Box, b: Box) =>
  Math.min(a.right, b.right) - Math.max(a.left, b.left) > SLACK &&
  Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top) > SLACK;

const within = (box: Box, frame: Box) =>
  box.left >= frame.left - SLACK &&
  box.right <= frame.right + SLACK &&
  box.top >= frame.top - SLACK &&
  box.bottom <= frame.bottom + SLACK;

const isClear = (labels: readonly SpotLabel[], { frame, taken }: Room) =>
  labels.every(
    ({ where: { box } }, i) =>
      within(box, frame) &&
      ![...taken, ...labels.slice(0, i).map(({ where }) => where.box)].some((b) => meet(b, box)),
  );

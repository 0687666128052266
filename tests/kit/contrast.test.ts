import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';

// Ratios and limits: WCAG 2.2, success criteria 1.4.3 (text, 4.5), 1.4.11 (non-text, 3), and the
// definitions of "relative luminance" and "contrast ratio" there (formulas from memory).
const css = readFileSync('src/lib/kit/styles/tokens.css', 'utf8');
const pairs = new Map(
  [...css.matchAll(/--([\w-]+): light-dark\((#[0-9a-f]{6}), (#[0-9a-f]{6})\)/g)].map((m) => [
    m[1]!,
    [m[2]!, m[3]!] as const,
  ]),
);

function luminance(hex: string): number {
  const [r, g, b] = [1, 3, 5].map((i) => {
    const c = parseInt(hex.slice(i, i + 2), 16) / 255;
    return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
  }) as [number, number, number];
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}

function contrast(a: string, b: string): number {
  const [low, high] = [luminance(a), luminance(b)].toSorted((x, y) => x - y) as [number, number];
  return (high + 0.05) / (low + 0.05);
}

const TEXT = ['ink', 'ink-soft', 'accent', 'found', 'candidate', 'info', 'good', 'watch', 'act'];
const PAPERS = ['paper', 'paper-sunk', 'paper-raised', 'field'];
const NON_TEXT = [
  'rule-strong',
  'focus',
  'heat-0',
  'heat-1',
  'heat-2',
  'heat-3',
  'heat-4',
  'heat-5',
  'heat-6',
];
const cases = [
  ...TEXT.flatMap((ink) => PAPERS.map((paper) => [ink, paper, 4.5] as const)),
  ...NON_TEXT.map((ink) => [ink, 'paper', 3] as const),
  ['accent-ink', 'accent', 4.5] as const,
  ['act-ink', 'act', 4.5] as const,
  ['focus', 'field', 3] as const,
  ['rule-strong', 'field', 3] as const,
  // Ends of the ramp also letter their curves.
  ['heat-0', 'paper', 4.5] as const,
  ['heat-6', 'paper', 4.5] as const,
];

describe.each([
  ['light', 0],
  ['dark', 1],
] as const)('%s theme', (_, theme) => {
  it.each(cases)('%s on %s reaches %f to 1', (ink, paper, least) => {
    expect(contrast(pairs.get(ink)![theme], pairs.get(paper)![theme])).toBeGreaterThanOrEqual(
      least,
    );
  });
});

it('knows black on white to be 21 to 1', () => {
  expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 10);
});

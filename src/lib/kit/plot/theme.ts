/**
 * Inks and strokes of plots. Colours are the page's own variables, so a change of theme, or print,
 * recolours a plot without drawing it again.
 */
import type { SideName } from '../types';
import type { Tone } from './chart';

interface SideStyle {
  readonly stroke: string;
  readonly wash: string;
  readonly dash: string | undefined;
  readonly width: number;
  readonly symbol: 'circle' | 'diamond2';
  /** Inside of the marker: full for as found, paper for the candidate. */
  readonly fill: string;
}

/** The two sides: colour, line, weight and marker all differ, so that black and white is enough. */
export const SIDE_STYLE: Readonly<Record<SideName, SideStyle>> = {
  found: {
    stroke: 'var(--found)',
    wash: 'var(--found)',
    dash: undefined,
    width: 2.75,
    symbol: 'circle',
    fill: 'var(--found)',
  },
  candidate: {
    stroke: 'var(--candidate)',
    wash: 'var(--candidate)',
    dash: '8 5',
    width: 2.5,
    symbol: 'diamond2',
    fill: 'var(--paper)',
  },
};

export const TEXT_SIZE = 13;

const TONE: Readonly<Partial<Record<Tone, string>>> = {
  soft: 'var(--ink-soft)',
  cold: 'var(--heat-0)',
  hot: 'var(--heat-6)',
};

/** CSS colour of a tone. */
export const toneColour = (tone: Tone): string => TONE[tone] ?? `var(--${tone})`;

/** Ink of a mark: its tone, else its side's. */
export const inkOf = (mark: { side?: SideName; tone?: Tone }): string =>
  mark.tone ? toneColour(mark.tone) : SIDE_STYLE[mark.side ?? 'found'].stroke;

/** Steps of the ramp from cold to hot. */
const HEAT_STEPS = 6;

/** CSS colour between cold (0) and hot (1) that follows the theme; beyond the ends it stays at them. */
export function heatColour(fraction: number): string {
  const at = Math.min(1, Math.max(0, fraction)) * HEAT_STEPS;
  const step = Math.min(HEAT_STEPS - 1, Math.floor(at));
  const share = Math.round((at - step) * 100);
  if (share === 0) return `var(--heat-${step})`;
  if (share === 100) return `var(--heat-${step + 1})`;
  return `color-mix(in oklab, var(--heat-${step + 1}) ${share}%, var(--heat-${step}))`;
}

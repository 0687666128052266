/**
 * Numbers put in, without setting the formula anew. The line is typeset once with each number in a
 * marked slot; while the shape of the line stays, an edit changes only the text in the slots.
 */
import katex from 'katex';
import { formatQuantity, type UnitSystem } from '$lib/units';
import type { Evaluated } from './types';

/** The digits of a number, without sign, power of ten and unit: those belong to the shape. */
const DIGITS = /\d[\d.]*/;

export interface SlotLine {
  /** Equal shapes differ in their digits only. */
  readonly shape: string;
  /** TeX with each number's digits in `\htmlData{slot=…}`. */
  readonly tex: string;
  readonly digits: readonly string[];
}

/** The right side of an evaluated formula with numbers put in, cut into shape and digits. */
export function slotLine({ formula, x }: Evaluated, system: UnitSystem): SlotLine {
  const digits: string[] = [];
  const tex = formula.texWith(x, (value, quantity) =>
    formatQuantity(value, quantity, system).tex.replace(DIGITS, (text) => {
      digits.push(text);
      return `\\htmlData{slot=${digits.length - 1}}{${text}}`;
    }),
  );
  return {
    shape: tex.replace(/(\\htmlData\{slot=\d+\})\{[^}]*\}/g, '$1'),
    tex: `=\\nobreak ${tex}`,
    digits,
  };
}

/** Markup of a line with slots; only the marking of slots is trusted. */
export const slotMarkup = (line: SlotLine): string =>
  katex.renderToString(`\\displaystyle ${line.tex}`, {
    output: 'html',
    throwOnError: false,
    strict: 'ignore',
    trust: ({ command }) => command === '\\htmlData',
  });

/** Text nodes of the slots under `root`, or null where a slot is not one plain text. */
export function slotTexts(root: Element, line: SlotLine): Text[] | null {
  const texts: Text[] = [];
  for (const [i, digits] of line.digits.entries()) {
    let node: Node | null = root.querySelector(`[data-slot="${i}"]`);
    // The text comes first; before a times sign KaTeX adds an empty space behind it.
    while (node && node.nodeType !== Node.TEXT_NODE) node = node.firstChild;
    if (!(node instanceof Text) || node.data !== digits) return null;
    texts.push(node);
  }
  return texts;
}

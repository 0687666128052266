/** The symbols of a sheet's lines by names that can be typed: `\dot Q_c` is `Q_c`, `\varepsilon` is `eps`. */
import type { Line } from '$lib/solver/formula';
import type { Quantity } from '$lib/solver/quantity';

export interface SheetSymbol {
  /** As it is typed. */
  readonly name: string;
  readonly tex: string;
  readonly means: string;
  readonly quantity: Quantity;
  /** SI. */
  readonly value: number;
}

export interface SheetSymbols {
  /** By every name that is accepted, the longer ones of a single line included. */
  readonly byName: ReadonlyMap<string, SheetSymbol>;
  /** Those worth offering, in the order of the lines. */
  readonly offered: readonly SheetSymbol[];
  /** Names that stand for several values, and what to write instead. */
  readonly ambiguous: ReadonlyMap<string, readonly string[]>;
}

const GREEK: Readonly<Record<string, string>> = {
  varepsilon: 'eps',
  epsilon: 'eps',
  varphi: 'phi',
};

/** The name under which a symbol is typed; null when nothing typeable is left of it. */
export function typedName(tex: string): string | null {
  const name = tex
    .replace(/\\(mathrm|text|operatorname|dot|bar|mathit)\b/g, '')
    .replace(/\\Delta\s*/g, 'd')
    .replace(/\\([A-Za-z]+)/g, (_, word: string) => GREEK[word] ?? word)
    .replace(/[{}\s]/g, '')
    .replace(/[^A-Za-z0-9_]+/g, '_')
    .replace(/_+/g, '_')
    .replace(/^_|_$/g, '');
  return /^[A-Za-z][A-Za-z0-9_]*$/.test(name) ? name : null;
}

/** Words the parser keeps for itself, or that would mislead. */
export const RESERVED = new Set([
  ...['true', 'false', 'null', 'undefined', 'NaN', 'Infinity', 'end', 'i', 'e', 'F', 'C'],
  ...['in', 'to', 'mod', 'and', 'or', 'xor', 'not', 'constructor', 'prototype'],
]);

interface Occurrence extends SheetSymbol {
  readonly line: string;
  /** What this line finds; otherwise what goes into it. */
  readonly result: boolean;
}

/** Last bits may differ between what one line gives and the next is given. */
const SAME_WITHIN = 1e-9;
const isSame = (a: SheetSymbol, b: SheetSymbol) =>
  Math.abs(a.value - b.value) <= SAME_WITHIN * Math.max(Math.abs(a.value), Math.abs(b.value));

const made = new WeakMap<readonly Line[], SheetSymbols>();

/** The symbols of these lines; the same lines give the same object. */
export function sheetSymbols(lines: readonly Line[]): SheetSymbols {
  let symbols = made.get(lines);
  if (!symbols) made.set(lines, (symbols = collected(occurrences(lines))));
  return symbols;
}

function collected(all: readonly Occurrence[]): SheetSymbols {
  const byPlain = new Map<string, Occurrence[]>();
  for (const one of all) byPlain.set(one.name, [...(byPlain.get(one.name) ?? []), one]);

  const byName = new Map<string, SheetSymbol>();
  const offered: SheetSymbol[] = [];
  const ambiguous = new Map<string, readonly string[]>();
  for (const [name, ones] of byPlain) {
    const first = ones.find((one) => one.result) ?? ones[0]!;
    // Each line's own name always works, whether or not the short one does at present.
    const single = new Map<string, SheetSymbol>();
    for (const one of ones) {
      const long = `${name}_at_${one.line.replace(/[^A-Za-z0-9]+/g, '_')}`;
      if (!single.has(long)) single.set(long, { ...one, name: long });
    }
    for (const [long, symbol] of single) byName.set(long, symbol);
    if (ones.every((one) => isSame(one, first))) {
      byName.set(name, first);
      offered.push(first);
    } else {
      ambiguous.set(name, [...single.keys()]);
      offered.push(...single.values());
    }
  }
  return { byName, offered, ambiguous };
}

function occurrences(lines: readonly Line[]): Occurrence[] {
  const found: Occurrence[] = [];
  const add = (
    term: { tex: string; quantity: Quantity; name: string },
    value: number | undefined,
    line: string,
    result: boolean,
  ) => {
    const name = typedName(term.tex);
    if (name === null || value === undefined || !Number.isFinite(value)) return;
    const { tex, quantity, name: means } = term;
    found.push({ name, tex, means, quantity, value, line, result });
  };
  for (const line of lines) {
    const parts = line.kind === 'formula' ? [line] : [line.left, line.right];
    for (const { formula, x } of parts) {
      for (const [key, term] of Object.entries(formula.terms)) add(term, x[key], line.id, false);
    }
    if (line.kind === 'formula') add(line.formula.gives, line.value, line.id, true);
    else add(line.unknown, line.unknown.value, line.id, true);
  }
  return found;
}

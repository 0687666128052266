/**
 * The symbols printed beside inputs, by names that can be typed. A symbol of the sheet's lines or of the
 * reader's own lines goes first; what several inputs share is told apart by the input's path.
 */
import { isFunction, unitWord } from '$lib/units/expression';
import type { Quantity } from '$lib/solver/quantity';
import { FIELDS } from '../fields';
import type { Values } from '../value';
import { RESERVED, typedName } from './ownSymbols';

export interface InputSymbol {
  readonly tex: string;
  readonly quantity: Quantity;
  /** SI. */
  readonly value: number;
}

export interface InputSymbols {
  /** By every name that is accepted: the short one where one input alone has it, and one for each input. */
  readonly byName: ReadonlyMap<string, InputSymbol>;
  /** Short names that several inputs have, and what to write instead. */
  readonly ambiguous: ReadonlyMap<string, readonly string[]>;
}

const made = new WeakMap<Values, InputSymbols>();

/** Of one side's inputs; the same values give the same object. */
export function inputSymbols(values: Values): InputSymbols {
  let symbols = made.get(values);
  if (!symbols) made.set(values, (symbols = collected(values)));
  return symbols;
}

function collected(values: Values): InputSymbols {
  const byName = new Map<string, InputSymbol>();
  const short = new Map<string, string[]>();
  for (const [path, field] of FIELDS) {
    const value = values[path]?.si;
    if (field.kind !== 'quantity' || !field.symbol || value === undefined) continue;
    const name = typedName(field.symbol);
    if (name === null) continue;
    const long = `${name}_at_${path.replace(/[^A-Za-z0-9]+/g, '_')}`;
    byName.set(long, { tex: field.symbol, quantity: field.quantity, value });
    // A word of the language stays one.
    if (!unitWord(name) && !isFunction(name) && !RESERVED.has(name))
      short.set(name, [...(short.get(name) ?? []), long]);
  }
  const ambiguous = new Map<string, readonly string[]>();
  for (const [name, longs] of short) {
    if (longs.length === 1) byName.set(name, byName.get(longs[0]!)!);
    else ambiguous.set(name, longs);
  }
  return { byName, ambiguous };
}

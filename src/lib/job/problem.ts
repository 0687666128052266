/** A refusal of the solver, worded for the person who typed: which field, in which units. */
import { SolverError } from '$lib/solver/errors';
import { showQuantity, type UnitSystem } from '$lib/units';
import { FIELDS } from './fields';
import type { OutcomeProblem } from './types';

/** Names of the solver that differ from the field's path. */
const RENAMED: readonly (readonly [solver: RegExp, field: string])[] = [
  [/^hoses\./, 'hose.'],
  [/^duties\./, 'duty.'],
  [/^(?:coolant\.)?massFraction$/, 'coolant.share'],
  [/\.points$/, ''],
  [/Loss\.exponent$/, 'LossExponent'],
  [/^reservoir\.liquidVolume$/, 'reservoir.volume'],
  [/^reservoir\.capGauge$/, 'reservoir.cap'],
  [/^reservoir\.levelAbovePump$/, 'reservoir.level'],
  [/\.metalCapacity$/, '.metal'],
  [/^inletLoss$/, 'engine.inletLoss'],
  [/^site\.ambientTemperature$/, 'site.ambient'],
  [/^site\.relativeHumidity$/, 'site.humidity'],
  [/\.manifoldGauge$/, '.manifold'],
  [/\.vehicleSpeed$/, '.speed'],
  [/\.air\.(\w+)$/, '.$1'],
];

/** Last word of a path, where only one field ends so: laws name a symbol, not a path. */
const byLastWord = new Map<string, string | null>();
for (const path of FIELDS.keys()) {
  const word = path.slice(path.lastIndexOf('.') + 1);
  byLastWord.set(word, byLastWord.has(word) ? null : path);
}

/** The field that the solver's name for a quantity stands for. */
export function fieldPathOf(quantity: string): string | undefined {
  let path = quantity;
  for (const [solver, field] of RENAMED) path = path.replace(solver, field);
  if (FIELDS.has(path)) return path;
  return byLastWord.get(path) ?? undefined;
}

/** Word what was thrown. Anything but a refusal of the solver is a fault of the program and says so. */
export function problemOf(thrown: unknown, units: UnitSystem): OutcomeProblem {
  if (!(thrown instanceof SolverError)) {
    const message = thrown instanceof Error ? thrown.message : String(thrown);
    return {
      code: 'program-fault',
      message: `The calculation failed in a way it should not: ${message}`,
    };
  }
  const { code, quantity, value, range } = thrown.facts;
  const path = quantity === undefined ? undefined : fieldPathOf(quantity);
  const field = path === undefined ? undefined : FIELDS.get(path);
  if (
    field &&
    code === 'out-of-range' &&
    range &&
    value !== undefined &&
    field.kind === 'quantity'
  ) {
    const show = (x: number) => showQuantity(x, field.quantity, units, { digits: 3 });
    return {
      code,
      message: `${field.label}: ${show(value)} is outside ${show(range[0])} to ${show(range[1])}.`,
      path: path!,
    };
  }
  const words = capital(thrown.message);
  return {
    code,
    message: field ? `${field.label}: ${thrown.message}.` : `${words}.`,
    ...(path === undefined ? {} : { path }),
  };
}

const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);

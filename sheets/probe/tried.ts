/** The solver's answer or its refusal, worded with numbers in the reader's units. */
import { FIELDS } from '$lib/job/fields';
import { fieldPathOf, problemOf } from '$lib/job/problem';
import type { Outcome } from '$lib/job/types';
import { SolverError } from '$lib/solver/errors';
import type { Quantity } from '$lib/solver/quantity';
import { q, say, type Sentence } from '../types';

export type Tried<T> =
  | Extract<Outcome<T>, { ok: true }>
  | (Extract<Outcome<T>, { ok: false }> & { readonly sentence: Sentence });

export function tried<T>(work: () => T): Tried<T> {
  try {
    return { ok: true, value: work() };
  } catch (thrown) {
    const problem = problemOf(thrown, 'US');
    return { ok: false, problem, sentence: refusal(thrown) ?? say`${problem.message}` };
  }
}

const END = {
  'probe-open': [
    'the cold end of the reader’s table',
    'an open circuit: a plug that is off, a broken lead, a pin that does not touch',
  ],
  'probe-short': [
    'the hot end of the reader’s table',
    'a short circuit: a chafed lead, water in the plug, two pins that touch',
  ],
} as const;

/** Symbols of the probe's laws that are no field of the job. */
const SYMBOLS: Readonly<Record<string, Quantity>> = { T: 'temperature', R: 'resistance' };

/** Null where the message has no number of its own. */
function refusal(thrown: unknown): Sentence | null {
  if (!(thrown instanceof SolverError)) return null;
  const { code, quantity = '', value, range, law } = thrown.facts;
  if (value === undefined || !range) return null;
  if (code === 'probe-open' || code === 'probe-short') {
    const [where, looks] = END[code];
    const end = q(range[code === 'probe-open' ? 0 : 1], 'temperature');
    return say`${q(value, 'temperature')} lies at or beyond ${where}, ${end}: what readers show with ${looks}. It may also be a reader that is not set to this probe.`;
  }
  const field = FIELDS.get(fieldPathOf(quantity) ?? '');
  const kind = field?.kind === 'quantity' ? field.quantity : SYMBOLS[quantity];
  if (code !== 'out-of-range' || !kind) return null;
  const name = field?.label ?? (law ? law.charAt(0).toUpperCase() + law.slice(1) : 'The law');
  return say`${name}: ${q(value, kind)} is outside ${q(range[0], kind)} to ${q(range[1], kind)}.`;
}

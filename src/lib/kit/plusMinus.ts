/** The kinds of a ±, in the words of the blank and of the print. */
import type { FieldNotes, SpreadKind } from './types';

interface KindWords {
  readonly value: SpreadKind;
  /** On the blank. */
  readonly label: string;
  /** Behind the ± in print; empty for the usual kind. */
  readonly printed: string;
}

export const SPREAD_KINDS: readonly KindWords[] = [
  { value: 'normal', label: 'nearly always within', printed: '' },
  { value: 'interval', label: 'anywhere within, none likelier', printed: 'anywhere within' },
  {
    value: 'triangular',
    label: 'likeliest at the value, bounded',
    printed: 'likeliest at the value',
  },
  { value: 'calibration', label: 'from a calibration, k =', printed: 'calibration' },
];

/** Coverage factor where none is stated. */
export const USUAL_K = '2';

/** A ± with its kind, as one text: `± 2 °F, anywhere within`, `+3 °F / −1 °F, likeliest at the value`. */
export function plusMinusWords({ plusMinus, spread, k }: FieldNotes): string {
  if (!plusMinus) return '';
  const { printed } = SPREAD_KINDS.find(({ value }) => value === (spread ?? 'normal'))!;
  const factor =
    spread === 'calibration' ? `k = ${(k || USUAL_K).replace(/^\s*k\s*=?\s*/i, '')}` : '';
  const bare = plusMinus.replace(/^\s*± */, '');
  // One that says up and down needs no ± before it.
  const half = /^[+−-]/.test(bare) ? bare : `± ${bare}`;
  return [half, printed, factor].filter(Boolean).join(', ');
}

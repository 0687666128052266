/** A stretch of a log and what it is for. */
import type { Stretch } from '$lib/log/worker/messages';

export interface Span extends Stretch {
  readonly use: 'fit' | 'hold-out';
}

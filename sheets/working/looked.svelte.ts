/**
 * Whether any part of a sheet that waits for another thread has been looked at. Every such part watches
 * for itself: a reader who lands far down the sheet never passes its head.
 */
import { whenNear } from '$lib/kit/near';

export class Looked {
  /** Stays so: what was asked for once is asked for again on every edit. */
  near = $state(false);
  /** On paper nothing can wait: what is not there is worked out at once. */
  onPaper = $state(false);
  /** Attachment of a part that needs the work. */
  readonly watch = whenNear((near, onPaper) => {
    this.near ||= near;
    this.onPaper = onPaper;
  });
}

/** What a sheet waits for, told by each of its parts in its own place. */
export interface Awaited {
  readonly looked: Looked;
  readonly there: boolean;
  /** Where it comes in several steps, which of them is there. */
  readonly stage?: string;
  /** What is under way, after “Working out”. */
  readonly what: string;
  /** Why it is not under way, where the reader stopped it; empty otherwise. */
  readonly stopped?: string;
  resume?(): void;
}

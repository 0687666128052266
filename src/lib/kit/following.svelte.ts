/** A value that follows another, one frame behind it: see afterPaint.ts. */
import { untrack } from 'svelte';
import { afterPaint } from './afterPaint';

/** `now` is what `read` gave last; a change of it shows after the frame that shows the edit. */
export function following<T>(read: () => T): { readonly now: T } {
  let shown = $state.raw(untrack(read));
  $effect.pre(() => {
    const next = read();
    if (next === untrack(() => shown)) return;
    return afterPaint(() => (shown = next));
  });
  return {
    get now() {
      return shown;
    },
  };
}

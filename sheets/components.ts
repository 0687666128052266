/** The drawn half of every sheet, loaded only when its page opens. */
import type { Component } from 'svelte';

const found = import.meta.glob<{ default: Component }>('./*/Sheet.svelte');

/** How to load the sheet of that slug; nothing when there is none. */
export const loadSheet = (slug: string): (() => Promise<{ default: Component }>) | undefined =>
  found[`./${slug}/Sheet.svelte`];

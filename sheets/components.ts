/** The drawn half of every sheet, loaded only when its page opens. */
import type { Component } from 'svelte';

/** By slug. */
export const COMPONENTS: Readonly<Record<string, () => Promise<{ default: Component }>>> = {
  'loop-balance': () => import('./loop-balance/Sheet.svelte'),
  'pump-and-restriction': () => import('./pump-and-restriction/Sheet.svelte'),
  'fans-and-face-airflow': () => import('./fans-and-face-airflow/Sheet.svelte'),
  reservoir: () => import('./reservoir/Sheet.svelte'),
  'warm-up-and-recovery': () => import('./warm-up-and-recovery/Sheet.svelte'),
};

/** Terms that several formulas share. */
import type { Term } from '../formula';
import { g } from './affinity';

export const G: Term = { tex: 'g', quantity: 'acceleration', name: 'standard gravity', fixed: g };

export const RHO: Term = { tex: '\\rho', quantity: 'density', name: 'density' };

export const AFFINITY_TERMS = {
  s: { tex: 's', quantity: 'ratio', name: 'speed over rated speed' },
} as const satisfies Record<string, Term>;

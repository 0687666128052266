/** Terms that several formulas share. */
import type { Term } from '../formula';
import { g } from './affinity';

export const G: Term = { tex: 'g', quantity: 'acceleration', name: 'standard gravity', fixed: g };

export const RHO: Term = { tex: '\\rho', quantity: 'density', name: 'density' };

export const FLOW: Term = { tex: 'Q', quantity: 'volumeFlow', name: 'flow' };

export const MU: Term = { tex: '\\mu', quantity: 'viscosity', name: 'dynamic viscosity' };

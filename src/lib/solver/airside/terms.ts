/** Terms that several formulas of the air side share. */
import type { Term } from '../formula';

export const RHO: Term = { tex: '\\rho', quantity: 'density', name: 'air density' };
export const FACE: Term = { tex: 'A', quantity: 'area', name: 'face of the core' };
export const SHARE: Term = { tex: 'x', quantity: 'ratio', name: 'share of the face' };
export const U: Term = { tex: 'u', quantity: 'faceVelocity', name: 'face velocity' };

/** Numbers that enter the lines of a core beside its results. */
import { airConductivity, airCp, airViscosity } from '../../air/air';
import type { AirSide } from './airSide';
import type { CoreGeometry } from './types';

/** 1/m */
export const finsPerLength = ({ finPitch }: CoreGeometry): number => 1 / finPitch;

/** Prandtl number of air at `T`, K. */
export const prandtl = (T: number): number => (airViscosity(T) * airCp(T)) / airConductivity(T);

/** Nusselt number that stands behind a plain fin's Colburn factor: Nu = j Re Pr^(1/3). */
export const plainNusselt = ({ j, Re }: AirSide, Pr: number): number => j * Re * Math.cbrt(Pr);

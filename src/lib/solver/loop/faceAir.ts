/** Air at the face of the front exchanger. */
import { airCp } from '../air/air';
import { HOTTEST_FRESH_AIR } from './front';
import type { AirSide, FaceZone, Loop } from './types';

/** Ambient air warmed by the other cores, K; air that comes round again not counted. */
export const freshAirTemperature = ({ site }: Loop, { stackRise }: AirSide): number =>
  site.ambientTemperature + stackRise;

/** Air at the face above ambient, K: by the other cores and by what comes round again. */
export const faceAirRise = ({ site }: Loop, airAtFace: number): number =>
  airAtFace - site.ambientTemperature;

/** Specific heat of the air that enters the core, J/(kg K). */
export const faceAirCp = (loop: Loop, air: AirSide): number =>
  airCp(Math.min(freshAirTemperature(loop, air), HOTTEST_FRESH_AIR));

/** How much less the face gets for having the fans there: 0 for nothing, negative where they help. */
export const heldBack = (withFans: number, without: number): number =>
  without > 0 ? 1 - withFans / without : 0;

/** Pressure the fans take where they are in the way, Pa; 0 where they lift. */
export const heldBackPressure = ({ fanPressure }: Pick<FaceZone, 'fanPressure'>): number =>
  Math.max(0, -fanPressure);

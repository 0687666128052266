/** Effectiveness of a core from its UA, remembered while the flows stay. */
import { exchangerArrangement } from '../../cores/arrangement';
import { effectiveness } from '../../cores/effectiveness';
import type { Arrangement } from '../types';

/** Heat per kelvin between the inlets, W/K: effectiveness times the smaller capacity rate. */
export type InletConductance = (UA: number, air: number, liquid: number) => number;

/** @returns a function that works out ε-NTU only when something changed */
export function inletConductance(core: Arrangement): InletConductance {
  let last = [NaN, NaN, NaN];
  let value = 0;
  return (UA, air, liquid) => {
    if (last[0] === UA && last[1] === air && last[2] === liquid) return value;
    const least = Math.min(air, liquid);
    const arrangement = exchangerArrangement(core, air <= liquid);
    value =
      least > 0
        ? least * effectiveness({ arrangement, NTU: UA / least, Cr: least / Math.max(air, liquid) })
        : 0;
    last = [UA, air, liquid];
    return value;
  };
}

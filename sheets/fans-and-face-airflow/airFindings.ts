/** What the numbers of the air side mean, in plain words: what the air brings with it and can carry. */
import { faceAirRise } from '$lib/solver/loop/faceAir';
import type { Loop, SteadySolution } from '$lib/solver/loop/types';
import { q, say, type Finding } from '../types';

/** Rise of the air at the face worth telling, K, and share coming round (common practice, no source). */
const WARM_FACE = 3;
const MUCH_ROUND = 0.05;

/** Air that arrives warm. */
export function warmFaceFinding(loop: Loop, s: SteadySolution): Finding[] {
  const { air, front } = s;
  const rise = faceAirRise(loop, front.airIn);
  if (!(rise > WARM_FACE)) return [];
  const words = say`Air reaches the face ${q(rise, 'temperatureDifference')} above ambient.`;
  const stack =
    air.stackRise > 0
      ? say` What stands in front warms it by ${q(air.stackRise, 'temperatureDifference')}.`
      : [];
  const back =
    air.recirculation > MUCH_ROUND
      ? say` ${q(air.recirculation, 'percent')} of it is air that has been through the core and come round through gaps: sealing core to shroud and body costs less than a fan and may give as much.`
      : [];
  return [
    {
      code: 'face-warm',
      level: 'watch',
      sentence: [
        ...words,
        ...stack,
        ...back,
        ...(front.heat > 0 ? [' The liquid cannot get below that.'] : []),
      ],
    },
  ];
}

/** Which stream runs out first. */
export function capacityFinding(s: SteadySolution): Finding[] {
  const { C_air, C_liquid } = s.front;
  if (!(C_air > 0 && C_liquid > 0)) return [];
  return [
    C_air < C_liquid
      ? {
          code: 'air-limits',
          level: 'info',
          sentence: say`The air carries ${q(C_air, 'conductance')}, the liquid ${q(C_liquid, 'conductance')}: air is the smaller stream, so more air brings more than more liquid.`,
        }
      : {
          code: 'liquid-limits',
          level: 'info',
          sentence: say`The air carries ${q(C_air, 'conductance')}, the liquid ${q(C_liquid, 'conductance')}: liquid is the smaller stream, so more air brings little and more flow brings more.`,
        },
  ];
}

/** What the numbers of the air side mean, in plain words: what the air brings with it and can carry. */
import { faceVelocityWithoutOthers } from '$lib/solver/airside/curves';
import { coveredShare, stackHeatOnFace } from '$lib/solver/airside/overlap';
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
      ? say` Other cores warm it by ${q(air.stackRise, 'temperatureDifference')}${air.zones[0]!.parts ? ' on the whole' : ''}.`
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

/** Other cores over a share of the face: how unlike the two parts are, and what a clear face would get. */
export function overlapFinding(loop: Loop, s: SteadySolution): Finding[] {
  const [covered, clear] = s.air.zones[0]!.parts ?? [];
  if (!covered || !clear || !(covered.faceVelocity > 0)) return [];
  const share = q(coveredShare(loop.airPath), 'percent');
  const { vehicleSpeed } = loop.duties[s.duty];
  const bare = faceVelocityWithoutOthers(loop, vehicleSpeed);
  const warmer =
    covered.rise > 0
      ? say` and arrives ${q(covered.rise, 'temperatureDifference')} warmer than ambient`
      : [];
  return [
    {
      code: 'face-partly-covered',
      level: 'info',
      sentence: [
        ...say`Other cores cover ${share} of the face: there the air crosses at ${q(covered.faceVelocity, 'faceVelocity')}`,
        ...warmer,
        ...say`; on the clear part it crosses at ${q(clear.faceVelocity, 'faceVelocity')}. With nothing else in its air the whole core would get ${q(bare, 'faceVelocity')} instead of ${q(s.air.meanFaceVelocity, 'faceVelocity')}.`,
      ],
    },
  ];
}

/** Order of cores: heat in front is paid here, heat behind is not. */
export function orderFinding(loop: Loop, s: SteadySolution): Finding[] {
  const { airPath } = loop;
  const heat = stackHeatOnFace(airPath);
  if (!(heat > 0 && s.front.heat > 0 && s.air.totalMassFlow > 0)) return [];
  const sentence =
    airPath.stackPlace === 'behind'
      ? say`The other cores stand behind: they hold this air back, and their ${q(heat, 'heat')} goes into air that has done its work here. The price is theirs: their air comes in at ${q(s.front.airOut, 'temperature')}.`
      : say`The other cores stand in front: their ${q(heat, 'heat')} is in the air before it gets here. In the other order the air flow would be the same, this core would get cooler air and they would get its heat.`;
  return [{ code: 'order-of-cores', level: 'info', sentence }];
}

/** What the numbers of the air side mean, in plain words: the fans and the face they serve. */
import {
  faceVelocityAtRatedVolts,
  faceVelocityWithoutFans,
  fanHandover,
  freeAirShare,
  freeDeliveryOfAll,
  standingFlow,
} from '$lib/solver/airside/curves';
import { airModel } from '$lib/solver/airside/face';
import { heldBack } from '$lib/solver/loop/faceAir';
import type { Loop, SteadySolution } from '$lib/solver/loop/types';
import { q, say, type Finding } from '../types';

/** Fans pull 55 to 75 % of their free air through one core with a good shroud (from memory). */
const USUAL_SHARE = 0.55;
const USUAL = '55 to 75 % is usual, from memory';
/** Face velocity that fans alone commonly reach, m/s: 300 ft/min (common practice). */
const LOW_FACE_VELOCITY = 300 * 0.00508;
/** Shares from which a thing is worth doing something about (common practice, no source). */
const MUCH = { heldBack: 0.1, open: 0.15 } as const;
/** Less than this of rated volts and the feed is worth a meter (common practice, no source). */
const SLOW = 0.95;

/** Nothing moves: told first. */
export function stillFinding(loop: Loop, s: SteadySolution): Finding[] {
  if (s.air.totalMassFlow > 0) return [];
  const { fans } = loop;
  return [
    {
      code: 'no-air',
      level: 'act',
      sentence: say`No air moves through the front exchanger: ${fans.count === 0 ? 'there is no fan' : 'the fans stand'} and the vehicle does too. Whatever heat enters the loop stays in it.`,
    },
  ];
}

/** What the fans do, or fail to do, with the vehicle standing. */
export function standingFinding(loop: Loop): Finding[] {
  const { fans } = loop;
  const share = freeAirShare(loop);
  if (share === null) {
    const name = fans.count === 0 ? 'There is no fan' : 'The fans stand';
    return [
      {
        code: 'fans-off',
        level: 'watch',
        sentence: say`${name}: at a standstill the front exchanger gives off nothing to speak of, and the tank climbs in traffic and recovers on the road.`,
      },
    ];
  }
  const flow = q(standingFlow(loop), 'airFlow');
  const free = q(freeDeliveryOfAll(loop), 'airFlow');
  const said = q(share, 'percent');
  const first = say`Standing, the fans pull ${flow} through this stack, ${said} of the ${free} they move freely (${USUAL}).`;
  if (share < USUAL_SHARE) {
    const why =
      fans.coverage < 1 - MUCH.open
        ? say` They must draw all of it through ${q(fans.coverage, 'percent')} of the face: a shroud over the rest is the first thing to give them.`
        : say` The stack holds them back: a deeper core or one more in front costs air twice, by its drag and by its heat.`;
    return [{ code: 'fans-starved', level: 'watch', sentence: [...first, ...why] }];
  }
  return [
    {
      code: 'free-air-share',
      level: 'info',
      sentence: [...first, ' Free air is never what a core gets.'],
    },
  ];
}

/** Face velocity with fans alone, against what is common. */
export function slowFaceFinding(loop: Loop): Finding[] {
  if (freeAirShare(loop) === null) return [];
  const standing = airModel(loop).at(0).meanFaceVelocity;
  if (!(standing < LOW_FACE_VELOCITY)) return [];
  return [
    {
      code: 'face-slow',
      level: 'watch',
      sentence: say`Standing, the mean face velocity is ${q(standing, 'faceVelocity')}; fans alone usually reach more than ${q(LOW_FACE_VELOCITY, 'faceVelocity')} (common practice). In traffic the loop has little to give its heat to.`,
    },
  ];
}

/** Where the fans change from help to hindrance, and on which side this duty is. */
export function handoverFinding(loop: Loop, s: SteadySolution): Finding[] {
  const handover = fanHandover(loop);
  const { vehicleSpeed } = loop.duties[s.duty];
  const mean = s.air.meanFaceVelocity;
  const without = faceVelocityWithoutFans(loop, vehicleSpeed);
  const lost = heldBack(mean, without);
  if (handover && vehicleSpeed < handover.speed) {
    return [
      {
        code: 'fans-help',
        level: 'info',
        sentence: say`The fans help up to ${q(handover.speed, 'speed')}. From there on the wind drives more than they move and they stand in its way.`,
      },
    ];
  }
  if (!handover && freeDeliveryOfAll(loop) > 0) {
    return [
      {
        code: 'fans-help',
        level: 'info',
        sentence: say`At no road speed are the fans in the way: so little wind reaches the stack that they always add to it. Ducting from the grille to the core is worth more than another fan.`,
      },
    ];
  }
  if (loop.fans.count === 0 || !(lost > 0)) return [];
  const from = handover ? say` from ${q(handover.speed, 'speed')} on` : [];
  const words = say`At ${q(vehicleSpeed, 'speed')} the ${handover ? 'running' : 'standing'} fans are in the way`;
  return [
    {
      code: 'fans-in-the-way',
      level: lost > MUCH.heldBack ? 'watch' : 'info',
      sentence: [
        ...words,
        ...(handover ? [', as they are'] : []),
        ...from,
        ...say`: the face gets ${q(mean, 'faceVelocity')}, and ${q(without, 'faceVelocity')} without fans and shroud, ${q(lost, 'percent')} less.`,
        ...(lost > MUCH.heldBack
          ? [' Flaps in the shroud that open with the wind give it back.']
          : []),
      ],
    },
  ];
}

/** Volts lost on the way to the fans. */
export function fanVoltsFinding(loop: Loop, s: SteadySolution): Finding[] {
  const { fanSpeedRatio, zones } = s.air;
  if (!(fanSpeedRatio > 0 && fanSpeedRatio < SLOW) || !(zones[0]!.fanPressure > 0)) return [];
  const { fans, duties } = loop;
  const full = faceVelocityAtRatedVolts(loop, duties[s.duty].vehicleSpeed);
  return [
    {
      code: 'fan-volts-low',
      level: 'watch',
      sentence: say`With ${q(fans.volts, 'voltage')} on their plug instead of ${q(fans.ratedVolts, 'voltage')} the fans turn at ${q(fanSpeedRatio, 'percent')} of their speed; at full volts the face would get ${q(full, 'faceVelocity')} instead of ${q(s.air.meanFaceVelocity, 'faceVelocity')}.`,
    },
  ];
}

/** Face that no fan reaches. */
export function coverageFinding(s: SteadySolution): Finding[] {
  const open = s.air.zones.find(({ zone }) => zone === 'open');
  if (!open || !(s.air.fanSpeedRatio > 0) || !(open.share > MUCH.open)) return [];
  return [
    {
      code: 'face-open',
      level: 'watch',
      sentence: say`${q(open.share, 'percent')} of the face lies outside shroud and fans: only wind crosses it, ${q(open.faceVelocity, 'faceVelocity')} here against ${q(s.air.zones[0]!.faceVelocity, 'faceVelocity')} behind the shroud. Standing, that part does nothing. A shroud over the whole face often buys as much as a second fan.`,
    },
  ];
}

/** What the room over the liquid means. */
import type { Side } from '$lib/job/evaluate';
import { q, say, type Finding } from '../types';
import type { AirSpace } from './airSpace';

export function airFindings({ loop }: Side, air: AirSpace): Finding[] {
  return [...roomFinding(air), ...pressureFinding(loop.reservoir.capGauge, air), ...level(loop)];
}

function roomFinding({ space, growth, left, leftSettled, hottest }: AirSpace): Finding[] {
  const grows = q(growth, 'volume');
  const until = q(hottest, 'temperature');
  if (!(space > 0)) {
    return [
      {
        code: 'no-air-space',
        level: 'act',
        sentence: say`The reservoir is filled to the brim or beyond. The liquid grows by ${grows} on its way to ${until}: with no air over it, that goes out past the cap at the first warm-up, or strains the weakest joint.`,
      },
    ];
  }
  if (left > 0) {
    return [
      {
        code: 'air-space-enough',
        level: 'good',
        sentence: say`The air space of ${q(space, 'volume')} takes the ${grows} by which the liquid grows up to ${until}.`,
      },
    ];
  }
  const settles = leftSettled !== null && leftSettled > 0;
  return [
    {
      code: 'air-space-small',
      level: settles ? 'watch' : 'act',
      sentence: say`The air space is ${q(space, 'volume')}, but the liquid grows by ${grows} up to ${until}. ${
        settles
          ? 'It is enough where the loop settles in this duty, not for the hottest it can get.'
          : 'Lower the level or fit a catch tank.'
      }`,
    },
  ];
}

function pressureFinding(cap: number, { gauge }: AirSpace): Finding[] {
  if (gauge === null) return [];
  const [has, rated] = [q(gauge, 'gaugePressure'), q(cap, 'gaugePressure')];
  if (gauge >= cap) {
    return [
      {
        code: 'cap-opens',
        level: 'info',
        sentence: say`Closed at the filling temperature, the air space would build ${has} where the loop settles: the cap lets air out at ${rated} and holds that.`,
      },
    ];
  }
  return [
    {
      code: 'cap-not-reached',
      level: 'watch',
      sentence: say`Closed at the filling temperature, the tank has ${has} where the loop settles, not the cap’s ${rated}. Suction and boiling margins of the other sheets count on the rating: until the tank is hotter they are better on paper than in the vehicle.`,
    },
  ];
}

function level({ reservoir }: Side['loop']): Finding[] {
  if (reservoir.levelAbovePump >= 0) return [];
  return [
    {
      code: 'level-below-pump',
      level: 'act',
      sentence: say`The liquid stands ${q(-reservoir.levelAbovePump, 'length')} below the pump’s inlet. Most of these pumps cannot draw liquid up once air is in: they run dry after a fill or a hard corner. Mount the pump below the tank.`,
    },
  ];
}

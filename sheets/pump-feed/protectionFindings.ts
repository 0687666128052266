/** Fuse, breaker, relay, wire: what protects, what holds, what burns. */
import type { Side } from '$lib/job/evaluate';
import { deratedRating } from '$lib/solver/feed/breaker';
import { q, say, type Finding } from '../types';
import type { Study } from './study';

export function protectionFindings(side: Side, study: Study): Finding[] {
  return [
    ...breakerFinding(study),
    ...fuseFinding(study),
    ...relayFindings(study),
    ...wireFinding(side, study),
  ];
}

function breakerFinding({ supply, behaviour, running }: Study): Finding[] {
  const { breaker } = supply;
  if (!breaker || !behaviour || !running) return [];
  const holds = q(deratedRating(breaker.thermal, breaker.ambient), 'current');
  const where = say`The ${q(breaker.thermal.rating, 'current')} breaker holds ${holds} at ${q(breaker.ambient, 'temperature')}, and the pump draws ${q(running.current, 'current')}.`;
  switch (behaviour.kind) {
    case 'holds':
      return [
        {
          code: 'breaker-holds',
          level: 'good',
          sentence: [...where, ' It holds.'],
        },
      ];
    case 'cycles':
      return [
        {
          code: 'breaker-cycles',
          level: 'act',
          sentence: [
            ...where,
            ...say` It opens after ${q(behaviour.opensAfter, 'time')} and then every ${q(behaviour.period, 'time')}, running ${q(behaviour.share, 'percent')} of the time. A cycling breaker looks like a pump that comes and goes, or a loose joint: log volts on both sides of it. Measure amps before fitting a larger one, and put a fuse ahead.`,
          ],
        },
      ];
    case 'stays-open':
      return [
        {
          code: 'breaker-opens',
          level: 'act',
          sentence: [
            ...where,
            ...say` It opens after ${q(behaviour.opensAfter, 'time')} and stays open: the tank then stays as it is while the intake air climbs.`,
          ],
        },
      ];
  }
}

function fuseFinding({ supply, carries }: Study): Finding[] {
  const { kind, rating } = supply.circuit.protection;
  const rated = q(rating, 'current');
  if (!carries) {
    return [
      {
        code: 'wire-below-table',
        level: 'act',
        sentence: say`Wire this thin is in no table of feeds (thinnest 18 AWG): nothing says that a ${rated} ${kind} protects it, and it breaks by handling.`,
      },
    ];
  }
  const may = q(carries.here, 'current');
  return rating > carries.here
    ? [
        {
          code: 'fuse-too-large',
          level: 'act',
          sentence: say`The ${rated} ${kind} does not protect the wire, which may carry ${may} where it lies. Shorted, the wire burns before the ${kind} opens: fit a smaller one or thicker wire.`,
        },
      ]
    : [
        {
          code: 'fuse-protects',
          level: 'good',
          sentence: say`The ${rated} ${kind} protects the wire, which may carry ${may} where it lies.`,
        },
      ];
}

function relayFindings({ contacts, supply }: Study): Finding[] {
  const { relays } = supply.circuit;
  const found: Finding[] = contacts
    .filter(({ overloaded }) => overloaded)
    .map(({ name, current }, i) => ({
      code: `relay-overloaded-${i + 1}`,
      level: 'act',
      sentence: say`${name} carries ${q(current, 'current')}, more than its ${q(relays.find((r) => r.name === name)!.rating, 'current')}: its contact burns${contacts.length > 1 ? ', and then the other carries everything' : ''}.`,
    }));
  const [first, second] = contacts;
  if (first && second) {
    found.push({
      code: 'relays-share',
      level: 'info',
      sentence: say`The two relays carry ${q(first.current, 'current')} and ${q(second.current, 'current')}. They share by their contacts, so the newer one works harder; two are no reserve unless one alone would do.`,
    });
  }
  return found;
}

function wireFinding({ values }: Side, { wireHeat }: Study): Finding[] {
  if (!wireHeat) return [];
  if (!wireHeat.settles) {
    return [
      {
        code: 'wire-burns',
        level: 'act',
        sentence: say`At this current the wire finds no temperature below ruin: it makes heat faster than still air takes it.`,
      },
    ];
  }
  const stated = values['feed.wire.copperTemperature']!.si!;
  if (!(wireHeat.temperature > stated)) return [];
  return [
    {
      code: 'wire-hotter',
      level: 'watch',
      sentence: say`By its own current the wire settles near ${q(wireHeat.temperature, 'temperature')}, above the ${q(stated, 'temperature')} its resistance is worked out for: enter the higher one.`,
    },
  ];
}

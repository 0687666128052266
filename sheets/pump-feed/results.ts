/** Results of the feed: readings point by point, what they cost, what holds. */
import type { Side } from '$lib/job/evaluate';
import { deratedRating } from '$lib/solver/feed/breaker';
import { hottestJoint, stateWithin } from '$lib/solver/feed/dropAdvice';
import { fuseMargin } from '$lib/solver/feed/heatFormulas';
import type { WalkPlace } from '$lib/solver/feed/walk';
import { flowLost } from '$lib/solver/feed/circuitFormulas';
import type { Result } from '../types';
import type { Study } from './study';

const STILL = 'the pump has no point at which it runs on this feed';
const NO_LOOP = 'the loop cannot be solved in this duty';

const PLACES: readonly (readonly [WalkPlace, name: string, symbol: string])[] = [
  ['battery-positive', 'Battery posts', 'V_s'],
  ['after-protection', 'Behind the fuse or breaker', 'V_1'],
  ['after-relay', 'Behind the relay', 'V_2'],
  ['pump-positive', 'Pump plug, feed pin', 'V_+'],
  ['pump-negative', 'Pump plug, ground pin', 'V_-'],
];

export function results(side: Side, study: Study): Result[] {
  return [...pumpResults(side, study), ...readings(study), ...heldResults(side, study)];
}

function pumpResults(side: Side, { running, inLoop, supplied }: Study): Result[] {
  const limit = side.values['feed.dropLimit']!.si!;
  const absent = supplied.ok ? STILL : supplied.problem.message;
  const flowAbsent = inLoop ? STILL : NO_LOOP;
  return [
    {
      id: 'pump-volts',
      name: 'Volts at the pump',
      symbol: 'V_p',
      value: running?.volts ?? null,
      absent,
      quantity: 'voltage',
      better: 'higher',
      ...(running && { state: stateWithin(running.drop, limit) }),
    },
    {
      id: 'drop',
      name: 'Drop from battery to pump',
      symbol: 'U',
      value: running?.drop ?? null,
      absent,
      quantity: 'voltage',
      better: 'lower',
      ...(running && { state: stateWithin(running.drop, limit) }),
    },
    {
      id: 'current',
      name: 'Current',
      symbol: 'I',
      value: running?.current ?? null,
      absent,
      quantity: 'current',
    },
    {
      id: 'power',
      name: 'Electrical input of the pump',
      symbol: 'P',
      value: running?.power ?? null,
      absent,
      quantity: 'electricPower',
    },
    {
      id: 'speed',
      name: 'Pump speed over its rated speed',
      symbol: 's',
      value: running && inLoop ? inLoop.pump.speedRatio : null,
      absent: flowAbsent,
      quantity: 'percent',
      better: 'higher',
    },
    {
      id: 'flow',
      name: 'Flow behind this feed',
      symbol: 'Q',
      value: running && inLoop ? inLoop.flow : null,
      absent: flowAbsent,
      quantity: 'volumeFlow',
      better: 'higher',
    },
    {
      id: 'flow-lost',
      name: 'Flow lost to the wiring',
      symbol: '\\Delta Q',
      value:
        running && inLoop ? flowLost.value({ Q_s: inLoop.flowAtSource, Q: inLoop.flow }) : null,
      absent: flowAbsent,
      quantity: 'volumeFlow',
      better: 'lower',
    },
  ];
}

/** What a meter shows against the battery's negative post, the pump running. */
function readings({ walk, supply }: Study): Result[] {
  return PLACES.flatMap(([place, name, symbol]): Result[] => {
    if (place === 'after-relay' && supply.circuit.relays.length === 0) return [];
    const value = walk?.points.find((point) => point.place === place)?.volts ?? null;
    return [
      {
        id: `reading-${place}`,
        name: `Meter: ${name.charAt(0).toLowerCase()}${name.slice(1)}`,
        symbol,
        value,
        absent: 'nothing flows',
        quantity: 'voltage',
      },
    ];
  });
}

function heldResults(side: Side, study: Study): Result[] {
  const { walk, carries, supply, behaviour, running, wire, wireHeat } = study;
  const { breaker, circuit } = supply;
  const holds = breaker ? deratedRating(breaker.thermal, breaker.ambient) : null;
  const margin = carries
    ? fuseMargin.value({ I_w: carries.here, I_r: circuit.protection.rating })
    : null;
  const opens = behaviour && behaviour.kind !== 'holds' ? behaviour.opensAfter : null;
  return [
    {
      id: 'joint-heat',
      name: 'Heat in the worst joint',
      symbol: 'P_j',
      value: (walk && hottestJoint(walk)?.heat) ?? null,
      absent: 'nothing flows',
      quantity: 'electricPower',
      better: 'lower',
    },
    {
      id: 'wire-temperature',
      name: 'Wire by its own current',
      symbol: 'T_w',
      value: wireHeat?.settles ? wireHeat.temperature : null,
      absent: wireHeat ? 'the wire finds no temperature: it burns' : 'nothing flows',
      quantity: 'temperature',
      differenceQuantity: 'temperatureDifference',
      better: 'lower',
    },
    {
      id: 'fuse-margin',
      name: 'What the wire may carry over its fuse',
      symbol: '\\Delta I',
      value: margin,
      absent: 'wire thinner than any table gives a current for',
      quantity: 'current',
      better: 'higher',
      ...(margin !== null && { state: margin < 0 ? 'over' : 'ok' }),
    },
    {
      id: 'breaker-holds',
      name: 'Current the breaker holds',
      symbol: 'I_h',
      value: holds,
      absent: 'a fuse, not a breaker',
      quantity: 'current',
      ...(holds !== null && running && { state: stateWithin(running.current, holds) }),
    },
    {
      id: 'trip-time',
      name: 'Breaker opens from cold after',
      symbol: 't',
      value: opens,
      absent: breaker ? (running ? 'it holds' : 'nothing flows') : 'a fuse, not a breaker',
      quantity: 'time',
    },
    {
      id: 'period',
      name: 'Period of the cycling breaker',
      symbol: 't_p',
      value: behaviour?.kind === 'cycles' ? behaviour.period : null,
      absent: 'it does not cycle',
      quantity: 'time',
    },
    {
      id: 'least-area',
      name: 'Least copper for the drop allowed',
      symbol: 'A_{min}',
      value: wire?.leastArea ?? null,
      absent: wire ? 'the joints alone lose more' : 'the pump would not run with that drop',
      quantity: 'wireArea',
    },
  ];
}

/** From values to the pump's feed. Never throws: what cannot be is refused where the feed is solved. */
import { timeConstantFromTrip } from '$lib/solver/feed/breaker';
import type { Connector, RelayContact } from '$lib/solver/feed/circuit';
import type { WireSize } from '$lib/solver/feed/gauge';
import type { PlacedBreaker, PumpDraw, PumpSupply } from '$lib/solver/feed/supply';
import { jointResistance } from '$lib/solver/feed/walk';
import { JOINT_PLACES } from '../fields/feed';
import type { Values } from '../values';

type Reset = PlacedBreaker['thermal']['reset'];

/** Gauge as spoken (14, 1/0) to its number (14, 0). */
export function gaugeNumber(spoken: string): number {
  const [first, slash] = spoken.split('/');
  return slash === undefined ? Number(first) : 1 - Number(first);
}

/** Size of the wire, however it is known. */
export function toWireSize(values: Values): WireSize {
  return values['feed.wire.by']!.choice === 'area'
    ? { by: 'area', area: values['feed.wire.area']!.si! }
    : { by: 'awg', awg: gaugeNumber(values['feed.wire.gauge']!.choice!) };
}

/** The feed as described on one side of a job. */
export function toFeed(values: Values): PumpSupply {
  const si = (path: string) => values[path]!.si!;
  const choice = (path: string) => values[path]!.choice!;

  const relay = (n: 1 | 2): RelayContact => ({
    name: `relay ${n}`,
    resistance: si(`feed.relay${n}.contact`),
    rating: si(`feed.relay${n}.rated`),
  });
  const relays = { none: [], one: [relay(1)], two: [relay(1), relay(2)] }[
    choice('feed.relays') as 'none' | 'one' | 'two'
  ];
  const isBreaker = choice('feed.protection.kind') === 'breaker';
  const rating = si('feed.protection.rated');

  return {
    circuit: {
      source: {
        engineRunning: si('feed.sourceRunning'),
        engineOff: si('feed.sourceOff'),
        running: choice('feed.engine') === 'running',
      },
      protection: {
        kind: isBreaker ? 'breaker' : 'fuse',
        resistance: si('feed.protection.ohms'),
        rating,
      },
      wire: {
        size: toWireSize(values),
        lengthOneWay: si('feed.wire.lengthOneWay'),
        temperature: si('feed.wire.copperTemperature'),
        shareBeforeRelay: si('feed.wire.shareBeforeRelay'),
      },
      relays,
      connectors: values['feed.connectors']!.rows!.map(toJoint),
    },
    draw: toDraw(values),
    shutOffShare: si('feed.shutOffShare'),
    armatureResistance: si('feed.armatureResistance'),
    breaker: isBreaker
      ? {
          thermal: {
            rating,
            referenceTemperature: si('feed.breaker.referenceTemperature'),
            lossPerKelvin: si('feed.breaker.lossPerKelvin'),
            timeConstant: timeConstantFromTrip({
              t: si('feed.breaker.tripTime'),
              m: si('feed.breaker.tripMultiple'),
            }),
            reset: choice('feed.breaker.reset') as Reset,
            resetState: si('feed.breaker.resetState'),
          },
          ambient: si('feed.breaker.airAround'),
        }
      : null,
  };
}

type Rows = NonNullable<Values[string]['rows']>;

/** A joint nobody has measured has no number yet; the solver asks for it. */
function toJoint(row: Rows[number]): Connector {
  const place = JOINT_PLACES.find(({ value }) => value === row.place)!;
  const { resistance, drop, at } = row;
  const measured =
    typeof drop === 'number' && typeof at === 'number' ? jointResistance({ U: drop, I: at }) : NaN;
  return {
    name: place.label,
    side: place.side,
    resistance: typeof resistance === 'number' ? resistance : measured,
  };
}

function toDraw(values: Values): PumpDraw {
  const kind = values['feed.draw']!.choice as PumpDraw['kind'];
  if (kind !== 'table') return { kind };
  return {
    kind,
    points: values['feed.table']!.rows!.map(({ volts, current }) => ({
      volts: volts as number,
      current: current as number,
    })),
  };
}

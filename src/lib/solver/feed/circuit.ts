/**
 * The pump's electrical feed, from battery to pump and back, as a technician finds it. SI; plain data.
 */
import { InvalidInputError, requireWithin, type Interval } from '../errors';
import { wireResistance, type WireRun } from './wire';

export interface FeedSource {
  /** At the battery posts, under load. */
  readonly engineRunning: number;
  readonly engineOff: number;
  readonly running: boolean;
}

/** A plug, splice, ring terminal or switch. */
export interface Connector {
  readonly name: string;
  readonly resistance: number;
  /** `feed`: between relay and pump. `ground`: between pump and battery negative. */
  readonly side: 'feed' | 'ground';
}

/** The closed contact of a relay. */
export interface RelayContact {
  readonly name: string;
  readonly resistance: number;
  /** Continuous, at the temperature where it sits, A. */
  readonly rating: number;
}

export interface FeedProtection {
  readonly kind: 'fuse' | 'breaker';
  /** With its holder. */
  readonly resistance: number;
  readonly rating: number;
}

export interface FeedWire extends WireRun {
  /** Share of the outward run that lies between the protection and the relay, 0 to 1. */
  readonly shareBeforeRelay: number;
}

export interface FeedCircuit {
  readonly source: FeedSource;
  readonly protection: FeedProtection;
  readonly wire: FeedWire;
  /** None, one, or two and more whose contacts are in parallel. */
  readonly relays: readonly RelayContact[];
  readonly connectors: readonly Connector[];
}

/** What a 12 V (or 24 V) feed may be: ours, to catch milliohms typed as ohms. */
export const CIRCUIT_RANGE = {
  volts: [1, 60],
  resistance: [0, 10],
  shareBeforeRelay: [0, 1],
  current: [0, 500],
} as const satisfies Record<string, Interval>;

/** Volts at the battery posts in the state described. */
export function sourceVolts({ engineRunning, engineOff, running }: FeedSource): number {
  const volts = running ? engineRunning : engineOff;
  requireWithin('feed source', { volts: CIRCUIT_RANGE.volts }, { volts });
  return volts;
}

/** Resistance of closed contacts side by side; one of exactly zero takes all. No relay: 0. */
export function relayResistance(relays: readonly RelayContact[]): number {
  for (const { resistance } of relays) requireResistance('relay', resistance);
  if (relays.length === 0 || relays.some((r) => r.resistance === 0)) return 0;
  return 1 / relays.reduce((sum, r) => sum + 1 / r.resistance, 0);
}

/** What one contact of a parallel set carries. */
export interface ContactShare {
  readonly name: string;
  readonly current: number;
  /** Above its rating: it will burn first, and then the other carries everything. */
  readonly overloaded: boolean;
}

/**
 * How contacts in parallel share a current: by their conductance, hence seldom evenly.
 * @throws {@link InvalidInputError} when two contacts of zero resistance leave the sharing open
 */
export function relaySharing(relays: readonly RelayContact[], current: number): ContactShare[] {
  requireWithin('relay', { current: CIRCUIT_RANGE.current }, { current });
  const perfect = relays.filter((r) => r.resistance === 0).length;
  if (perfect > 1) {
    throw new InvalidInputError(
      'relays',
      'two contacts of zero resistance share in no certain way',
    );
  }
  const together = relayResistance(relays);
  return relays.map(({ name, resistance, rating }) => {
    const share = perfect ? Number(resistance === 0) : together / resistance;
    const carried = current * share;
    return { name, current: carried, overloaded: carried > rating };
  });
}

function requireResistance(law: string, resistance: number): void {
  requireWithin(law, { resistance: CIRCUIT_RANGE.resistance }, { resistance });
}

/** One piece of the feed in the order in which the current meets it. */
export interface FeedPart {
  readonly name: string;
  readonly kind: 'protection' | 'wire' | 'relay' | 'connector';
  readonly side: 'feed' | 'ground';
  readonly resistance: number;
}

/**
 * The feed as a chain: protection, wire, relay, wire, plugs, (pump), plugs, wire.
 * @throws {@link OutOfRangeError} for a resistance, share, length or temperature outside its range
 */
export function feedParts({ protection, wire, relays, connectors }: FeedCircuit): FeedPart[] {
  requireResistance('protection', protection.resistance);
  const { shareBeforeRelay } = wire;
  requireWithin(
    'feed wire',
    { shareBeforeRelay: CIRCUIT_RANGE.shareBeforeRelay },
    { shareBeforeRelay },
  );
  const oneWay = wireResistance(wire) / 2;
  const plugs = (side: Connector['side']) =>
    connectors
      .filter((c) => c.side === side)
      .map(({ name, resistance }): FeedPart => {
        requireResistance(name, resistance);
        return { name, kind: 'connector', side, resistance };
      });
  const run = (name: string, side: FeedPart['side'], resistance: number): FeedPart => ({
    name,
    kind: 'wire',
    side,
    resistance,
  });
  const relay: FeedPart[] = relays.length
    ? [
        {
          name: relays.map((r) => r.name).join(' and '),
          kind: 'relay',
          side: 'feed',
          resistance: relayResistance(relays),
        },
      ]
    : [];
  return [
    {
      name: protection.kind,
      kind: 'protection',
      side: 'feed',
      resistance: protection.resistance,
    },
    ...(relay.length
      ? [
          run('wire to the relay', 'feed', oneWay * shareBeforeRelay),
          ...relay,
          run('wire to the pump', 'feed', oneWay * (1 - shareBeforeRelay)),
        ]
      : [run('wire to the pump', 'feed', oneWay)]),
    ...plugs('feed'),
    ...plugs('ground'),
    run('ground wire', 'ground', oneWay),
  ];
}

/** Resistance of everything between the battery posts except the pump, ohm. */
export function feedResistance(circuit: FeedCircuit): number {
  return feedParts(circuit).reduce((sum, part) => sum + part.resistance, 0);
}

/** What a meter shows along the feed, so that a technician can walk it joint by joint. */
import { requireWithin } from '../errors';
import { CIRCUIT_RANGE, feedParts, sourceVolts, type FeedCircuit, type FeedPart } from './circuit';

/** Where a probe is held. */
export type WalkPlace =
  | 'battery-positive'
  | 'after-protection'
  | 'after-relay'
  | 'pump-positive'
  | 'pump-negative'
  | 'battery-negative';

export interface WalkPoint {
  readonly place: WalkPlace;
  /** Against the battery's negative post. */
  readonly volts: number;
}

/** A meter across one part, under load. */
export interface WalkDrop extends FeedPart {
  readonly drop: number;
  /** Heat made there, W. */
  readonly heat: number;
  /** Behind it, as the current goes, against the battery's negative post. */
  readonly voltsAfter: number;
}

export interface FeedWalk {
  readonly points: readonly WalkPoint[];
  readonly drops: readonly WalkDrop[];
  /** Across the pump's own plug. */
  readonly pumpVolts: number;
  /** Sum of all drops. */
  readonly drop: number;
}

/**
 * Readings along a feed that carries `current`. A relay that is not there gives no `after-relay` point.
 * `pumpVolts` goes negative when the stated current is more than this feed can pass: then it cannot flow.
 * @throws {@link OutOfRangeError} for a part of the circuit or a current outside its range
 */
export function walk(circuit: FeedCircuit, current: number): FeedWalk {
  requireWithin('feed', { current: CIRCUIT_RANGE.current }, { current });
  const source = sourceVolts(circuit.source);
  const parts = feedParts(circuit);
  // The ground side is counted from the battery's end, where a meter's black lead sits at zero.
  let ground = 0;
  const behindGround = new Map<FeedPart, number>();
  for (const part of parts.filter(({ side }) => side === 'ground').reverse()) {
    behindGround.set(part, ground);
    ground += current * part.resistance;
  }
  const points: WalkPoint[] = [{ place: 'battery-positive', volts: source }];
  let volts = source;
  const drops = parts.map((part): WalkDrop => {
    const drop = current * part.resistance;
    if (part.side === 'feed') volts -= drop;
    if (part.kind === 'protection') points.push({ place: 'after-protection', volts });
    if (part.kind === 'relay') points.push({ place: 'after-relay', volts });
    return { ...part, drop, heat: current * drop, voltsAfter: behindGround.get(part) ?? volts };
  });
  points.push(
    { place: 'pump-positive', volts },
    { place: 'pump-negative', volts: ground },
    { place: 'battery-negative', volts: 0 },
  );
  const drop = drops.reduce((sum, d) => sum + d.drop, 0);
  return { points, drops, pumpVolts: volts - ground, drop };
}

/**
 * Resistance of a joint from the drop measured across it under load.
 *
 * @formula R = U / I
 * @symbol U - drop across the joint, V
 * @symbol I - current through it, A
 * @returns R, ohm
 * @throws {@link OutOfRangeError} for a current of zero (a joint without current shows no drop, good or bad)
 * @source Ohm's law
 * @example jointResistance({ U: 0.25, I: 18 }) // 0.013889
 */
export function jointResistance({ U, I }: { U: number; I: number }): number {
  requireWithin('joint', { U: [0, 60], I: [0.01, 500] }, { U, I });
  return U / I;
}

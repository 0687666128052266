/** Volts at the pump solved together with what the pump then does. */
import { requireWithin } from '../errors';
import { brent } from '../numerics/root';
import { feedResistance, sourceVolts, type FeedCircuit } from './circuit';
import { MOTOR_RANGE } from './motor';
import type { Hydraulic } from './pumpDraw';

export interface PumpOnFeed {
  readonly status: 'runs';
  /** Battery posts, V. */
  readonly source: number;
  /** All of the feed, ohm. */
  readonly resistance: number;
  readonly volts: number;
  readonly current: number;
  readonly drop: number;
  readonly electricPower: number;
  readonly flow: number;
  readonly head: number;
  /** What it would move with the battery's volts on its plug. */
  readonly flowWithoutDrop: number;
  readonly flowLost: number;
  /** Volts + drop - source, V: how well the two sides agree. */
  readonly residual: number;
}

/**
 * The feed gives the pump no steady point.
 * `power-not-passed`: at no voltage can this feed pass what the pump asks.
 * `cuts-in-and-out`: without load the volts suffice, with it they fall below the controller's limit.
 * `below-cutout`: the battery itself is below the controller's limit.
 */
export interface PumpStarved {
  readonly status: 'stopped';
  readonly reason: 'power-not-passed' | 'cuts-in-and-out' | 'below-cutout';
  readonly source: number;
  readonly resistance: number;
  readonly flowWithoutDrop: number;
}

/** Volts tried on the way down from the battery's before the search is refined. */
const LOOKS = 48;

/** The upper crossing of `surplus` (positive at `top`), or the least it comes to when it never crosses. */
function upperBracket(
  surplus: (volts: number) => number,
  top: number,
): { low: number; high: number } | null {
  let lowest = { volts: top, value: Infinity };
  let high = top;
  for (let i = LOOKS - 1; i >= 1; i--) {
    const volts = (top * i) / LOOKS;
    const value = surplus(volts);
    if (value <= 0) return { low: volts, high };
    if (value < lowest.value) lowest = { volts, value };
    high = volts;
  }
  // Near the limit of what a feed can pass, the two crossings lie between two looks: go down into the dip.
  const step = top / LOOKS;
  let a = Math.max(lowest.volts - step, step / 2);
  let b = Math.min(lowest.volts + step, top);
  const upper = b;
  const golden = (Math.sqrt(5) - 1) / 2;
  for (let i = 0; i < 60; i++) {
    const left = b - golden * (b - a);
    const right = a + golden * (b - a);
    const [atLeft, atRight] = [surplus(left), surplus(right)];
    if (atLeft <= 0 || atRight <= 0) return { low: atRight <= 0 ? right : left, high: upper };
    if (atLeft < atRight) b = right;
    else a = left;
  }
  return null;
}

/** Volts at which a load settles on a feed, or why there are none. */
export type SettledVolts = number | PumpStarved['reason'];

/**
 * Where a load settles on a feed of resistance R: V + R P(V) / V = source, the upper (stable) crossing.
 * @param power - what the load takes at the volts on its plug, W; zero: it has let go
 * @throws {@link OutOfRangeError} for source or resistance outside their ranges
 * @throws {@link NoRootError} when `power` gives NaN
 * @source Kirchhoff's voltage law
 */
export function voltsOnFeed(
  source: number,
  resistance: number,
  power: (volts: number) => number,
): SettledVolts {
  requireWithin(
    'pump feed',
    { source: MOTOR_RANGE.source, resistance: MOTOR_RANGE.R },
    { source, resistance },
  );
  if (power(source) === 0) return 'below-cutout';
  if (resistance === 0) return source;
  const surplus = (volts: number) => volts + (resistance * power(volts)) / volts - source;
  const bracket = upperBracket(surplus, source);
  if (!bracket) return 'power-not-passed';
  const volts = brent(surplus, bracket.low, bracket.high).x;
  // A controller that lets go makes a jump; the bracket then closes on the jump and not on a balance.
  return Math.abs(surplus(volts)) > 1e-9 * source ? 'cuts-in-and-out' : volts;
}

/**
 * Where a pump settles on a feed of resistance R, see {@link voltsOnFeed}.
 * `hydraulic` gives flow, head and electrical power at the volts on the plug, so the loop's own operating
 * point is inside the equation and not assumed.
 * @throws {@link OutOfRangeError} for source or resistance outside their ranges
 * @throws {@link NoRootError} when `hydraulic` gives NaN
 * @source Kirchhoff's voltage law; electrical power from the pump's own curve
 */
export function solvePumpFeed(
  source: number,
  resistance: number,
  hydraulic: Hydraulic,
): PumpOnFeed | PumpStarved {
  const volts = voltsOnFeed(source, resistance, (v) => hydraulic(v).electricPower);
  const flowWithoutDrop = hydraulic(source).flow;
  if (typeof volts === 'string') {
    return { status: 'stopped', reason: volts, source, resistance, flowWithoutDrop };
  }
  const { flow, head, electricPower } = hydraulic(volts);
  const current = electricPower / volts;
  const drop = resistance * current;
  return {
    status: 'runs',
    source,
    resistance,
    volts,
    current,
    drop,
    electricPower,
    flow,
    head,
    flowWithoutDrop,
    flowLost: flowWithoutDrop - flow,
    residual: volts + drop - source,
  };
}

/** {@link solvePumpFeed} for a described circuit. */
export function pumpFeed(circuit: FeedCircuit, hydraulic: Hydraulic): PumpOnFeed | PumpStarved {
  return solvePumpFeed(sourceVolts(circuit.source), feedResistance(circuit), hydraulic);
}

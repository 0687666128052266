/** The pump on its feed: what it draws by the law chosen for it, and the volts it is left with. */
import { InvalidInputError, requireWithin, type Interval } from '../errors';
import { speedRatio } from '../hydraulics/pump';
import type { Pump } from '../loop/types';
import { feedResistance, sourceVolts, type FeedCircuit } from './circuit';
import { operatingVoltage, type NoElectricalPoint } from './motor';
import type { PlacedBreaker, PumpDraw, PumpSupply } from './pumpSupply';
import { voltsOnFeed, type PumpStarved } from './pumpFeed';

export type { PlacedBreaker, PumpDraw, PumpSupply };

export const SUPPLY_RANGE = {
  shutOffShare: [0.2, 1],
  armatureResistance: [0, 100],
} as const satisfies Record<string, Interval>;

/**
 * Share of its rated current that a brushed pump needs to break away: brushes, bearings and seal, the
 * liquid asking nothing yet. From memory, 10 to 30 %.
 */
export const BREAKAWAY_SHARE = 0.2;

export type StoppedReason = PumpStarved['reason'] | NoElectricalPoint['reason'];

/** What the feed leaves the pump with. */
export type SuppliedPump =
  | {
      readonly status: 'runs';
      readonly source: number;
      readonly resistance: number;
      readonly volts: number;
      /** Of all pumps on the feed. */
      readonly current: number;
      readonly drop: number;
      /** Into all pumps, W. */
      readonly power: number;
      /** Power over that at the end of the pump curve, at the same volts. */
      readonly loadShare: number;
    }
  | {
      readonly status: 'stopped';
      readonly reason: StoppedReason;
      readonly source: number;
      readonly resistance: number;
    };

/** Pumps on the feed. */
export const pumpCount = ({ arrangement }: Pick<Pump, 'arrangement'>): number =>
  arrangement === 'one' ? 1 : 2;

/** Rated current of all pumps on the feed, A. */
export const ratedCurrent = (pump: Pump): number =>
  (pumpCount(pump) * pump.electricPower) / pump.ratedVolts;

/**
 * Power of all pumps at the volts on their plug; 0 below a controller's cut-out.
 *
 * @formula P = n * P_r * f * s^3, or n * P_r * f * V / V_r (one torque), or n * P_r * f (one power)
 * @source Affinity laws; definition of the other two
 */
export function drawnPower(pump: Pump, draw: PumpDraw, volts: number, loadShare: number): number {
  const s = speedRatio({ ...pump, volts });
  if (!(s > 0)) return 0;
  const rated = pumpCount(pump) * pump.electricPower * loadShare;
  switch (draw.kind) {
    case 'pump-law':
      return rated * s ** 3;
    case 'constant-torque':
      return (rated * volts) / pump.ratedVolts;
    case 'constant-power':
      return rated;
    case 'table':
      throw new InvalidInputError('feed.table', 'a table of currents is read, not computed');
  }
}

/**
 * Volts at the pump solved together with what the pump then does.
 * @param flowShare - flow over that at the end of the pump curve, both at the speed these volts give;
 *   asked for only where the flow changes the power
 * @throws {@link OutOfRangeError}, {@link InvalidInputError} for a feed that cannot be
 * @source Kirchhoff's voltage law with the pump's own law, the upper (stable) crossing
 */
export function suppliedPump(
  pump: Pump,
  supply: PumpSupply,
  flowShare: (volts: number) => number,
): SuppliedPump {
  const { circuit, draw, shutOffShare, armatureResistance } = supply;
  requireWithin('pump feed', SUPPLY_RANGE, { shutOffShare, armatureResistance });
  requireKnown(circuit);
  const source = sourceVolts(circuit.source);
  const resistance = feedResistance(circuit);
  const stopped = (reason: StoppedReason): SuppliedPump => ({
    status: 'stopped',
    reason,
    source,
    resistance,
  });
  if (draw.kind === 'table') {
    const point = operatingVoltage(source, resistance, draw);
    if (point.status === 'stopped') return stopped(point.reason);
    if (!(speedRatio({ ...pump, volts: point.volts }) > 0)) return stopped('below-cutout');
    const { volts, current, drop, power } = point;
    return { status: 'runs', source, resistance, volts, current, drop, power, loadShare: 1 };
  }
  const loadShare = (volts: number) =>
    shutOffShare === 1 ? 1 : shutOffShare + (1 - shutOffShare) * flowShare(volts);
  const power = (volts: number) => drawnPower(pump, draw, volts, loadShare(volts));
  const starts = (volts: number): boolean => {
    if (pump.motor !== 'brushed' || armatureResistance === 0) return true;
    const armature = armatureResistance / pumpCount(pump);
    // Standing still it is a plain resistance; one torque is asked from the first turn on.
    const needed = draw.kind === 'pump-law' ? BREAKAWAY_SHARE : loadShare(volts);
    return source / (resistance + armature) >= needed * ratedCurrent(pump);
  };
  const idle = pump.electricPower === 0;
  const volts = idle ? source : voltsOnFeed(source, resistance, power);
  if (typeof volts === 'string') {
    return stopped(
      draw.kind === 'constant-torque' && volts === 'power-not-passed' ? 'cannot-turn' : volts,
    );
  }
  if (!starts(volts)) return stopped('cannot-turn');
  const P = power(volts);
  const current = P / volts;
  const drop = resistance * current;
  return {
    status: 'runs',
    source,
    resistance,
    volts,
    current,
    drop,
    power: P,
    loadShare: loadShare(volts),
  };
}

/** A joint that nobody has measured has no resistance yet: not zero. */
function requireKnown({ connectors }: FeedCircuit): void {
  for (const { name, resistance } of connectors) {
    if (Number.isNaN(resistance)) {
      throw new InvalidInputError(
        'feed.connectors',
        `${name} needs its resistance, or its drop and the current at which it was measured`,
      );
    }
  }
}

/** Why a pump does not run on its feed, in words. */
export const STOPPED_WORDS: Readonly<Record<StoppedReason, string>> = {
  'cannot-turn': 'the feed passes too little current to start the pump',
  'power-not-passed': 'the feed cannot pass the power the pump asks at any voltage',
  'below-cutout': 'the feed leaves fewer volts than the pump’s controller needs',
  'cuts-in-and-out':
    'with load the volts fall below what the controller needs, without load they rise again: it cuts in and out',
  'off-table': 'the feed leaves fewer volts than the measured currents reach down to',
};

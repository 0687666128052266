/**
 * How a motor answers to volts, and where it meets its feed.
 * `volts` are those across the motor's own plug throughout.
 */
import { InvalidInputError, OutOfRangeError, requireWithin, type Interval } from '../errors';

export interface LoadPoint {
  readonly volts: number;
  readonly current: number;
}

export type MotorLoad =
  /** Brushed, its shaft asking one torque: one current, whatever the volts, as long as it turns. */
  | {
      readonly kind: 'constant-torque';
      readonly current: number;
      /** Between the plug's two pins, standing still, ohm; 0 when not known. */
      readonly armatureResistance: number;
    }
  /** Speed held by a controller: fewer volts, more current. Stops below `cutoutVolts`. */
  | { readonly kind: 'constant-power'; readonly power: number; readonly cutoutVolts: number }
  /** A heater, or a motor standing still. */
  | { readonly kind: 'constant-resistance'; readonly resistance: number }
  /** Measured: current at two or more voltages, rising volts; straight lines between. */
  | { readonly kind: 'table'; readonly points: readonly LoadPoint[] };

export const MOTOR_RANGE = {
  source: [1, 60],
  R: [0, 100],
  current: [1e-3, 500],
  power: [1e-3, 10_000],
  resistance: [1e-3, 1e5],
  armatureResistance: [0, 100],
  cutoutVolts: [0, 60],
} as const satisfies Record<string, Interval>;

/** The motor runs here. */
export interface ElectricalPoint {
  readonly status: 'runs';
  readonly volts: number;
  readonly current: number;
  /** Lost in the feed, V. */
  readonly drop: number;
  /** Into the motor, W. */
  readonly power: number;
  /** Made into heat by the feed, W. */
  readonly loss: number;
}

/**
 * There is no point at which the motor runs.
 * `cannot-turn`: too few volts are left for the current its torque needs.
 * `power-not-passed`: the feed cannot pass that power at any voltage.
 * `below-cutout`: it could be fed, but below the voltage at which its controller gives up.
 * `off-table`: fewer volts than the measured points reach down to.
 */
export interface NoElectricalPoint {
  readonly status: 'stopped';
  readonly reason: 'cannot-turn' | 'power-not-passed' | 'below-cutout' | 'off-table';
}

export type FeedOutcome = ElectricalPoint | NoElectricalPoint;

const stopped = (reason: NoElectricalPoint['reason']): NoElectricalPoint => ({
  status: 'stopped',
  reason,
});

function runsAt(R: number, volts: number, current: number): ElectricalPoint {
  const drop = R * current;
  return {
    status: 'runs',
    volts,
    current,
    drop,
    power: volts * current,
    loss: drop * current,
  };
}

/**
 * Volts and current at which a motor behind a resistance settles: V = source - R I(V).
 * Of two crossings the upper one is returned, the only one that is stable (a dip in volts recovers).
 *
 * @throws {@link OutOfRangeError} outside {@link MOTOR_RANGE}, or when the crossing lies above a table's last point
 * @throws {@link InvalidInputError} for a table that does not rise in volts
 * @source Kirchhoff's voltage law with the load's own law
 */
export function operatingVoltage(source: number, R: number, motor: MotorLoad): FeedOutcome {
  requireWithin('feed', { source: MOTOR_RANGE.source, R: MOTOR_RANGE.R }, { source, R });
  switch (motor.kind) {
    case 'constant-torque': {
      const { current, armatureResistance } = motor;
      requireWithin(
        'constant-torque motor',
        { current: MOTOR_RANGE.current, armatureResistance: MOTOR_RANGE.armatureResistance },
        { current, armatureResistance },
      );
      const volts = source - R * current;
      // Standing still it is a plain resistance: it starts only if that passes the current its torque needs.
      return volts > 0 && volts >= current * armatureResistance
        ? runsAt(R, volts, current)
        : stopped('cannot-turn');
    }
    case 'constant-power': {
      const { power, cutoutVolts } = motor;
      requireWithin(
        'constant-power motor',
        { power: MOTOR_RANGE.power, cutoutVolts: MOTOR_RANGE.cutoutVolts },
        { power, cutoutVolts },
      );
      const volts = constantPowerVolts(source, R, power);
      if (volts === null) return stopped('power-not-passed');
      return volts >= cutoutVolts ? runsAt(R, volts, power / volts) : stopped('below-cutout');
    }
    case 'constant-resistance': {
      const { resistance } = motor;
      requireWithin(
        'constant-resistance load',
        { resistance: MOTOR_RANGE.resistance },
        { resistance },
      );
      const volts = source * (resistance / (R + resistance));
      return runsAt(R, volts, volts / resistance);
    }
    case 'table':
      return tableVolts(source, R, motor.points);
  }
}

/** Upper root of V² - source V + R power = 0; null when there is none. */
function constantPowerVolts(source: number, R: number, power: number): number | null {
  const discriminant = source * source - 4 * R * power;
  return discriminant < 0 ? null : (source + Math.sqrt(discriminant)) / 2;
}

function tableVolts(source: number, R: number, points: readonly LoadPoint[]): FeedOutcome {
  requireTable(points);
  // Surplus of volts at a point of the table; a stable crossing goes from negative to positive with volts.
  const surplus = (p: LoadPoint) => p.volts + R * p.current - source;
  const last = points[points.length - 1]!;
  if (surplus(last) < 0) {
    throw new OutOfRangeError('motor table', 'volts', source - R * last.current, [
      points[0]!.volts,
      last.volts,
    ]);
  }
  for (let i = points.length - 1; i > 0; i--) {
    const high = points[i]!;
    const low = points[i - 1]!;
    const [above, below] = [surplus(high), surplus(low)];
    if (below > 0 || above < 0) continue;
    const share = above === below ? 1 : -below / (above - below);
    const current = low.current + share * (high.current - low.current);
    return runsAt(R, low.volts + share * (high.volts - low.volts), current);
  }
  return stopped('off-table');
}

function requireTable(points: readonly LoadPoint[]): void {
  if (points.length < 2) {
    throw new InvalidInputError('motor.points', 'needs two points or more', points.length);
  }
  points.forEach(({ volts, current }, i) => {
    requireWithin('motor table', { volts: [0, 60], current: [0, 500] }, { volts, current });
    if (i > 0 && !(volts > points[i - 1]!.volts)) {
      throw new InvalidInputError('motor.points', 'volts must rise from point to point', volts);
    }
  });
}

/**
 * The most resistance the feed may have before the motor stops, ohm; null: no resistance stops it.
 * Zero: it does not run even without loss.
 * @throws as {@link operatingVoltage}
 */
export function stallingResistance(source: number, motor: MotorLoad): number | null {
  requireWithin('feed', { source: MOTOR_RANGE.source }, { source });
  switch (motor.kind) {
    case 'constant-torque':
      return Math.max(0, source / motor.current - motor.armatureResistance);
    case 'constant-power': {
      // The feed passes most at half the source's volts; a controller may give up before that.
      const volts = Math.max(source / 2, motor.cutoutVolts);
      return Math.max(0, ((source - volts) * volts) / motor.power);
    }
    case 'constant-resistance':
      return null;
    case 'table': {
      requireTable(motor.points);
      // (source - V) / I(V) is monotone between two points, so its greatest value is at one of them.
      const each = motor.points
        .filter((p) => p.volts < source)
        .map((p) => (source - p.volts) / p.current);
      const most = Math.max(0, ...each);
      return Number.isFinite(most) ? most : null;
    }
  }
}

/** A fit set up from a loop as entered and what was logged on it. */
import { airCp } from '../../air/air';
import { InvalidInputError } from '../../errors';
import { prepared as prepare, type PreparedLoop } from '../prepare';
import { steady } from '../steady';
import { nodeCapacities } from '../thermalMass';
import type { DutyId, Loop } from '../types';
import type { IdentifyRequest } from './identify';
import { median } from './noise';
import { PLUMBED, type Channels, type ParameterName, type Parameters } from './types';

/** Logged columns in SI at one pace; what drives the loop without gaps, what is read with gaps as NaN. */
export interface LoggedLoop {
  readonly t: Float64Array;
  readonly ambient?: Float64Array;
  /** Flow of the liquid, m³/s. */
  readonly flow?: Float64Array;
  /** Charge air before the cooler, K, and its mass flow, kg/s. */
  readonly chargeAirIn?: Float64Array;
  readonly chargeAirFlow?: Float64Array;
  /** Heat into the loop, W, where the air is not logged. */
  readonly heat?: Float64Array;
  readonly vehicleSpeed?: Float64Array;
  readonly channels: Channels;
}

/** Speeds are rounded to this, m/s: the air side is solved once for each. */
const SPEED_STEP = 1;
/** Readings from which a starting temperature is guessed. */
const FIRST = 10;

/**
 * Everything the model holds, as the loop was entered, in one duty: the flows and conductances of its
 * balance, thermal masses at its liquid's temperature.
 * @throws what {@link steady} throws
 */
export function enteredParameters(loop: Loop | PreparedLoop, duty: DutyId): Parameters {
  const prepared = prepare(loop);
  const solved = steady(prepared, duty);
  const { reservoir, chargeCoolerIn, chargeCoolerOut, frontOut } = solved.temperatures;
  const masses = nodeCapacities(prepared, reservoir);
  return {
    frontUA: solved.front.UA,
    frontShare: solved.front.liquidEffectiveness,
    chargeUA: solved.chargeCooler?.UA ?? 1,
    chargeShare: solved.chargeCooler?.effectiveness ?? 0,
    capacityRate: solved.front.C_liquid,
    flowScale: 1,
    heatScale: 1,
    pumpHeat: solved.ledger.pump,
    soakHeat: solved.ledger.engineSoak + solved.ledger.hoseSoak + solved.ledger.reservoirSoak,
    chargeCapacity: masses.chargeLiquid + masses.chargeMetal,
    reservoirCapacity: masses.reservoir,
    // The hoses' liquid is counted with the part it leads to; a pump holds a few kilojoules per kelvin.
    pumpCapacity: PUMP_CAPACITY,
    frontCapacity: masses.frontLiquid + masses.frontMetal,
    chargeStart: chargeCoolerOut,
    reservoirStart: reservoir,
    pumpStart: chargeCoolerIn,
    frontStart: frontOut,
  };
}

/** Half a litre of liquid and a kilogram of metal, J/K (common practice, no source). */
const PUMP_CAPACITY = 2500;

/**
 * The fit that a log allows. UA of the charge cooler is sought where its air is logged on both sides;
 * flow where no meter is; UA of the front exchanger, thermal masses and how it began always. The air
 * through the front exchanger is that of the loop as entered at the speed logged, as one stream.
 *
 * @throws {@link InvalidInputError} where neither heat nor charge air is logged, or no liquid temperature
 */
export function requestFromLog(
  loop: Loop | PreparedLoop,
  duty: DutyId,
  log: LoggedLoop,
): IdentifyRequest {
  const prepared = prepare(loop);
  const { channels, t } = log;
  const liquid = (['reservoir', 'charge', 'front', 'pump'] as const).filter((c) => channels[c]);
  if (liquid.length === 0)
    throw new InvalidInputError('log', 'a fit needs at least one temperature of the liquid');
  if (!log.heat && !log.chargeAirIn)
    throw new InvalidInputError(
      'log',
      'a fit needs what heats the loop: charge air before the cooler, or the heat itself',
    );
  const entered = enteredParameters(prepared, duty);
  const whole = (value: number) => new Float64Array(t.length).fill(value);
  const { arrangement } = prepared.loop.chargeCooler;
  const byAir = log.chargeAirIn !== undefined;
  const typical = median(channels[liquid[0]!]!.filter(Number.isFinite));
  const { rho, cp } = prepared.liquidAt(typical);

  const from: Record<ParameterName, number> = { ...entered };
  for (const node of ['charge', 'reservoir', 'pump', 'front'] as const) {
    const column = channels[node] ?? channels[liquid[0]!]!;
    const first = column.filter(Number.isFinite).subarray(0, FIRST);
    from[`${node}Start`] = median(first);
  }
  const free: ParameterName[] = ['frontUA'];
  if (byAir && channels.chargeAirOut) free.push('chargeUA');
  if (!log.flow) free.push('capacityRate');
  free.push('reservoirCapacity', 'chargeCapacity', 'frontCapacity');
  free.push('chargeStart', 'reservoirStart', 'pumpStart', 'frontStart');
  return {
    model: {
      order: PLUMBED,
      charge: byAir ? { by: 'UA', arrangement } : { by: 'heat' },
      front: { by: 'UA', arrangement: prepared.loop.frontExchanger.arrangement },
    },
    drive: {
      t,
      between: 'linear',
      ambient: log.ambient ?? whole(prepared.loop.site.ambientTemperature),
      heat: log.heat,
      chargeAirIn: log.chargeAirIn,
      chargeAirRate: byAir ? chargeRate(prepared, duty, log) : undefined,
      frontAirRate: frontRate(prepared, duty, log),
      liquidRate: log.flow?.map((flow) => flow * rho * cp),
    },
    channels,
    from,
    free,
  };
}

/** Capacity rate of the charge air: as logged, else that of the duty as entered. */
function chargeRate(prepared: PreparedLoop, duty: DutyId, log: LoggedLoop): Float64Array {
  const { chargeAirIn, chargeAirFlow } = log;
  if (chargeAirFlow) return chargeAirFlow.map((flow, k) => flow * airCp(chargeAirIn![k]!));
  const rate = steady(prepared, duty).charge?.capacityRate;
  if (rate === undefined)
    throw new InvalidInputError(
      'log',
      'the charge air’s flow is neither logged nor given by this duty, which states its heat',
    );
  return new Float64Array(log.t.length).fill(rate);
}

/** Capacity rate of the air through the whole face at the speed logged, else at the duty's. */
function frontRate(prepared: PreparedLoop, duty: DutyId, log: LoggedLoop): Float64Array {
  const own = prepared.loop.duties[duty].vehicleSpeed;
  const cp = airCp(prepared.loop.site.ambientTemperature);
  const known = new Map<number, number>();
  const at = (speed: number) => {
    const rounded = Math.max(0, SPEED_STEP * Math.round(speed / SPEED_STEP));
    let rate = known.get(rounded);
    if (rate === undefined) {
      rate = cp * prepared.airAt(rounded).totalMassFlow;
      known.set(rounded, rate);
    }
    return rate;
  };
  return Float64Array.from({ length: log.t.length }, (_, k) => at(log.vehicleSpeed?.[k] ?? own));
}

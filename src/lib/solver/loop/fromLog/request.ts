/** The question put to a log: which parameters are sought, compared with which description. */
import { InvalidInputError } from '../../errors';
import { frontExchange } from '../front';
import { requestFromLog } from '../identify/fromLog';
import type { IdentifyRequest } from '../identify/identify';
import { PARAMETERS, type Channels, type ParameterName } from '../identify/types';
import type { PreparedLoop } from '../prepare';
import type { DutyId } from '../types';
import { chargeAirOf } from './chargeAir';
import { uaOfInlet } from './exchange';
import type { Logged, LogMeans, MassesSought } from './types';

export interface Asked {
  /** `from` holds the loop as described, at the means of the log. */
  readonly request: IdentifyRequest;
  readonly means: LogMeans;
  /** Density times specific heat of the liquid at its mean temperature, J/(m³ K). */
  readonly perFlow: number;
}

/**
 * @param duty - stands in for what the log does not say of the vehicle
 * @param used - whether a row counts: inside a span
 * @throws {@link InvalidInputError} where the log holds no liquid temperature or nothing that brings heat
 */
export function askLog(
  prepared: PreparedLoop,
  duty: DutyId,
  logged: Logged,
  masses: MassesSought,
  used: (row: number) => boolean,
): Asked {
  const air = logged.heat ? null : chargeAirOf(prepared, logged);
  if (!logged.heat && !air)
    throw new InvalidInputError(
      'log',
      'it does not hold what brings the heat. Log the charge air before the cooler with its mass flow, or manifold pressure with engine speed in a job that counts air by speed and density, or the heat as a column',
    );
  const charge = logged.chargeCoolerOut ?? logged.frontIn;
  const channels: Channels = {
    ...(charge && { charge }),
    ...(logged.reservoir && { reservoir: logged.reservoir }),
    ...(logged.frontOut && { front: logged.frontOut }),
    ...(logged.chargeAirOut && air && { chargeAirOut: logged.chargeAirOut }),
  };
  const base = requestFromLog(prepared, duty, {
    ...logged,
    ...(air && { chargeAirIn: air.inlet, chargeAirFlow: air.massFlow }),
    channels,
  });
  const mean = (x: Float64Array) => meanOf(x, used);
  const liquids = [charge, logged.reservoir, logged.frontOut].filter((x) => x !== undefined);
  const T = liquids.reduce((sum, x) => sum + mean(x), 0) / liquids.length;
  if (!Number.isFinite(T))
    throw new InvalidInputError('log', 'no temperature of the liquid was read in these spans');
  const drive = { ...base.drive, ambient: freshAir(prepared, duty, logged, base.drive.ambient) };
  const means: LogMeans = {
    liquidTemperature: T,
    ambient: mean(drive.ambient),
    flow: logged.flow ? mean(logged.flow) : null,
    speed: logged.vehicleSpeed ? mean(logged.vehicleSpeed) : null,
    chargeAirFlow: air ? mean(air.massFlow) : null,
    frontAirRate: mean(drive.frontAirRate!),
  };
  const { rho, cp } = prepared.liquidAt(T);
  const from = {
    ...base.from,
    ...describedUA(prepared, duty, means),
    soakHeat: soakAt(prepared, duty, T),
  };
  const free = freeOf(base, masses);
  return { request: { ...base, drive, from, free }, means, perFlow: rho * cp };
}

/** Air that meets the front exchanger: ambient warmed by what stands before it, at each row's speed, K. */
function freshAir(
  prepared: PreparedLoop,
  duty: DutyId,
  { vehicleSpeed }: Logged,
  ambient: Float64Array,
): Float64Array {
  const own = prepared.loop.duties[duty].vehicleSpeed;
  return ambient.map((T, k) => {
    const speed = Math.max(0, Math.round(vehicleSpeed?.[k] ?? own));
    return T + prepared.airAt(speed).stackRise;
  });
}

/** Heat that soaks into liquid of temperature `T` from engine and engine bay as described, W. */
function soakAt({ loop }: PreparedLoop, duty: DutyId, T: number): number {
  const { soak, site, duties } = loop;
  const bay = site.ambientTemperature + duties[duty].bayRise;
  return (
    soak.engineConductance * (soak.engineTemperature - T) +
    (soak.hoseConductance + soak.reservoirConductance) * (bay - T)
  );
}

function freeOf({ drive, channels }: IdentifyRequest, masses: MassesSought): ParameterName[] {
  const free: ParameterName[] = ['frontUA'];
  if (channels.chargeAirOut) free.push('chargeUA');
  if (!drive.liquidRate) free.push('capacityRate');
  // Without a flow, heat, flow and every conductance may grow together unseen.
  else if (drive.heat || channels.chargeAirOut) free.push('heatScale');
  if (masses !== 'none') free.push('reservoirCapacity');
  if (masses === 'all') free.push('chargeCapacity', 'frontCapacity');
  // A start that nobody read is forgotten within a minute of flow and would only be one more unknown.
  if (channels.charge) free.push('chargeStart');
  if (channels.reservoir) free.push('reservoirStart');
  if (channels.front) free.push('frontStart');
  return free;
}

/**
 * Both cores as described, at the log's means, each as the one conductance that a fit speaks of: zones of
 * the face, air that comes round again and what stands in front are in it.
 */
function describedUA(prepared: PreparedLoop, duty: DutyId, means: LogMeans) {
  const { loop } = prepared;
  const { liquidTemperature: T, speed, chargeAirFlow: airMassFlow } = means;
  const liquid = prepared.liquidAt(T);
  const flow = means.flow !== null && means.flow > 0 ? means.flow : prepared.flowAt(T).flow;
  const air = prepared.airAt(speed ?? loop.duties[duty].vehicleSpeed);
  const frontUA = uaOfInlet(frontExchange(prepared, air, flow, liquid).conductance, {
    arrangement: loop.frontExchanger.arrangement,
    air: means.frontAirRate,
    liquid: liquid.rho * liquid.cp * flow,
  });
  const chargeUA =
    airMassFlow === null
      ? null
      : prepared.chargeCore.at({ airMassFlow, liquidFlow: flow, liquid }).UA;
  const inRange = (name: 'frontUA' | 'chargeUA', value: number) => {
    const [low, high] = PARAMETERS[name].range;
    return Math.min(Math.max(value, low), high);
  };
  return {
    frontUA: inRange('frontUA', frontUA),
    ...(chargeUA !== null && { chargeUA: inRange('chargeUA', chargeUA) }),
  };
}

function meanOf(x: Float64Array, used: (row: number) => boolean): number {
  let sum = 0;
  let count = 0;
  x.forEach((value, row) => {
    if (!Number.isFinite(value) || !used(row)) return;
    sum += value;
    count++;
  });
  return sum / count;
}

/** The question put to a log: which parameters are sought, compared with which description. */
import { InvalidInputError } from '../../errors';
import { requestFromLog } from '../identify/fromLog';
import type { IdentifyRequest } from '../identify/identify';
import type { Channels, ParameterName } from '../identify/types';
import type { PreparedLoop } from '../prepare';
import type { DutyId } from '../types';
import { chargeAirOf } from './chargeAir';
import type { Logged, LogMeans, Sought } from './types';

/**
 * Stretch that counts as one reading of what the model leaves, s: about the time the liquid takes once
 * through cores and hoses.
 */
const BLOCK = 10;

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
  sought: Sought,
  used: (row: number) => boolean,
): Asked {
  const air = logged.heat ? null : chargeAirOf(prepared, logged);
  if (!logged.heat && !air)
    throw new InvalidInputError(
      'log',
      'it does not hold what brings the heat. Log the charge air before the cooler with its mass flow, or manifold pressure with engine speed in a job that counts air by speed and density, or the heat as a column',
    );
  const channels: Channels = {
    ...(logged.chargeCoolerOut && { charge: logged.chargeCoolerOut }),
    ...(logged.frontIn && { frontIn: logged.frontIn }),
    ...(logged.reservoir && { reservoir: logged.reservoir }),
    ...(logged.frontOut && { front: logged.frontOut }),
    ...(logged.chargeAirOut && air && { chargeAirOut: logged.chargeAirOut }),
  };
  const { request, means } = requestFromLog(
    prepared,
    duty,
    { ...logged, ...(air && { chargeAirIn: air.inlet, chargeAirFlow: air.massFlow }), channels },
    used,
  );
  const { rho, cp } = prepared.liquidAt(means.liquidTemperature);
  return {
    request: { ...request, free: freeOf(request, sought), blocks: BLOCK },
    means,
    perFlow: rho * cp,
  };
}

function freeOf(
  { model, drive, channels }: IdentifyRequest,
  { masses, soak }: Sought,
): ParameterName[] {
  const free: ParameterName[] = ['frontUA'];
  if (channels.chargeAirOut) free.push('chargeUA');
  if (!drive.liquidRate) free.push('capacityRate');
  // Without a flow, heat, flow and every conductance may grow together unseen.
  else if (drive.heat || channels.chargeAirOut) free.push('heatScale');
  if (soak) free.push('soakHeat');
  if (masses !== 'none') free.push('reservoirCapacity');
  if (masses === 'all') free.push('chargeCapacity', 'frontCapacity');
  // A start that nobody read is forgotten within a minute of flow and would only be one more unknown.
  // Liquid into the front exchanger tells of the core before it, where there is one.
  const tells = 'frontFirst' in model && model.frontFirst ? null : channels.frontIn;
  if (channels.charge ?? tells) free.push('chargeStart');
  if (channels.reservoir) free.push('reservoirStart');
  if (channels.front) free.push('frontStart');
  return free;
}

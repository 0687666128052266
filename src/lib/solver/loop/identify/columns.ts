/** Logged columns as what drives the loop, row by row. */
import { InvalidInputError } from '../../errors';
import { withCore } from '../fromLog/asMeasured';
import { describedCores, type DescribedCores, type RowFlows } from '../fromLog/described';
import type { LogMeans } from '../fromLog/types';
import type { PreparedLoop } from '../prepare';
import type { DutyId } from '../types';
import type { ChannelName, Channels } from './types';

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

/** Temperatures of the liquid are told apart to this, K, where only its properties are asked. */
const PROPERTIES_STEP = 0.5;
const LIQUIDS = ['reservoir', 'pump', 'front', 'charge', 'frontIn'] as const;

export interface DriveColumns {
  /** Meets the front exchanger, K: ambient warmed by what stands before it. */
  readonly ambient: Float64Array;
  readonly bay: Float64Array;
  readonly heat?: Float64Array;
  readonly chargeAirIn?: Float64Array;
  readonly liquidRate?: Float64Array;
  readonly frontAirRate: Float64Array;
  readonly frontUA: Float64Array;
  readonly frontFilm: Float64Array;
  readonly chargeUA: Float64Array;
  readonly chargeFilm: Float64Array;
  readonly frontPower: Float64Array;
  readonly frontFilmPower: Float64Array;
  /** The cores at the means. */
  readonly described: DescribedCores;
  readonly means: LogMeans;
  /** m³/s; stands in where no meter is. */
  readonly flowAsEntered: number;
}

/** @throws {@link InvalidInputError} where the rows used hold no temperature of the liquid */
export function columnsOf(
  prepared: PreparedLoop,
  duty: DutyId,
  log: Omit<LoggedLoop, 'chargeAirFlow'> & { readonly chargeAirFlow: Float64Array | null },
  used: (row: number) => boolean,
): DriveColumns {
  const { t, chargeAirFlow, flow, vehicleSpeed } = log;
  const { site, duties } = prepared.loop;
  const mean = (x: Float64Array) => meanOf(x, used);
  const whole = (value: number) => new Float64Array(t.length).fill(value);
  const ambient = log.ambient ?? whole(site.ambientTemperature);
  const T = liquidTemperature(log.channels);
  const T_mean = mean(T);
  if (!Number.isFinite(T_mean))
    throw new InvalidInputError('log', 'no temperature of the liquid was read in these spans');
  const flowAsEntered = prepared.flowAt(T_mean).flow;
  const speed = vehicleSpeed ?? whole(duties[duty].vehicleSpeed);
  const known = new Map<number, ReturnType<PreparedLoop['liquidAt']>>();
  const liquidAt = (k: number) => {
    const step = Math.round((Number.isFinite(T[k]!) ? T[k]! : T_mean) / PROPERTIES_STEP);
    const found = known.get(step) ?? prepared.liquidAt(step * PROPERTIES_STEP);
    known.set(step, found);
    return found;
  };
  const flows = (k: number): RowFlows => ({
    liquid: liquidAt(k),
    flow: Math.max(0, flow?.[k] ?? flowAsEntered),
    speed: speed[k]!,
    chargeAirFlow: chargeAirFlow ? Math.max(0, chargeAirFlow[k]!) : null,
  });
  const cores = describedCores(prepared);
  const made = Array.from(t, (_, k) => cores(flows(k)));
  const means = {
    liquidTemperature: T_mean,
    flow: flow ? mean(flow) : null,
    speed: vehicleSpeed ? mean(vehicleSpeed) : null,
    chargeAirFlow: chargeAirFlow ? mean(chargeAirFlow) : null,
  };
  const atMeans: RowFlows = {
    liquid: prepared.liquidAt(T_mean),
    flow: means.flow ?? flowAsEntered,
    speed: means.speed ?? duties[duty].vehicleSpeed,
    chargeAirFlow: means.chargeAirFlow,
  };
  const described = cores(atMeans);
  const powers = frontPowers(prepared, flows, made, { atMeans, described });
  const column = (of: (row: (typeof made)[number], k: number) => number) =>
    Float64Array.from(made, of);
  const rise = bayRise(prepared, duty, vehicleSpeed !== undefined);
  return {
    ambient: column(({ stackRise }, k) => ambient[k]! + stackRise),
    bay: ambient.map((T_a, k) => T_a + rise(speed[k]!)),
    heat: log.heat,
    chargeAirIn: log.chargeAirIn,
    liquidRate: flow?.map((V, k) => {
      const { rho, cp } = liquidAt(k);
      return Math.max(0, V) * rho * cp;
    }),
    frontAirRate: column(({ frontAirRate }) => frontAirRate),
    frontUA: column(({ frontUA }) => frontUA),
    frontFilm: column(({ frontFilm }) => frontFilm),
    chargeUA: column(({ chargeUA }) => chargeUA),
    chargeFilm: column(({ chargeFilm }) => chargeFilm),
    ...powers,
    described,
    means: {
      ...means,
      ambient: mean(column(({ stackRise }, k) => ambient[k]! + stackRise)),
      frontAirRate: described.frontAirRate,
    },
    flowAsEntered,
  };
}

/** Dirt by which it is tried how the front exchanger's conductance goes down at each row. */
const TRIED = 0.85;

/** @see {@link Drive.frontPower} */
function frontPowers(
  prepared: PreparedLoop,
  flows: (k: number) => RowFlows,
  made: readonly DescribedCores[],
  { atMeans, described }: { readonly atMeans: RowFlows; readonly described: DescribedCores },
) {
  const cleanliness = TRIED * prepared.loop.frontExchanger.cleanliness;
  const dirtier = describedCores(withCore(prepared, 'frontExchanger', { cleanliness }));
  const whole = Math.log(dirtier(atMeans).frontUA / described.frontUA);
  const tried = made.map((_, k) => dirtier(flows(k)));
  const power = (of: (row: DescribedCores) => number) =>
    Float64Array.from(made, (row, k) => {
      const own = Math.log(of(tried[k]!) / of(row)) / whole;
      return Number.isFinite(own) ? own : 1;
    });
  return {
    frontPower: power(({ frontUA }) => frontUA),
    frontFilmPower: power(({ frontFilm }) => frontFilm),
  };
}

/** The reservoir's, by which the warm-up takes the liquid's properties; where it was not read, what is nearest. */
function liquidTemperature(channels: Channels): Float64Array {
  const read = LIQUIDS.flatMap((name: ChannelName) => channels[name] ?? []);
  return read[0]!.map((_, k) => read.find((x) => Number.isFinite(x[k]!))?.[k] ?? NaN);
}

/**
 * Air of the engine bay above ambient by speed, K: that of traffic up to its speed, that of cruise from
 * its own, straight between. Without a logged speed that of the duty.
 */
function bayRise({ loop }: PreparedLoop, duty: DutyId, logged: boolean): (speed: number) => number {
  const { traffic, cruise } = loop.duties;
  const width = cruise.vehicleSpeed - traffic.vehicleSpeed;
  if (!logged || !(width > 0)) return () => loop.duties[duty].bayRise;
  return (speed) => {
    const share = Math.min(1, Math.max(0, (speed - traffic.vehicleSpeed) / width));
    return traffic.bayRise + share * (cruise.bayRise - traffic.bayRise);
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

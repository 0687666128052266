/** A fit set up from a loop as entered and what was logged on it. */
import { airCp } from '../../air/air';
import { InvalidInputError } from '../../errors';
import { hoseVolume } from '../../hydraulics/hose';
import type { LogMeans } from '../fromLog/types';
import { isFrontFirst } from '../order';
import { prepared as prepare, type PreparedLoop } from '../prepare';
import { steady } from '../steady';
import { thermalMass } from '../thermalMass';
import type { DutyId, Loop } from '../types';
import type { IdentifyRequest } from './identify';
import { columnsOf, type LoggedLoop } from './columns';
import { median } from './noise';
import { PARAMETERS, type NodeModel, type ParameterName, type Parameters } from './types';

/** Readings from which a starting temperature is guessed. */
const FIRST = 10;

export interface LogRequest {
  readonly request: IdentifyRequest & { readonly model: NodeModel };
  readonly means: LogMeans;
}

/**
 * Everything the model holds, as the loop was entered, in one duty: the flows and conductances of its
 * balance, thermal masses at its liquid's temperature; hoses by themselves.
 * @throws what {@link steady} throws
 */
export function enteredParameters(loop: Loop | PreparedLoop, duty: DutyId): Parameters {
  const prepared = prepare(loop);
  const solved = steady(prepared, duty);
  const { reservoir, chargeCoolerIn, chargeCoolerOut, frontIn, frontOut } = solved.temperatures;
  const mass = massesOf(prepared, reservoir);
  return {
    frontUA: solved.front.UA,
    frontShare: solved.front.liquidEffectiveness,
    chargeUA: solved.chargeCooler?.UA ?? 1,
    chargeShare: solved.chargeCooler?.effectiveness ?? 0,
    capacityRate: solved.front.C_liquid,
    flowScale: 1,
    heatScale: 1,
    pumpHeat: solved.ledger.pump,
    // Where it soaks in, by the liquid's own temperature, is part of the model.
    soakHeat: 0,
    chargeCapacity: mass.chargeLiquid + mass.chargeMetal,
    reservoirCapacity: mass.reservoirLiquid + mass.reservoirMetal,
    pumpCapacity: mass.suction + mass.delivery,
    frontCapacity: mass.frontLiquid + mass.frontMetal,
    chargeStart: chargeCoolerOut,
    reservoirStart: reservoir,
    pumpStart: isFrontFirst(prepared.loop) ? frontIn : chargeCoolerIn,
    frontStart: frontOut,
  };
}

function massesOf(prepared: PreparedLoop, T: number) {
  const parts = thermalMass(prepared, T);
  const { hoses } = prepared.loop;
  const { rho, cp } = prepared.liquidAt(T);
  const perVolume = rho * cp;
  const of = (name: (typeof parts)[number]['part']) =>
    parts.find(({ part }) => part === name)?.capacity ?? 0;
  return {
    chargeLiquid: of('chargeLiquid'),
    chargeMetal: of('chargeMetal'),
    frontLiquid: of('frontLiquid'),
    frontMetal: of('frontMetal'),
    reservoirLiquid: of('reservoirLiquid'),
    reservoirMetal: of('reservoirMetal'),
    suction: perVolume * hoseVolume(hoses.suction),
    delivery: perVolume * hoseVolume(hoses.delivery),
    transfer: perVolume * hoseVolume(hoses.transfer),
    back: perVolume * hoseVolume(hoses.back),
  };
}

/**
 * The fit that a log allows. UA of the charge cooler is sought where its air is logged on both sides;
 * flow where no meter is; UA of the front exchanger, thermal masses and how it began always. Each UA
 * stands for the means of the rows used; over the log it follows its flows as the description says.
 *
 * @param used - whether a row counts
 * @throws {@link InvalidInputError} where neither heat nor charge air is logged, or no liquid temperature
 */
export function requestFromLog(
  loop: Loop | PreparedLoop,
  duty: DutyId,
  log: LoggedLoop,
  used: (row: number) => boolean = () => true,
): LogRequest {
  const prepared = prepare(loop);
  const { channels, t } = log;
  const liquid = (['reservoir', 'charge', 'frontIn', 'front', 'pump'] as const).filter(
    (c) => channels[c],
  );
  if (liquid.length === 0)
    throw new InvalidInputError('log', 'a fit needs at least one temperature of the liquid');
  if (!log.heat && !log.chargeAirIn)
    throw new InvalidInputError(
      'log',
      'a fit needs what heats the loop: charge air before the cooler, or the heat itself',
    );
  const byAir = !log.heat;
  const chargeAirFlow = byAir ? (log.chargeAirFlow ?? chargeFlow(prepared, duty, t.length)) : null;
  const columns = columnsOf(prepared, duty, { ...log, chargeAirFlow }, used);
  const { means } = columns;
  const { rho, cp } = prepared.liquidAt(means.liquidTemperature);
  const { described } = columns;
  const [frontUA, chargeUA] = [
    inRange('frontUA', described.frontUA),
    inRange('chargeUA', described.chargeUA),
  ];
  const entered = enteredParameters(prepared, duty);
  const from: Record<ParameterName, number> = { ...entered, frontUA, chargeUA };
  from.capacityRate = columns.flowAsEntered * rho * cp;
  for (const node of ['charge', 'reservoir', 'pump', 'front'] as const) {
    const column = channels[node] ?? channels[liquid[0]!]!;
    from[`${node}Start`] = median(column.filter(Number.isFinite).subarray(0, FIRST));
  }
  const free: ParameterName[] = ['frontUA'];
  if (byAir && channels.chargeAirOut) free.push('chargeUA');
  if (!log.flow) free.push('capacityRate');
  free.push('reservoirCapacity', 'chargeCapacity', 'frontCapacity');
  free.push('chargeStart', 'reservoirStart', 'frontStart');
  const over = (x: Float64Array, by: number) => x.map((value) => value / by);
  const { ambient, bay, heat, chargeAirIn, liquidRate, frontAirRate } = columns;
  const { frontFilm, chargeFilm, frontPower, frontFilmPower } = columns;
  return {
    means,
    request: {
      model: modelOf(prepared, byAir, { frontUA, chargeUA }, means.liquidTemperature),
      drive: {
        ...{ t, between: 'linear', ambient, bay, heat, chargeAirIn, liquidRate, frontAirRate },
        ...{ frontFilm, chargeFilm, frontPower, frontFilmPower },
        chargeAirRate: chargeAirFlow?.map((flow, k) => flow * airCp(chargeAirIn![k]!)),
        frontShape: over(columns.frontUA, described.frontUA),
        chargeShape: byAir ? over(columns.chargeUA, described.chargeUA) : undefined,
      },
      channels,
      from,
      free,
    },
  };
}

const inRange = (name: ParameterName, value: number) => {
  const [low, high] = PARAMETERS[name].range;
  return Math.min(Math.max(value, low), high);
};

function modelOf(
  prepared: PreparedLoop,
  byAir: boolean,
  described: NodeModel['described'],
  T: number,
): NodeModel {
  const { chargeCooler, frontExchanger, reservoir, soak } = prepared.loop;
  const mass = massesOf(prepared, T);
  const share = (one: number, other: number) => one / (one + other || 1);
  return {
    kind: 'nodes',
    charge: byAir ? { by: 'UA', arrangement: chargeCooler.arrangement } : { by: 'heat' },
    front: { arrangement: frontExchanger.arrangement },
    soak,
    frontFirst: isFrontFirst(prepared.loop),
    shortCircuit: reservoir.shortCircuit,
    metalShare: {
      charge: share(mass.chargeMetal, mass.chargeLiquid),
      front: share(mass.frontMetal, mass.frontLiquid),
    },
    hoses: {
      transfer: mass.transfer,
      back: mass.back,
      suctionShare: share(mass.suction, mass.delivery),
    },
    described,
  };
}

/** Charge air of the duty as entered, kg/s, throughout. */
function chargeFlow(prepared: PreparedLoop, duty: DutyId, rows: number): Float64Array {
  const flow = steady(prepared, duty).charge?.massFlow;
  if (flow === undefined)
    throw new InvalidInputError(
      'log',
      'the charge air’s flow is neither logged nor given by this duty, which states its heat',
    );
  return new Float64Array(rows).fill(flow);
}

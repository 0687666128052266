/** What drives the transient during one segment, as functions of the reservoir outlet's temperature. */
import { LazyTable } from '../numerics/lazyTable';
import { throughFilm } from './front';
import type { PreparedLoop } from './prepare';
import { roundAt } from './roundAt';
import { standingConductances } from './standing';
import { FLOW_STANDING } from './steady';
import type { Duty, Segment } from './types';

/** Where each coefficient stands in the table. */
export const K = {
  flow: 0,
  /** Capacity rate of the liquid, W/K. */
  C: 1,
  chargeAirIn: 2,
  /** Charge air to metal and metal to liquid, W/K. */
  chargeAir: 3,
  chargeLiquid: 4,
  /** Share of its distance to the metal that the charge air covers. */
  chargeShare: 5,
  /** Metal to fresh air and liquid to metal, W/K. */
  frontAir: 6,
  frontLiquid: 7,
  /** From the pump into the liquid, W. */
  pumpHeat: 8,
  /** Fresh air of the front exchanger, K; in the table only where it follows the liquid. */
  freshAir: 9,
} as const;
export const COEFFICIENTS = 9;
/** With those of a face partly covered. */
export const COEFFICIENTS_PARTED = 10;

export interface Forcing {
  readonly duty: Duty;
  /** Charge heat stated outright, W; null: from the charge air. */
  readonly statedHeat: number | null;
  readonly bayAir: number;
  readonly freshAir: number;
  /** Parts of the face have airs of their own; their mean follows the liquid and is read from the table. */
  readonly freshAirVaries: boolean;
  /** From the pump into the liquid, W; where it follows the liquid, that with the coolant at 20 °C. */
  readonly pumpHeat: number;
  /** The pump's heat follows the liquid and is read from the table. */
  readonly pumpHeatVaries: boolean;
  /** Coefficients at a temperature of the reservoir's outlet. */
  readonly table: LazyTable;
}

/** Width of a piece of the table before it is refined, and the disagreement allowed in it. */
const PIECE = 28;
/** A drive mostly stays above ambient, and a piece begins this far below it, K. */
const BELOW_AMBIENT = 4;
export const TABLE_RTOL = 1e-7;
const LEAST_CLEAN = 0.05;
/** The liquid's part of a core's resistance is not let below this share of the whole. */
const LEAST_LIQUID_SHARE = 1e-3;
/** How round the corner to that share is, of the share: the rates then bend but never break. */
const CORNER = 0.25;

/**
 * Split a core's conductance G (air inlet to liquid inlet) at its metal, in series, so that the
 * transient settles exactly where the steady solution lies.
 *
 * The air side is that of a stream past a wall of one temperature, C (1 - exp(-hA/C)): the air can then
 * never leave colder than the metal. The liquid side takes the rest of 1/G. It is always positive, as no
 * arrangement carries more than the air side alone; where it all but vanishes it is held at a
 * thousandth of the whole, which keeps the equations from growing stiffer than anything real in them.
 * The corner between the two is rounded within another thousandth: a table of it stays smooth.
 */
export function splitAtMetal(
  G: number,
  airSide: number,
): { readonly air: number; readonly liquid: number } {
  const R = 1 / G;
  const least = LEAST_LIQUID_SHARE * R;
  const x = (R - 1 / airSide - least) / (CORNER * least);
  const liquid = least + CORNER * least * (Math.max(x, 0) + Math.log1p(Math.exp(-Math.abs(x))));
  return { air: 1 / (R - liquid), liquid: 1 / liquid };
}

/** What drives the loop in a segment. */
export type Forcings = (segment: Segment) => Forcing;

/**
 * Forcings of a schedule; equal segments share one.
 * @param piece - width of a piece of the table before it is refined, K
 */
export function forcingOf(prepared: PreparedLoop, piece: number = PIECE): Forcings {
  const known = new Map<string, Forcing>();
  return (segment) => {
    const duty = prepared.loop.duties[segment.duty];
    const speed = segment.vehicleSpeed ?? duty.vehicleSpeed;
    const key = `${segment.duty} ${speed} ${segment.heat}`;
    const earlier = known.get(key);
    if (earlier) return earlier;
    const forcing = newForcing(prepared, duty, speed, segment.heat, piece);
    known.set(key, forcing);
    return forcing;
  };
}

function newForcing(
  prepared: PreparedLoop,
  described: Duty,
  vehicleSpeed: number,
  heat: number | undefined,
  piece: number,
): Forcing {
  const { loop, coldest, hottest, hydraulics } = prepared;
  const duty: Duty = heat === undefined ? described : { ...described, air: { by: 'heat', heat } };
  const air = prepared.airAt(vehicleSpeed);
  const anchor = loop.site.ambientTemperature - BELOW_AMBIENT;
  const fill = (T: number, out: Float64Array) => coefficients(prepared, duty, vehicleSpeed, T, out);
  const freshAirVaries = air.zones[0]!.parts !== undefined;
  const tabled = freshAirVaries ? COEFFICIENTS_PARTED : COEFFICIENTS;
  return {
    duty,
    statedHeat: duty.air.by === 'heat' ? duty.air.heat : null,
    bayAir: loop.site.ambientTemperature + duty.bayRise,
    freshAir: loop.site.ambientTemperature + air.stackRise,
    freshAirVaries,
    pumpHeat: hydraulics.pump.heatToLiquid,
    pumpHeatVaries: hydraulics.fixedPump === null,
    table: new LazyTable(fill, tabled, coldest, hottest, piece, TABLE_RTOL, anchor),
  };
}

/** The coefficients worked out directly; the table is held to these. */
export function coefficients(
  prepared: PreparedLoop,
  duty: Duty,
  vehicleSpeed: number,
  T: number,
  out: Float64Array,
): void {
  const { loop, chargeCore, frontCore } = prepared;
  const at = roundAt(prepared, duty, prepared.airAt(vehicleSpeed), T);
  const { charge, front, liquid } = at;
  const flows = at.flow >= FLOW_STANDING;
  const flow = flows ? at.flow : 0;
  const C = flows ? at.round.C : 0;
  const C_air = charge.core?.C_air ?? 0;

  const still = standingConductances(prepared, charge, front).toLiquid;
  /** Metal to liquid where no air takes part; never quite nothing, or stated heat could not get out. */
  const film = (core: typeof chargeCore, cleanliness: number) =>
    throughFilm(
      C,
      Math.max(cleanliness, LEAST_CLEAN) *
        core.at({ airMassFlow: 0, liquidFlow: flow, liquid }).hA_liquid,
    );
  const split = (G: number, airSide: number, alone: () => number, standing: number) => {
    if (!flows) return { air: airSide, liquid: standing };
    return G > 0 ? splitAtMetal(G, airSide) : { air: 0, liquid: alone() };
  };
  const chargeSplit = split(
    charge.conductance,
    charge.airSideConductance,
    () => film(chargeCore, loop.chargeCooler.cleanliness),
    still.charge,
  );
  const frontSplit = split(
    front.conductance,
    front.airSideConductance,
    () => film(frontCore, loop.frontExchanger.cleanliness),
    still.front,
  );
  out[K.flow] = flow;
  out[K.C] = C;
  out[K.chargeAirIn] = charge.core ? charge.airIn : 0;
  out[K.chargeAir] = chargeSplit.air;
  out[K.chargeLiquid] = chargeSplit.liquid;
  out[K.chargeShare] = C_air > 0 ? chargeSplit.air / C_air : 0;
  out[K.frontAir] = frontSplit.air;
  out[K.frontLiquid] = frontSplit.liquid;
  out[K.pumpHeat] = flows ? at.round.pumpHeat : 0;
  if (out.length > K.freshAir) out[K.freshAir] = flows ? front.freshAir : front.freshAirOfMetal;
}

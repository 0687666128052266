/** Rates of change of the transient's nodes. */
import type { LazyTable } from '../numerics/lazyTable';
import { COEFFICIENTS_PARTED, K, type Forcing } from './forcing';
import { isFrontFirst } from './order';
import type { NodeCapacities } from './thermalMass';
import type { Loop } from './types';

/** Where each node stands in the state; the last two gather the heat that came in and went out, J. */
export const NODE = {
  reservoir: 0,
  chargeLiquid: 1,
  chargeMetal: 2,
  frontLiquid: 3,
  frontMetal: 4,
  heatIn: 5,
  heatOut: 6,
} as const;
export const STATES = 7;

/** What can be read off a state besides the state itself. */
export interface Reading {
  /** Leaving the reservoir, entering the charge cooler, entering the front exchanger, K. */
  T_out: number;
  coolerIn: number;
  frontIn: number;
  /** Charge air after the cooler, K; NaN where heat is stated. */
  chargeOut: number;
  /** All heat but the front exchanger's, W, and the front exchanger's. */
  heatIn: number;
  heatOut: number;
  flow: number;
}

export interface Network {
  /** Rates of change under a forcing, K/s and W. */
  rates(forcing: Forcing, y: Float64Array, out: Float64Array): void;
  /** Fill `reading` for a state. */
  read(forcing: Forcing, y: Float64Array): Reading;
}

/**
 * The loop as five nodes: the well-mixed reservoir, and liquid (its outlet) and metal of each core.
 *
 * Metal of a core takes heat from the air, G_air (T_air - T_metal), and gives it to the liquid by the
 * liquid's inlet temperature, G_liquid (T_metal - T_in); the liquid node follows
 * C_node dT/dt = C (T_in - T) + heats. Standing liquid meets the metal at its own temperature instead.
 * Soak, pump heat and short circuit are those of the steady round, so with all rates zero the nodes
 * stand at the steady solution.
 */
export function network(loop: Loop, capacity: NodeCapacities): Network {
  const { soak, reservoir } = loop;
  const s = reservoir.shortCircuit;
  const frontFirst = isFrontFirst(loop);
  const G_e = soak.engineConductance;
  const T_e = soak.engineTemperature;
  const G_h = soak.hoseConductance;
  const G_r = soak.reservoirConductance;
  /** Coefficients, and where they were read: most changes of a state leave T_out alone. */
  const k = new Float64Array(COEFFICIENTS_PARTED);
  let readAt = NaN;
  let readFrom: LazyTable | null = null;
  const reading: Reading = {
    T_out: 0,
    coolerIn: 0,
    frontIn: 0,
    chargeOut: 0,
    heatIn: 0,
    heatOut: 0,
    flow: 0,
  };

  function rates(forcing: Forcing, y: Float64Array, out: Float64Array): void {
    const tank = y[0]!;
    const cl = y[1]!;
    const cm = y[2]!;
    const fl = y[3]!;
    const fm = y[4]!;
    const back = frontFirst ? cl : fl;
    const T_out = s * back + (1 - s) * tank;
    if (T_out !== readAt || forcing.table !== readFrom) {
      forcing.table.at(T_out, k);
      readAt = T_out;
      readFrom = forcing.table;
    }
    const C = k[K.C]!;
    const flows = C > 0;
    const pump = flows ? (forcing.pumpHeatVaries ? k[K.pumpHeat]! : forcing.pumpHeat) : 0;
    const delivered = T_out + pump / C;
    const first = frontFirst ? fl : cl;
    const between = (C * first + G_h * forcing.bayAir) / (C + G_h);
    const coolerIn = flows ? (frontFirst ? between : delivered) : cl;
    const frontIn = flows ? (frontFirst ? delivered : between) : fl;

    const charge = forcing.statedHeat ?? k[K.chargeAir]! * (k[K.chargeAirIn]! - cm);
    const intoCharge = k[K.chargeLiquid]! * (cm - coolerIn);
    const engine = G_e * (T_e - cl);
    const hose = flows ? C * (between - first) : 0;
    const intoFrontMetal = k[K.frontLiquid]! * (frontIn - fm);
    const freshAir = forcing.freshAirVaries ? k[K.freshAir]! : forcing.freshAir;
    const front = k[K.frontAir]! * (fm - freshAir);
    const bay = G_r * (forcing.bayAir - tank);

    out[0] = ((1 - s) * C * (back - tank) + bay) / capacity.reservoir;
    out[1] = (C * (coolerIn - cl) + intoCharge + engine) / capacity.chargeLiquid;
    out[2] = (charge - intoCharge) / capacity.chargeMetal;
    out[3] = (C * (frontIn - fl) - intoFrontMetal) / capacity.frontLiquid;
    out[4] = (intoFrontMetal - front) / capacity.frontMetal;
    out[5] = charge + engine + pump + hose + bay;
    out[6] = front;

    reading.T_out = T_out;
    reading.coolerIn = coolerIn;
    reading.frontIn = frontIn;
    reading.heatIn = out[5]!;
    reading.heatOut = front;
    reading.flow = k[K.flow]!;
    reading.chargeOut =
      forcing.statedHeat === null
        ? k[K.chargeAirIn]! - k[K.chargeShare]! * (k[K.chargeAirIn]! - cm)
        : NaN;
  }

  const scratch = new Float64Array(STATES);
  return {
    rates,
    read(forcing, y) {
      rates(forcing, y, scratch);
      return reading;
    },
  };
}

/** Rates of change of the loop with its feedbacks, in one mode. */
import { heatOfVaporisation } from '../../fluids/vaporisation';
import { ICE_POINT } from '../../fluids/ice';
import type { ThermalBreaker } from '../../feed/breaker';
import type { LazyTable } from '../../numerics/lazyTable';
import { COEFFICIENTS_PARTED, K } from '../forcing';
import { isFrontFirst } from '../order';
import type { NodeCapacities } from '../thermalMass';
import type { Loop } from '../types';
import { cellConductance, cellRates } from './hoseCells';
import type { Layout } from './layout';
import type { EventReading, Mode } from './mode';
import type { UnderhoodFeature } from './types';

/** What of the loop enters the rates. */
export interface NetworkParts {
  readonly loop: Loop;
  readonly layout: Layout;
  /** The reservoir with its ice melted; hoses left out where they have cells. */
  readonly capacity: NodeCapacities;
  /** Of one cell of each run, J/K, in order of flow. */
  readonly cellCapacity: readonly number[];
  readonly boilingPoint: number;
  readonly specificHeat: number;
  readonly breaker: ThermalBreaker | null;
  readonly breakerOutside: boolean;
  readonly underhood: UnderhoodFeature | null;
}

export interface EventNetwork {
  rates(mode: Mode, y: Float64Array, out: Float64Array): void;
  read(mode: Mode, y: Float64Array): EventReading;
  /** Temperature of the reservoir, K: the cheap part of a reading. */
  reservoir(mode: Mode, y: Float64Array): number;
  /** Latent heat at the boiling point, J/kg. */
  readonly latent: number;
}

/** A copy of our own: looked up some thousand times a run. */
const AT = { ...K };
/** A breaker is not let below this share of its rating, whatever the bay does. */
const LEAST_HOLD = 0.05;

/**
 * The five nodes of the warm-up with what may be added to them.
 *
 * The reservoir is followed by its heat, written as the temperature its liquid would have with all of
 * its mass there and no ice: y = 273.15 K + H / C. Ice stands at y < 273.15 K, its mass the missing heat
 * over the heat of fusion; with steam gone the same heat belongs to less liquid.
 *
 * A boiling liquid keeps its temperature; its surplus of heat leaves as steam at once, through the cap.
 * The reservoir makes up for what other parts boil off, at its own temperature.
 *
 * A run of hose is a row of equal, well-mixed cells: the mean time through it is exact, a step arrives
 * spread over the mean time divided by the root of the number of cells. Bay heat enters the cells of the
 * run between the cores in such shares that a steady round takes up exactly what the steady solution says.
 */
export function eventNetwork(parts: NetworkParts): EventNetwork {
  const { loop, layout, capacity, cellCapacity, breaker, underhood } = parts;
  const { boilingPoint: T_b, specificHeat: cp } = parts;
  const { soak, reservoir, site } = loop;
  const s = reservoir.shortCircuit;
  const frontFirst = isFrontFirst(loop);
  const G_e = soak.engineConductance;
  const T_e = soak.engineTemperature;
  const G_h = soak.hoseConductance;
  const G_r = soak.reservoirConductance;
  const { vapour, breaker: iBreaker, bay: iBay, cells: N, firstCell } = layout;
  const latent = vapour >= 0 ? heatOfVaporisation(T_b) : NaN;
  const lastCell = (run: number) => firstCell + (run + 1) * N - 1;
  /** Coefficients, and where they were read: most changes of a state leave T_out alone. */
  const k = new Float64Array(COEFFICIENTS_PARTED);
  let readAt = NaN;
  let readFrom: LazyTable | null = null;
  const reading: EventReading = {
    reservoir: 0,
    T_out: 0,
    coolerIn: 0,
    frontIn: 0,
    returning: 0,
    chargeOut: 0,
    bayAir: 0,
    flow: 0,
    heatIn: 0,
    heatOut: 0,
    reservoirHeat: 0,
    chargeHeat: 0,
    frontHeat: 0,
  };

  function tankOf(mode: Mode, y: Float64Array): number {
    if (mode.boils.reservoir) return T_b;
    if (mode.melting) return ICE_POINT;
    if (vapour < 0 || y[vapour] === 0) return y[0]!;
    const share = 1 - (cp * y[vapour]!) / capacity.reservoir;
    return ICE_POINT + (y[0]! - ICE_POINT) / share;
  }

  /** One run of cells fed at `T_in`, each taking `g` W/K from the bay. @returns heat taken, W */
  const run = (
    index: number,
    C: number,
    T_in: number,
    g: number,
    bay: number,
    y: Float64Array,
    out: Float64Array,
  ) => cellRates(C, T_in, g, bay, cellCapacity[index]!, firstCell + index * N, N, y, out);

  function rates(mode: Mode, y: Float64Array, out: Float64Array): void {
    const { base, inletGain } = mode.forcing;
    const tank = tankOf(mode, y);
    const cl = y[1]!;
    const cm = y[2]!;
    const fl = y[3]!;
    const fm = y[4]!;
    const bay = iBay >= 0 ? y[iBay]! : base.bayAir;
    const first = frontFirst ? fl : cl;
    const second = frontFirst ? cl : fl;
    const back = N > 0 ? y[lastCell(3)]! : second;
    const T_out = s * back + (1 - s) * tank;
    if (T_out !== readAt || base.table !== readFrom) {
      base.table.at(T_out, k);
      readAt = T_out;
      readFrom = base.table;
    }
    const C = k[AT.C]!;
    const flows = C > 0;
    const pump = flows ? (base.pumpHeatVaries ? k[AT.pumpHeat]! : base.pumpHeat) : 0;

    let atFirst: number;
    let atSecond: number;
    let hose: number;
    if (N === 0) {
      atFirst = T_out + pump / C;
      atSecond = (C * first + G_h * bay) / (C + G_h);
      hose = flows ? C * (atSecond - first) : 0;
    } else {
      const g = cellConductance({ C, G: G_h, N });
      run(0, C, T_out, 0, bay, y, out);
      run(1, C, flows ? y[lastCell(0)]! + pump / C : first, 0, bay, y, out);
      hose = run(2, C, first, g, bay, y, out);
      run(3, C, second, 0, bay, y, out);
      atFirst = y[lastCell(1)]!;
      atSecond = y[lastCell(2)]!;
    }
    const coolerIn = flows ? (frontFirst ? atSecond : atFirst) : cl;
    const frontIn = flows ? (frontFirst ? atFirst : atSecond) : fl;

    let airIn = k[AT.chargeAirIn]!;
    if (underhood && inletGain > 0) {
      airIn += inletGain * underhood.inletShare * (bay - base.bayAir);
    }
    const charge = base.statedHeat ?? k[AT.chargeAir]! * (airIn - cm);
    const intoCharge = k[AT.chargeLiquid]! * (cm - coolerIn);
    const engine = G_e * (T_e - cl);
    const intoFrontMetal = k[AT.frontLiquid]! * (frontIn - fm);
    const freshAir = base.freshAirVaries ? k[AT.freshAir]! : base.freshAir;
    const front = k[AT.frontAir]! * (fm - freshAir);
    const bayHeat = G_r * (bay - tank);

    const tankHeat = (1 - s) * C * (back - tank) + bayHeat;
    const chargeHeat = C * (coolerIn - cl) + intoCharge + engine;
    const frontHeat = C * (frontIn - fl) - intoFrontMetal;
    out[0] = tankHeat / capacity.reservoir;
    out[1] = chargeHeat / capacity.chargeLiquid;
    out[2] = (charge - intoCharge) / capacity.chargeMetal;
    out[3] = frontHeat / capacity.frontLiquid;
    out[4] = (intoFrontMetal - front) / capacity.frontMetal;
    out[5] = charge + engine + pump + hose + bayHeat;
    out[6] = front;
    if (vapour >= 0) {
      const { reservoir: tankBoils, charge: chargeBoils, front: frontBoils } = mode.boils;
      // Made up for by the reservoir: warmed to the boiling point first, then boiled off.
      const each = latent + cp * (T_b - tank);
      const elsewhere = (chargeBoils ? chargeHeat / each : 0) + (frontBoils ? frontHeat / each : 0);
      const here = tankBoils ? tankHeat / latent : 0;
      out[vapour] = elsewhere + here;
      if (chargeBoils) out[1] = 0;
      if (frontBoils) out[3] = 0;
      if (elsewhere !== 0 || here !== 0) {
        const gone = elsewhere * cp * (tank - ICE_POINT) + here * (latent + cp * (T_b - ICE_POINT));
        out[0] = (tankHeat - gone) / capacity.reservoir;
      }
    }
    if (breaker) {
      const around = parts.breakerOutside ? site.ambientTemperature : bay;
      const left = 1 - breaker.lossPerKelvin * (around - breaker.referenceTemperature);
      const ratio = mode.current / (breaker.rating * Math.max(left, LEAST_HOLD));
      // The state is kept less one: it is sharpest where the breaker opens.
      out[iBreaker] = (ratio * ratio - 1 - y[iBreaker]!) / breaker.timeConstant;
    }
    if (underhood) {
      const towards = base.bayAir + underhood.liquidGain * (tank - site.ambientTemperature);
      out[iBay] = (towards - bay) / underhood.timeConstant;
    }

    reading.reservoir = tank;
    reading.T_out = T_out;
    reading.coolerIn = coolerIn;
    reading.frontIn = frontIn;
    reading.returning = back;
    reading.bayAir = bay;
    reading.flow = k[AT.flow]!;
    reading.heatIn = out[5]!;
    reading.heatOut = front;
    reading.reservoirHeat = tankHeat;
    reading.chargeHeat = chargeHeat;
    reading.frontHeat = frontHeat;
    reading.chargeOut = base.statedHeat === null ? airIn - k[AT.chargeShare]! * (airIn - cm) : NaN;
  }

  const scratch = new Float64Array(layout.dimension);
  return {
    rates,
    reservoir: tankOf,
    latent,
    read(mode, y) {
      rates(mode, y, scratch);
      return reading;
    },
  };
}

/** What the liquid side of a loop answers. */
import type { Note } from '../errors';
import type { SuppliedPump } from '../feed/supply';
import type { Kept } from '../kept';
import type { OperatingPoint } from '../loop/types';
import type { SuctionSide } from '../suction/npsh';
import type { FlowingLiquid } from './hose';
import type { Near } from './intersection';
import type { PumpModel } from './pump';

/** The pump with its flow, found together. */
export interface SettledPump {
  readonly pump: PumpModel;
  /** m³/s; 0 when it does not run. */
  readonly flow: number;
  /** Null where the volts are stated. */
  readonly supplied: SuppliedPump | null;
  /** What must be told of the feed. */
  readonly notes: readonly Note[];
}

/** The suction side at one flow and temperature, m of the liquid. */
export interface SuctionState {
  readonly available: number;
  readonly required: number;
  /** Share of the pump's head that is left at that. */
  readonly headLeft: number;
  /** What the balance of the suction head is made of. */
  readonly side: SuctionSide;
}

/** How a study of many like loops has their flow found. */
export interface HowToSettle {
  readonly kept?: Kept;
  /** Where the flow lay before, and how sharply it is wanted; absent: from nothing, down to rounding. */
  readonly near?: Near;
}

export interface HydraulicModel {
  /**
   * The pump at the volts on its plug. On a feed whose current follows the flow these depend on the
   * liquid: this is then the pump with the coolant at 20 °C, and {@link settled} tells the others.
   */
  readonly pump: PumpModel;
  /** The pump where its volts do not depend on the liquid; null where they do. */
  readonly fixedPump: PumpModel | null;
  /** Pump and flow where the loop settles, found together with the volts; `T` as in {@link flowAt}. */
  settled(liquid: FlowingLiquid, T?: number): SettledPump;
  /** Pump and flow with any volts held on the plug, whatever the feed; the pump gives its curve. */
  heldAt(liquid: FlowingLiquid): (volts: number) => Pick<SettledPump, 'pump' | 'flow'>;
  /** Head the loop asks at `flow`, m of the liquid. */
  systemHead(flow: number, liquid: FlowingLiquid): number;
  /**
   * Flow where the loop settles, m³/s; 0 when the pump does not run. Without the liquid's temperature
   * `T` (K) the pump is taken as giving its curve, cavitation counted or not.
   */
  flowAt(liquid: FlowingLiquid, T?: number): number;
  /** Suction side at one temperature, K, as a function of the flow; the pump as it runs there. */
  suctionOver(liquid: FlowingLiquid, T: number): (flow: number) => SuctionState;
  /** Suction side at any flow and temperature, whether the loop settles there or not. */
  suctionAt(flow: number, liquid: FlowingLiquid, T: number): SuctionState;
  /** The whole state there, with the suction side at liquid temperature `T`, K. */
  operatingPoint(liquid: FlowingLiquid, T: number): OperatingPoint;
}

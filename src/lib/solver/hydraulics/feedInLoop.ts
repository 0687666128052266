/** A feed tried on a loop, used by it or not: what the pump gets, and what the wiring costs in flow. */
import type { PumpSupply, SuppliedPump } from '../feed/supply';
import { alongWire, type FlowShare } from '../feed/wireFor';
import type { Loop, Pump } from '../loop/types';
import type { FlowingLiquid } from './hose';
import { hydraulicModel, type HydraulicModel } from './operatingPoint';
import type { PumpModel } from './pump';

export interface FeedInLoop {
  /** The loop on this feed. */
  readonly model: HydraulicModel;
  readonly pump: PumpModel;
  readonly supplied: SuppliedPump;
  /** Flow over free flow at the speed that these volts give. */
  readonly flowShare: FlowShare;
  /** With any volts held on the plug, m³/s. */
  flowAtVolts(volts: number): number;
  /** Behind the feed, with the battery's volts on the plug, and with rated volts on it, m³/s. */
  readonly flow: number;
  readonly flowAtSource: number;
  readonly flowAtRated: number;
}

/** Pump and loop on `supply`, the liquid as it is; the pump is taken as giving its curve. */
export function feedInLoop(loop: Loop, supply: PumpSupply, liquid: FlowingLiquid): FeedInLoop {
  const model = hydraulicModel({ ...loop, feed: supply });
  const { pump, flow, supplied } = model.settled(liquid);
  const held = model.heldAt(liquid);
  return {
    model,
    pump,
    supplied: supplied!,
    flowShare(volts) {
      const at = held(volts);
      return at.pump.runOut > 0 ? at.flow / at.pump.runOut : 0;
    },
    flow,
    flowAtVolts: (volts) => held(volts).flow,
    flowAtSource: held(supplied!.source).flow,
    flowAtRated: held(loop.pump.ratedVolts).flow,
  };
}

/** Volts (V) and flow (m³/s) against area of copper (m²); wire on which the pump stands still is left out. */
export interface WireCurve {
  readonly volts: readonly (readonly [area: number, volts: number])[];
  readonly flow: readonly (readonly [area: number, flow: number])[];
}

/** The pump with other wire. Without a loop to flow through there are volts and no flow. */
export function wireCurve(
  pump: Pump,
  supply: PumpSupply,
  inLoop: FeedInLoop | null,
  areas: readonly number[],
): WireCurve {
  const flowShare = inLoop?.flowShare ?? FULL;
  const volts = alongWire(pump, supply, areas, flowShare).flatMap(({ area, supplied }) =>
    supplied.status === 'runs' ? [[area, supplied.volts] as const] : [],
  );
  const flow = inLoop ? volts.map(([area, v]) => [area, inLoop.flowAtVolts(v)] as const) : [];
  return { volts, flow };
}

/** Full load at any volts: where there is no loop to say otherwise. */
export const FULL: FlowShare = () => 1;

/** Flow behind the feed over that at rated volts, 1; null where the latter is none. */
export const flowRatioOf = ({ flow, flowAtRated }: FeedInLoop): number | null =>
  flowAtRated > 0 ? flow / flowAtRated : null;

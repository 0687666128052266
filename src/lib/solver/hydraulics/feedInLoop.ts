/** A feed tried on a loop, used by it or not: what the pump gets, and what the wiring costs in flow. */
import type { PumpSupply, SuppliedPump } from '../feed/supply';
import { alongWire, type FlowShare } from '../feed/wireFor';
import type { Loop } from '../loop/types';
import type { FlowingLiquid } from './hose';
import { hydraulicModel, type HydraulicModel } from './operatingPoint';
import type { PumpModel } from './pump';
import { flowAtVolts } from './whatIf';

export interface FeedInLoop {
  /** The loop on this feed. */
  readonly model: HydraulicModel;
  readonly pump: PumpModel;
  readonly supplied: SuppliedPump;
  /** Flow over free flow at the speed that these volts give. */
  readonly flowShare: FlowShare;
  /** Behind the feed, with the battery's volts on the plug, and with rated volts on it, m³/s. */
  readonly flow: number;
  readonly flowAtSource: number;
  readonly flowAtRated: number;
}

/** Pump and loop on `supply`, the liquid as it is; the pump is taken as giving its curve. */
export function feedInLoop(loop: Loop, supply: PumpSupply, liquid: FlowingLiquid): FeedInLoop {
  const model = hydraulicModel({ ...loop, feed: supply });
  const { pump, flow, supplied } = model.settled(liquid);
  const flowShare = (volts: number) => {
    const stated = hydraulicModel({ ...loop, feed: null, pump: { ...loop.pump, volts } });
    return stated.pump.runOut > 0 ? stated.flowAt(liquid) / stated.pump.runOut : 0;
  };
  return {
    model,
    pump,
    supplied: supplied!,
    flowShare,
    flow,
    flowAtSource: flowAtVolts(loop, liquid, supplied!.source),
    flowAtRated: flowAtVolts(loop, liquid, loop.pump.ratedVolts),
  };
}

/** Volts (V) and flow (m³/s) against area of copper (m²); wire on which the pump stands still is left out. */
export interface WireCurve {
  readonly volts: readonly (readonly [area: number, volts: number])[];
  readonly flow: readonly (readonly [area: number, flow: number])[];
}

/** The pump with other wire. Without a liquid there are volts and no flow. */
export function wireCurve(
  loop: Loop,
  supply: PumpSupply,
  liquid: FlowingLiquid | null,
  areas: readonly number[],
  flowShare: FlowShare,
): WireCurve {
  const running = alongWire(loop.pump, supply, areas, flowShare).flatMap(({ area, supplied }) =>
    supplied.status === 'runs' ? [[area, supplied.volts] as const] : [],
  );
  return {
    volts: running,
    flow: liquid
      ? running.map(([area, volts]) => [area, flowAtVolts(loop, liquid, volts)] as const)
      : [],
  };
}

/** Flow behind the feed over that at rated volts, 1; null where the latter is none. */
export const flowRatioOf = ({ flow, flowAtRated }: FeedInLoop): number | null =>
  flowAtRated > 0 ? flow / flowAtRated : null;

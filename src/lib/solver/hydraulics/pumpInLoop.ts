/** Pump and flow of a loop, with the volts stated or with those a feed leaves. */
import type { Note } from '../errors';
import { AFRESH, type Kept } from '../kept';
import { breakerBehaviour } from '../feed/breaker';
import { STOPPED_WORDS, suppliedPump, type PumpSupply, type SuppliedPump } from '../feed/supply';
import type { LiquidState, Loop } from '../loop/types';
import type { HydraulicModel, SettledPump } from './hydraulicModel';
import { pumpAt, type PumpAt, type PumpModel } from './pump';

export type { SettledPump };

export interface PumpInLoop {
  /** Where the pump settles in a loop that has it flow so, m³/s. */
  settle(flowWith: (pump: PumpModel) => number): SettledPump;
  /** The pump, where its volts do not depend on the loop; null where they do. */
  readonly fixed: PumpModel | null;
  /** The pump with any volts held on its plug, whatever its feed. */
  readonly at: PumpAt;
}

/**
 * Prepare the pump of a loop. Stated volts, and a feed whose current does not depend on the flow, are
 * settled once; else volts and flow are found together for every liquid.
 * @throws as {@link pumpAt} and {@link suppliedPump}
 */
export function pumpInLoop(loop: Loop, kept: Kept = AFRESH): PumpInLoop {
  const { pump, feed } = loop;
  const at = pumpAt(pump, kept);
  if (!feed) {
    const fixed = at(pump.volts);
    return {
      at,
      fixed,
      settle: (flowWith) => ({ pump: fixed, flow: flowWith(fixed), supplied: null, notes: [] }),
    };
  }
  const modelOn = (supplied: SuppliedPump) =>
    supplied.status === 'runs'
      ? at(supplied.volts, { electricPower: supplied.power })
      : at(0, { electricPower: 0, stopped: STOPPED_WORDS[supplied.reason] });
  const settled = (supplied: SuppliedPump, model: PumpModel, flow: number): SettledPump => ({
    pump: model,
    flow,
    supplied,
    notes: breakerNotes(feed, supplied),
  });
  if (feed.shutOffShare === 1 || feed.draw.kind === 'table') {
    const supplied = suppliedPump(pump, feed, () => 1);
    const fixed = modelOn(supplied);
    return { at, fixed, settle: (flowWith) => settled(supplied, fixed, flowWith(fixed)) };
  }
  return {
    at,
    fixed: null,
    settle(flowWith) {
      const flowShare = (volts: number) => {
        const model = at(volts);
        return model.runOut > 0 ? flowWith(model) / model.runOut : 0;
      };
      const supplied = suppliedPump(pump, feed, flowShare);
      const model = modelOn(supplied);
      return settled(supplied, model, flowWith(model));
    },
  };
}

/** A breaker that opens leaves nothing steady: the state given is the one between its trips. */
function breakerNotes({ breaker }: PumpSupply, supplied: SuppliedPump): Note[] {
  if (!breaker || supplied.status === 'stopped') return [];
  const { kind } = breakerBehaviour(breaker.thermal, supplied.current, breaker.ambient);
  if (kind === 'holds') return [];
  return [
    {
      code: 'feed.breaker-opens',
      message:
        kind === 'cycles'
          ? 'the breaker opens and closes again at this current: the flow shown is the one between trips'
          : 'the breaker opens at this current and stays open: the flow shown is the one before it does',
      quantity: 'feed.protection.rating',
      value: supplied.current,
    },
  ];
}

/** Pump, flow and feed in a state that was solved. */
export const settledIn = (
  model: HydraulicModel,
  { density: rho, viscosity: mu, temperature }: LiquidState,
): SettledPump => model.settled({ rho, mu }, temperature);

/** The model with its pump as it runs on the liquid of a state that was solved. */
export const modelIn = (model: HydraulicModel, liquid: LiquidState): HydraulicModel =>
  model.fixedPump ? model : { ...model, pump: settledIn(model, liquid).pump };

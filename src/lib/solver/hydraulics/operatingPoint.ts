/** The liquid side of a loop: what the parts take of the pump's head, and the flow where it settles. */
import { OutOfRangeError } from '../errors';
import { coolantProperties, coolantVapourPressure } from '../fluids/coolant';
import { pressureAtAltitude } from '../air/atmosphere';
import { AFRESH } from '../kept';
import { coresInOrder, type CoreId } from '../loop/order';
import type { Loop } from '../loop/types';
import { headLeft } from '../suction/headLeft';
import { levelAboveEye } from '../suction/inlet';
import { suctionNotes } from '../suction/notes';
import { npshAvailable, type SuctionSide } from '../suction/npsh';
import { requiredModel, type RequiredModel } from '../suction/required';
import { starvedFlow } from '../suction/starved';
import { g, headOf } from './affinity';
import type { HowToSettle, HydraulicModel, SuctionState } from './hydraulicModel';
import { headShares, HOSES } from './headShares';
import { hoseGeometry, lossOf, type FlowingLiquid } from './hose';
import { intersection, nearIntersection } from './intersection';
import type { PumpModel } from './pump';
import { pumpInLoop } from './pumpInLoop';
import { ratedLoss, type RatedLossModel } from './ratedLoss';

/** Where the liquid of {@link HydraulicModel.pump} is taken, K: inside the range of every coolant. */
const ROOM = 293.15;

export type { HowToSettle, HydraulicModel, SuctionState };

/**
 * Prepare the liquid side of a loop, once; the model then answers for any liquid temperature.
 *
 * The loop is closed, so nothing is lifted for good: the pump's head equals the sum of the losses.
 * With `pump.cavitation` counted, the head is first lowered to what the suction head leaves of it
 * ({@link headLeft}; the whole set is taken to lose what its first pump loses). Otherwise the pump is
 * taken as giving its curve even where its suction head runs short; the operating point then carries
 * the note `suction.short`, as the true flow is lower.
 *
 * @throws {@link InvalidInputError} for parts that cannot be, with the path of the field
 * @throws {@link OutOfRangeError} for a liquid without density or viscosity
 * @source Darcy-Weisbach; Churchill 1977; Crane TP-410; affinity laws
 */
export function hydraulicModel(loop: Loop, how: HowToSettle = {}): HydraulicModel {
  const { kept = AFRESH, near } = how;
  const { settle, fixed, at: pumpAt } = pumpInLoop(loop, kept);
  const runs = HOSES.map((id) => hoseGeometry(loop.hoses[id], `hoses.${id}`));
  const order = coresInOrder(loop);
  const lossModel = (id: CoreId) => {
    const { liquidLoss, rating } = loop[id];
    return kept.of(`${id}.liquidLoss`, [liquidLoss, rating], () => coreLoss(loop, id));
  };
  const coreLosses = {
    chargeCooler: lossModel('chargeCooler'),
    frontExchanger: lossModel('frontExchanger'),
  };
  const cores = Object.values(coreLosses);
  const ambient = pressureAtAltitude(loop.site.altitude);
  const needOfFixed = fixed && requiredModel(loop.pump, fixed);
  const needOf = (pump: PumpModel): RequiredModel =>
    pump === fixed && needOfFixed ? needOfFixed : requiredModel(loop.pump, pump);
  const z = levelAboveEye(loop);
  const counted = loop.pump.cavitation === 'counted';

  /** Head asked as a function of flow alone, with all that depends on the liquid worked out. */
  const system = (liquid: FlowingLiquid) => {
    checkLiquid(liquid);
    const { rho, mu } = liquid;
    const curves = cores.map((core) => core.for(liquid));
    return (flow: number) => {
      let loss = 0;
      for (const run of runs) loss += lossOf(run, flow, rho, mu);
      for (const curve of curves) loss += curve.loss(flow);
      return loss / (rho * g);
    };
  };

  /** Suction side as a function of flow alone. */
  const suction = ({ rho, mu }: FlowingLiquid, T: number, required: RequiredModel) => {
    const p_vapour = coolantVapourPressure(loop.coolant, T);
    return (flow: number): SuctionState => {
      const side: SuctionSide = {
        p_ambient: ambient,
        p_tank_gauge: loop.reservoir.capGauge,
        p_vapour,
        rho,
        z,
        h_suction: headOf({ dp: lossOf(runs[0]!, flow, rho, mu), rho }),
      };
      const heads = { available: npshAvailable(side), required: required.at(flow) };
      return { ...heads, headLeft: headLeft(heads), side };
    };
  };

  const flowWith = (
    pump: PumpModel,
    resistance: (flow: number) => number,
    liquid: FlowingLiquid,
    T: number | undefined,
  ) => {
    if (!(pump.speedRatio > 0)) return 0;
    const healthy = near
      ? nearIntersection(pump.head, resistance, pump.runOut, near)
      : intersection(pump.head, resistance, pump.runOut).flow;
    if (!counted || T === undefined) return healthy;
    const required = needOf(pump);
    const at = suction(liquid, T, required);
    const left = (flow: number) => at(flow).headLeft;
    return starvedFlow({ lift: pump.head, resistance, left, healthy, single: required.rising });
  };
  const settled = (liquid: FlowingLiquid, T?: number) => {
    const resistance = system(liquid);
    return settle((pump) => flowWith(pump, resistance, liquid, T));
  };
  const suctionOver = (liquid: FlowingLiquid, T: number) =>
    suction(liquid, T, needOf(fixed ?? settled(liquid, T).pump));
  let atRoom = fixed;

  return {
    get pump() {
      return (atRoom ??= settled(coolantProperties(loop.coolant, ROOM)).pump);
    },
    fixedPump: fixed,
    settled,
    heldAt(liquid) {
      const resistance = system(liquid);
      return (volts) => {
        const pump = pumpAt(volts);
        return { pump, flow: flowWith(pump, resistance, liquid, undefined) };
      };
    },
    systemHead: (flow, liquid) => system(liquid)(flow),
    suctionOver,
    suctionAt: (flow, liquid, T) => suctionOver(liquid, T)(flow),
    flowAt: (liquid, T) => settled(liquid, T).flow,
    operatingPoint(liquid, T) {
      const resistance = system(liquid);
      const { pump, flow, notes } = settle((p) => flowWith(p, resistance, liquid, T));
      const required = needOf(pump);
      const at = suction(liquid, T, required);
      const left = counted ? (Q: number) => at(Q).headLeft : undefined;
      const lift = (Q: number) => pump.head(Q) * (left?.(Q) ?? 1);
      const here = at(flow);
      return {
        flow,
        head: lift(flow),
        speedRatio: pump.speedRatio,
        pumpSlope: left && here.headLeft < 1 ? slopeOf(lift, flow, pump.runOut) : pump.slope(flow),
        systemSlope: slopeOf(resistance, flow, pump.runOut),
        shares: headShares(runs, coreLosses, order, flow, liquid),
        npshAvailable: here.available,
        npshRequired: here.required,
        headLeft: here.headLeft,
        notes: [
          ...pump.notesAt(flow),
          ...notes,
          ...cores.flatMap((core) => core.notesAt(flow)),
          ...required.notesAt(flow),
          ...suctionNotes(loop, here.side, here),
        ],
      };
    },
  };
}

/** A core's loss, its points taken with the coolant and the inlet temperature of its rating. */
export function coreLoss(loop: Loop, id: CoreId): RatedLossModel {
  const { rating, liquidLoss } = loop[id];
  const rated = coolantProperties(rating.coolant, rating.liquidInlet);
  return ratedLoss(liquidLoss, rated, `${id}.liquidLoss`);
}

function checkLiquid({ rho, mu }: FlowingLiquid): void {
  const range = [Number.MIN_VALUE, Number.MAX_VALUE] as const;
  if (!(rho > 0 && rho < Infinity)) throw new OutOfRangeError('hydraulics', 'rho', rho, range);
  if (!(mu > 0 && mu < Infinity)) throw new OutOfRangeError('hydraulics', 'mu', mu, range);
}

/** Central difference; one-sided without flow. Shown, not used to solve. */
function slopeOf(head: (flow: number) => number, flow: number, runOut: number): number {
  const step = flow > 0 ? 1e-5 * flow : 1e-6 * (runOut || 1e-3);
  const low = Math.max(0, flow - step);
  return (head(flow + step) - head(low)) / (flow + step - low);
}

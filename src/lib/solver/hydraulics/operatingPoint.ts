/** The liquid side of a loop: what the parts take of the pump's head, and the flow where it settles. */
import { OutOfRangeError } from '../errors';
import { coolantProperties, coolantVapourPressure } from '../fluids/coolant';
import { pressureAtAltitude } from '../air/atmosphere';
import type { HeadShare, HoseId, Loop, OperatingPoint } from '../loop/types';
import { headLeft } from '../suction/headLeft';
import { levelAboveEye } from '../suction/inlet';
import { suctionNotes } from '../suction/notes';
import { npshAvailable, type SuctionSide } from '../suction/npsh';
import { requiredModel } from '../suction/required';
import { starvedFlow } from '../suction/starved';
import { g, headOf } from './affinity';
import { hoseDrop, hoseGeometry, lossOf, type FlowingLiquid, type HoseGeometry } from './hose';
import { intersection } from './intersection';
import { pumpModel, type PumpModel } from './pump';
import { ratedLoss, type RatedLossModel } from './ratedLoss';

const HOSES = ['suction', 'delivery', 'transfer', 'back'] as const satisfies readonly HoseId[];
const CORES = ['chargeCooler', 'frontExchanger'] as const;

/** The suction side at one flow and temperature, m of the liquid. */
export interface SuctionState {
  readonly available: number;
  readonly required: number;
  /** Share of the pump's head that is left at that. */
  readonly headLeft: number;
  /** What the balance of the suction head is made of. */
  readonly side: SuctionSide;
}

export interface HydraulicModel {
  readonly pump: PumpModel;
  /** Head the loop asks at `flow`, m of the liquid. */
  systemHead(flow: number, liquid: FlowingLiquid): number;
  /**
   * Flow where the loop settles, m³/s; 0 when the pump does not run. Without the liquid's temperature
   * `T` (K) the pump is taken as giving its curve, cavitation counted or not.
   */
  flowAt(liquid: FlowingLiquid, T?: number): number;
  /** Suction side at any flow and temperature, whether the loop settles there or not. */
  suctionAt(flow: number, liquid: FlowingLiquid, T: number): SuctionState;
  /** The whole state there, with the suction side at liquid temperature `T`, K. */
  operatingPoint(liquid: FlowingLiquid, T: number): OperatingPoint;
}

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
export function hydraulicModel(loop: Loop): HydraulicModel {
  const pump = pumpModel(loop.pump);
  const runs = HOSES.map((id) => hoseGeometry(loop.hoses[id], `hoses.${id}`));
  const cores = CORES.map((id) => coreLoss(loop, id));
  const ambient = pressureAtAltitude(loop.site.altitude);
  const required = requiredModel(loop.pump, pump);
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
  const suction = ({ rho, mu }: FlowingLiquid, T: number) => {
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

  const settled = (resistance: (flow: number) => number, left?: (flow: number) => number) => {
    if (!(pump.speedRatio > 0)) return 0;
    const healthy = intersection(pump.head, resistance, pump.runOut).flow;
    if (!left) return healthy;
    return starvedFlow({ lift: pump.head, resistance, left, healthy, single: required.rising });
  };

  return {
    pump,
    systemHead: (flow, liquid) => system(liquid)(flow),
    suctionAt: (flow, liquid, T) => suction(liquid, T)(flow),
    flowAt(liquid, T) {
      if (!counted || T === undefined) return settled(system(liquid));
      const at = suction(liquid, T);
      return settled(system(liquid), (flow) => at(flow).headLeft);
    },
    operatingPoint(liquid, T) {
      const resistance = system(liquid);
      const at = suction(liquid, T);
      const left = counted ? (flow: number) => at(flow).headLeft : undefined;
      const flow = settled(resistance, left);
      const lift = (Q: number) => pump.head(Q) * (left?.(Q) ?? 1);
      const here = at(flow);
      return {
        flow,
        head: lift(flow),
        speedRatio: pump.speedRatio,
        pumpSlope: left && here.headLeft < 1 ? slopeOf(lift, flow, pump.runOut) : pump.slope(flow),
        systemSlope: slopeOf(resistance, flow, pump.runOut),
        shares: headShares(runs, cores, flow, liquid),
        npshAvailable: here.available,
        npshRequired: here.required,
        headLeft: here.headLeft,
        notes: [
          ...pump.notesAt(flow),
          ...cores.flatMap((core) => core.notesAt(flow)),
          ...required.notesAt(flow),
          ...suctionNotes(loop, here.side, here),
        ],
      };
    },
  };
}

/** A core's loss, its points taken with the coolant and the inlet temperature of its rating. */
export function coreLoss(loop: Loop, id: (typeof CORES)[number]): RatedLossModel {
  const { rating, liquidLoss } = loop[id];
  const rated = coolantProperties(rating.coolant, rating.liquidInlet);
  return ratedLoss(liquidLoss, rated, `${id}.liquidLoss`);
}

function checkLiquid({ rho, mu }: FlowingLiquid): void {
  const range = [Number.MIN_VALUE, Number.MAX_VALUE] as const;
  if (!(rho > 0 && rho < Infinity)) throw new OutOfRangeError('hydraulics', 'rho', rho, range);
  if (!(mu > 0 && mu < Infinity)) throw new OutOfRangeError('hydraulics', 'mu', mu, range);
}

/** In order of flow; the suction hose first. */
function headShares(
  runs: readonly HoseGeometry[],
  cores: readonly RatedLossModel[],
  flow: number,
  liquid: FlowingLiquid,
): HeadShare[] {
  const hose = (i: number): HeadShare => {
    const { pressureDrop, velocity, reynolds, friction } = hoseDrop(runs[i]!, flow, liquid);
    const head = headOf({ dp: pressureDrop, rho: liquid.rho });
    return { part: HOSES[i]!, pressureDrop, head, velocity, reynolds, friction };
  };
  const core = (i: number): HeadShare => {
    const pressureDrop = cores[i]!.at(flow, liquid);
    const head = headOf({ dp: pressureDrop, rho: liquid.rho });
    return { part: CORES[i]!, pressureDrop, head, velocity: null, reynolds: null, friction: null };
  };
  return [hose(0), hose(1), core(0), hose(2), core(1), hose(3)];
}

/** Central difference; one-sided without flow. Shown, not used to solve. */
function slopeOf(head: (flow: number) => number, flow: number, runOut: number): number {
  const step = flow > 0 ? 1e-5 * flow : 1e-6 * (runOut || 1e-3);
  const low = Math.max(0, flow - step);
  return (head(flow + step) - head(low)) / (flow + step - low);
}

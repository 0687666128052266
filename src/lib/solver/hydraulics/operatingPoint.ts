/** The liquid side of a loop: what the parts take of the pump's head, and the flow where it settles. */
import { OutOfRangeError, type Note } from '../errors';
import { coolantProperties, coolantVapourPressure } from '../fluids/coolant';
import { pressureAtAltitude } from '../air/atmosphere';
import type { HeadShare, HoseId, Loop, OperatingPoint } from '../loop/types';
import { npshAvailable, suctionMargin } from '../suction/npsh';
import { g, headOf } from './affinity';
import { hoseDrop, hoseGeometry, lossOf, type FlowingLiquid, type HoseGeometry } from './hose';
import { intersection } from './intersection';
import { pumpModel, type PumpModel } from './pump';
import { ratedLoss, type RatedLossModel } from './ratedLoss';

const HOSES = ['suction', 'delivery', 'transfer', 'back'] as const satisfies readonly HoseId[];
const CORES = ['chargeCooler', 'frontExchanger'] as const;

export interface HydraulicModel {
  readonly pump: PumpModel;
  /** Head the loop asks at `flow`, m of the liquid. */
  systemHead(flow: number, liquid: FlowingLiquid): number;
  /** Flow where the loop settles, m³/s; 0 when the pump does not run. */
  flowAt(liquid: FlowingLiquid): number;
  /** The whole state there, with the suction side at liquid temperature `T`, K. */
  operatingPoint(liquid: FlowingLiquid, T: number): OperatingPoint;
}

/**
 * Prepare the liquid side of a loop, once; the model then answers for any liquid temperature.
 *
 * The loop is closed, so nothing is lifted for good: the pump's head equals the sum of the losses.
 * The pump is taken as giving its curve even where its suction head runs short; the operating point
 * then carries the note `suction.short`, as the true flow is lower.
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

  const settled = (head: (flow: number) => number) =>
    pump.speedRatio > 0 ? intersection(pump.head, head, pump.runOut).flow : 0;

  return {
    pump,
    systemHead: (flow, liquid) => system(liquid)(flow),
    flowAt: (liquid) => settled(system(liquid)),
    operatingPoint(liquid, T) {
      const head = system(liquid);
      const flow = settled(head);
      const shares = headShares(runs, cores, flow, liquid);
      const available = npshAvailable({
        p_ambient: ambient,
        p_tank_gauge: loop.reservoir.capGauge,
        p_vapour: coolantVapourPressure(loop.coolant, T),
        rho: liquid.rho,
        z: loop.reservoir.levelAbovePump,
        h_suction: shares[0]!.head,
      });
      return {
        flow,
        head: pump.head(flow),
        speedRatio: pump.speedRatio,
        pumpSlope: pump.slope(flow),
        systemSlope: slopeOf(head, flow, pump.runOut),
        shares,
        npshAvailable: available,
        notes: [
          ...pump.notesAt(flow),
          ...cores.flatMap((core) => core.notesAt(flow)),
          ...suctionNotes(loop, available),
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

function suctionNotes({ pump, reservoir }: Loop, available: number): Note[] {
  const notes: Note[] = [];
  const margin = suctionMargin({ available, required: pump.npshRequired });
  if (margin < 0) {
    const message =
      'the suction head is less than the pump needs: it cavitates, and the true flow is lower than shown';
    notes.push({ code: 'suction.short', message, quantity: 'npshAvailable', value: margin });
  }
  if (reservoir.capGauge > 0) {
    const message =
      "the suction head counts the cap's full pressure; a cold or freshly opened reservoir has none";
    const quantity = 'reservoir.capGauge';
    notes.push({ code: 'suction.cap-pressure', message, quantity, value: reservoir.capGauge });
  }
  return notes;
}

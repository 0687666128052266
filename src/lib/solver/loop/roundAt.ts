import type { LiquidProperties } from '../fluids/properties';
import { passFront, passHose, type Round } from './balance';
import { chargeExchange, type ChargeExchange } from './chargeSide';
import { frontExchange, type FrontExchange } from './front';
import { isFrontFirst } from './order';
import type { PreparedLoop } from './prepare';
import type { AirSide, Duty } from './types';

/** All that depends on the liquid's temperature, at one temperature of the reservoir's outlet. */
export interface RoundAt {
  readonly T: number;
  readonly liquid: LiquidProperties;
  readonly flow: number;
  readonly charge: ChargeExchange;
  readonly front: FrontExchange;
  readonly round: Round;
}

/**
 * Work out flow and conductances with the liquid at `T` leaving the reservoir. Density, specific heat,
 * viscosity and conductivity are those at `T` all round the loop: one specific heat, so that the heats
 * close exactly; over a loop's spread of 20 K it moves by about 2 %.
 */
export function roundAt(prepared: PreparedLoop, duty: Duty, air: AirSide, T: number): RoundAt {
  const { liquid, flow, pumpHeat } = prepared.flowAt(T);
  const C = liquid.rho * liquid.cp * flow;
  const front = frontExchange(prepared, air, flow, liquid);
  const delivered = T + (C > 0 ? pumpHeat / C : 0);
  const atCooler =
    isFrontFirst(prepared.loop) && C > 0
      ? behindFront(prepared, duty, C, front, delivered)
      : delivered;
  const charge = chargeExchange(prepared, duty, flow, atCooler, liquid);
  return {
    T,
    liquid,
    flow,
    charge,
    front,
    round: roundOf(prepared, duty, C, pumpHeat, charge, front),
  };
}

const bayAirOf = ({ loop }: PreparedLoop, duty: Duty) =>
  loop.site.ambientTemperature + duty.bayRise;

/** Liquid that has passed the front exchanger and the run between the cores, K. */
function behindFront(
  prepared: PreparedLoop,
  duty: Duty,
  C: number,
  { conductance, freshAir }: FrontExchange,
  T: number,
): number {
  const { hoseConductance } = prepared.loop.soak;
  const { out } = passFront({ C, frontConductance: conductance, freshAir }, T);
  return passHose({ C, hoseConductance, bayAir: bayAirOf(prepared, duty) }, out).out;
}

function roundOf(
  prepared: PreparedLoop,
  duty: Duty,
  C: number,
  pumpHeat: number,
  charge: ChargeExchange,
  front: FrontExchange,
): Round {
  const { soak, reservoir } = prepared.loop;
  return {
    C,
    pumpHeat,
    chargeConductance: charge.conductance,
    chargeAirIn: charge.airIn,
    statedHeat: charge.statedHeat,
    engineConductance: soak.engineConductance,
    engineTemperature: soak.engineTemperature,
    hoseConductance: soak.hoseConductance,
    reservoirConductance: soak.reservoirConductance,
    bayAir: bayAirOf(prepared, duty),
    frontFirst: isFrontFirst(prepared.loop),
    frontConductance: front.conductance,
    freshAir: front.freshAir,
    shortCircuit: reservoir.shortCircuit,
  };
}

import type { LiquidProperties } from '../fluids/properties';
import { throughFront, type Round } from './balance';
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
  const known = { ...roundOf(prepared, duty), C, pumpHeat, ...frontOf(front) };
  const delivered = T + (C > 0 ? pumpHeat / C : 0);
  const atCooler = known.frontFirst && C > 0 ? throughFront(known, delivered).atCooler : delivered;
  const charge = chargeExchange(prepared, duty, flow, atCooler, liquid);
  return {
    T,
    liquid,
    flow,
    charge,
    front,
    round: { ...known, ...chargeOf(charge) },
  };
}

const frontOf = ({ conductance, freshAir }: FrontExchange) => ({
  frontConductance: conductance,
  freshAir,
});

const chargeOf = ({ conductance, airIn, statedHeat }: ChargeExchange) => ({
  chargeConductance: conductance,
  chargeAirIn: airIn,
  statedHeat,
});

/** What of a round does not depend on the liquid. */
function roundOf({ loop }: PreparedLoop, duty: Duty) {
  const { soak, site, reservoir } = loop;
  return {
    engineConductance: soak.engineConductance,
    engineTemperature: soak.engineTemperature,
    hoseConductance: soak.hoseConductance,
    reservoirConductance: soak.reservoirConductance,
    bayAir: site.ambientTemperature + duty.bayRise,
    frontFirst: isFrontFirst(loop),
    shortCircuit: reservoir.shortCircuit,
  };
}

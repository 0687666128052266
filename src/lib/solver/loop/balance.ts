/** Once round the loop at given conductances: temperatures by place, heats, and what is left over. */
import type { HeatLedger, LoopTemperatures } from './types';

/** Everything a round needs, at one temperature of the liquid. */
export interface Round {
  /** Capacity rate of the liquid, one for the whole loop, W/K. */
  readonly C: number;
  readonly pumpHeat: number;
  /** Charge cooler: conductance from charge air at `chargeAirIn` to the liquid inlet, W/K and K … */
  readonly chargeConductance: number;
  readonly chargeAirIn: number;
  /** … or the heat stated outright, W. */
  readonly statedHeat: number | null;
  readonly engineConductance: number;
  readonly engineTemperature: number;
  readonly hoseConductance: number;
  readonly reservoirConductance: number;
  readonly bayAir: number;
  /** Whether the liquid passes the front exchanger before the charge cooler. */
  readonly frontFirst: boolean;
  /** Front exchanger: conductance from liquid inlet to fresh air, W/K. */
  readonly frontConductance: number;
  readonly freshAir: number;
  /** Share of the return that goes straight to the reservoir's outlet. */
  readonly shortCircuit: number;
}

export interface RoundResult {
  readonly temperatures: LoopTemperatures;
  readonly heats: HeatLedger;
  /** Sum of the heats = C (T back at the outlet - T leaving it), W. */
  readonly residual: number;
}

/**
 * Follow the liquid from the reservoir's outlet at `T_out` once round.
 *
 * Places that take up heat from around them (engine into the charge cooler, bay into the run
 * between the cores and the reservoir) count as well mixed: Q = G (T_around - T_there), hence
 * Q = C G / (C + G) (T_around - T_before), which stays sensible down to no flow. The engine's heat
 * enters behind the core of the charge cooler. In the reservoir the share 1 - s of the return mixes:
 * (1 - s) C (T_return - T_mix) + G (T_bay - T_mix) = 0 and T_out = s T_return + (1 - s) T_mix.
 */
export function goRound(r: Round, T_out: number): RoundResult {
  const { C } = r;
  const pump = r.pumpHeat;
  const delivered = T_out + pump / C;
  // Of the front exchanger and the run between the cores, what lies before the charge cooler.
  const before = r.frontFirst ? throughFront(r, delivered) : null;
  const chargeCoolerIn = before ? before.atCooler : delivered;
  const charge = r.statedHeat ?? r.chargeConductance * (r.chargeAirIn - chargeCoolerIn);
  const behindCore = chargeCoolerIn + charge / C;
  const engineSoak = mixed(C, r.engineConductance) * (r.engineTemperature - behindCore);
  const chargeCoolerOut = behindCore + engineSoak / C;

  let frontIn = delivered;
  let hoseSoak: number;
  let frontExchanger: number;
  let frontOut: number;
  if (before) ({ hoseSoak, frontExchanger, frontOut } = before);
  else {
    hoseSoak = mixed(C, r.hoseConductance) * (r.bayAir - chargeCoolerOut);
    frontIn = chargeCoolerOut + hoseSoak / C;
    frontExchanger = -r.frontConductance * (frontIn - r.freshAir);
    frontOut = frontIn + frontExchanger / C;
  }
  const returning = before ? chargeCoolerOut : frontOut;
  const through = (1 - r.shortCircuit) * C;
  const reservoirSoak =
    ((through * r.reservoirConductance) / (through + r.reservoirConductance || 1)) *
    (r.bayAir - returning);
  const reservoir = returning + reservoirSoak / through;

  return {
    temperatures: {
      reservoir,
      pumpIn: T_out,
      chargeCoolerIn,
      chargeCoolerOut,
      frontIn,
      frontOut,
      returning,
    },
    heats: { charge, engineSoak, hoseSoak, reservoirSoak, pump, frontExchanger },
    residual: charge + engineSoak + hoseSoak + reservoirSoak + pump + frontExchanger,
  };
}

/** Conductance from a place's surroundings to the liquid arriving there, the place being well mixed. */
const mixed = (C: number, G: number) => (C * G) / (C + G || 1);

/** What the way from the pump over the front exchanger to the charge cooler needs to know. */
type FrontWay = Pick<Round, 'C' | 'frontConductance' | 'freshAir' | 'hoseConductance' | 'bayAir'>;

/** From the pump through the front exchanger and the run between the cores to the charge cooler. */
export function throughFront(r: FrontWay, delivered: number) {
  const frontExchanger = -r.frontConductance * (delivered - r.freshAir);
  const frontOut = delivered + frontExchanger / r.C;
  const hoseSoak = mixed(r.C, r.hoseConductance) * (r.bayAir - frontOut);
  return { frontExchanger, frontOut, hoseSoak, atCooler: frontOut + hoseSoak / r.C };
}

/** Residual over the larger of all heat in and all heat out; below a watt, over a watt. */
export function relativeResidual(heats: HeatLedger, residual: number): number {
  let into = 0;
  let out = 0;
  for (const heat of Object.values(heats) as number[]) {
    if (heat > 0) into += heat;
    else out -= heat;
  }
  return Math.abs(residual) / Math.max(into, out, 1);
}

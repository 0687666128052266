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
  let hose: Passed;
  let front: Passed;
  let cooler: CoolerPassed;
  if (r.frontFirst) {
    front = passFront(r, delivered);
    hose = passHose(r, front.out);
    cooler = passCooler(r, hose.out);
  } else {
    cooler = passCooler(r, delivered);
    hose = passHose(r, cooler.out);
    front = passFront(r, hose.out);
  }
  const returning = r.frontFirst ? cooler.out : front.out;
  const through = (1 - r.shortCircuit) * C;
  const reservoirSoak =
    ((through * r.reservoirConductance) / (through + r.reservoirConductance || 1)) *
    (r.bayAir - returning);
  const reservoir = returning + reservoirSoak / through;

  const { charge, engineSoak } = cooler;
  return {
    temperatures: {
      reservoir,
      pumpIn: T_out,
      chargeCoolerIn: cooler.in,
      chargeCoolerOut: cooler.out,
      frontIn: front.in,
      frontOut: front.out,
      returning,
    },
    heats: {
      charge,
      engineSoak,
      hoseSoak: hose.heat,
      reservoirSoak,
      pump,
      frontExchanger: front.heat,
    },
    residual: charge + engineSoak + hose.heat + reservoirSoak + pump + front.heat,
  };
}

/** A place the liquid passes: its heat, and how it comes and goes, K. */
interface Passed {
  readonly heat: number;
  readonly in: number;
  readonly out: number;
}

interface CoolerPassed {
  readonly charge: number;
  readonly engineSoak: number;
  readonly in: number;
  readonly out: number;
}

/** Conductance from a place's surroundings to the liquid arriving there, the place being well mixed. */
const mixed = (C: number, G: number) => (C * G) / (C + G || 1);

function passCooler(r: Round, T: number): CoolerPassed {
  const charge = r.statedHeat ?? r.chargeConductance * (r.chargeAirIn - T);
  const behindCore = T + charge / r.C;
  const engineSoak = mixed(r.C, r.engineConductance) * (r.engineTemperature - behindCore);
  return { charge, engineSoak, in: T, out: behindCore + engineSoak / r.C };
}

/** Through the run between the cores. */
export function passHose(r: Pick<Round, 'C' | 'hoseConductance' | 'bayAir'>, T: number): Passed {
  const heat = mixed(r.C, r.hoseConductance) * (r.bayAir - T);
  return { heat, in: T, out: T + heat / r.C };
}

export function passFront(
  r: Pick<Round, 'C' | 'frontConductance' | 'freshAir'>,
  T: number,
): Passed {
  const heat = -r.frontConductance * (T - r.freshAir);
  return { heat, in: T, out: T + heat / r.C };
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

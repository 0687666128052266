/** A tank with ice by its enthalpy: temperature and ice as functions of the heat it holds. */
import { ICE_POINT } from '../../fluids/ice';

/** `frozen`: all ice, below the ice point. `melting`: both, at it. `liquid`: no ice. */
export type IcePhase = 'frozen' | 'melting' | 'liquid';

/** Capacities of the tank in its three phases; heat is counted from liquid at the ice point. */
export interface IceTank {
  /** With the ice melted, whatever else is as warm as the liquid counted in, J/K. */
  readonly C_liquid: number;
  /** With all frozen, J/K. */
  readonly C_frozen: number;
  /** Everything that can freeze, kg. */
  readonly mass: number;
  /** J/kg */
  readonly latentHeat: number;
}

/** Heat at which all of it is ice at the ice point, J. */
export const allFrozen = ({ mass, latentHeat }: IceTank): number => -mass * latentHeat;

/** Phase in which a tank with heat `H` is. */
export function phaseOf(tank: IceTank, H: number): IcePhase {
  if (H >= 0) return 'liquid';
  return H >= allFrozen(tank) ? 'melting' : 'frozen';
}

/** Temperature, K. The phase is told, so that an integrator's trial beyond its end stays smooth. */
export function temperatureOf(tank: IceTank, phase: IcePhase, H: number): number {
  switch (phase) {
    case 'liquid':
      return ICE_POINT + H / tank.C_liquid;
    case 'melting':
      return ICE_POINT;
    case 'frozen':
      return ICE_POINT + (H - allFrozen(tank)) / tank.C_frozen;
  }
}

/** Ice in it, kg. */
export function iceMassOf(tank: IceTank, phase: IcePhase, H: number): number {
  if (phase === 'liquid') return 0;
  return phase === 'frozen' ? tank.mass : -H / tank.latentHeat;
}

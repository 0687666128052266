/** A tank with ice alone, every coefficient given: the enthalpy model under the events' integrator. */
import { InvalidInputError, SolverError } from '../../errors';
import { ICE_POINT, iceEnthalpy, type IceProperties } from '../../fluids/ice';
import { DenseSolution } from '../../numerics/dense';
import type { OdeEvent } from '../../numerics/event';
import { integrateSharply } from '../../numerics/sharpEvent';
import {
  allFrozen,
  iceMassOf,
  phaseOf,
  temperatureOf,
  type IcePhase,
  type IceTank,
} from './iceTank';

const RTOL = 1e-9;
/** Absolute tolerance of the heat held, for each J/K of the tank. */
const ATOL_K = 1e-6;

export interface IceHistory {
  /** When the ice starts to melt and when it is gone, s; null: not in this time. */
  readonly t_melt_start: number | null;
  readonly t_melt_end: number | null;
  /** At the times asked: K, kg. */
  readonly T: readonly number[];
  readonly ice_mass: readonly number[];
}

export interface IceWithAmbientInputs extends Omit<IceProperties, 'cp_ice'> {
  readonly ice_mass: number;
  readonly water_mass: number;
  /** Heat put in, W. */
  readonly power: number;
  /** Conductance to the surroundings, W/K. */
  readonly UA: number;
  readonly T_ambient: number;
  readonly t: readonly number[];
}

export interface IceConstantPowerInputs extends IceProperties {
  readonly ice_mass: number;
  readonly water_mass: number;
  /** At the start, K; below the ice point only without water. */
  readonly T0: number;
  readonly power: number;
  /** Heat capacity of what shares the temperature, J/K. */
  readonly C_other: number;
  readonly t: readonly number[];
}

/**
 * Ice, and water with it, under a constant heat.
 * @throws {@link InvalidInputError} for water below the ice point, or above it with ice
 * @throws {@link OutOfRangeError} as {@link iceEnthalpy}
 */
export function simulateIceConstantPower(m: IceConstantPowerInputs): IceHistory {
  const mixed = m.ice_mass > 0 && m.water_mass > 0;
  if ((mixed && m.T0 !== ICE_POINT) || (m.ice_mass > 0 ? m.T0 > ICE_POINT : m.T0 < ICE_POINT)) {
    throw new InvalidInputError('T0', 'ice and water share the ice point', m.T0);
  }
  const tank: IceTank = {
    C_liquid: (m.ice_mass + m.water_mass) * m.cp_water + m.C_other,
    C_frozen: m.ice_mass * m.cp_ice + m.C_other,
    mass: m.ice_mass,
    latentHeat: m.latent_heat,
  };
  const T_ice = Math.min(m.T0, ICE_POINT);
  const H0 =
    iceEnthalpy({ ...m, T_ice, T_water: Math.max(m.T0, ICE_POINT) }) +
    m.C_other * (m.T0 - ICE_POINT);
  return follow(tank, H0, () => m.power, m.t);
}

/** As {@link simulateIceConstantPower} from the ice point, with a conductance to the surroundings. */
export function simulateIceWithAmbient(m: IceWithAmbientInputs): IceHistory {
  const tank: IceTank = {
    C_liquid: (m.ice_mass + m.water_mass) * m.cp_water,
    C_frozen: Infinity, // never below the ice point: it starts there and is warmed
    mass: m.ice_mass,
    latentHeat: m.latent_heat,
  };
  const heat = (T: number) => m.power + m.UA * (m.T_ambient - T);
  if (!(heat(ICE_POINT) >= 0)) {
    throw new InvalidInputError('power', 'the tank is cooled at the ice point', heat(ICE_POINT));
  }
  return follow(tank, -m.ice_mass * m.latent_heat, heat, m.t);
}

/** Integrate the heat held, restarted where the phase changes. */
function follow(
  tank: IceTank,
  H0: number,
  heat: (T: number) => number,
  times: readonly number[],
): IceHistory {
  const end = Math.max(0, ...times);
  const dense = new DenseSolution(1);
  const phases: { readonly from: number; readonly phase: IcePhase }[] = [];
  let t = 0;
  let H = H0;
  let phase = phaseOf(tank, H);
  for (;;) {
    phases.push({ from: t, phase });
    const now = phase;
    const edge = now === 'frozen' ? allFrozen(tank) : 0;
    const leaves: OdeEvent = { direction: 1, value: (_t, y) => y[0]! - edge };
    const run = integrateSharply(
      {
        dimension: 1,
        autonomous: true,
        rhs: (_t, y, out) => (out[0] = heat(temperatureOf(tank, now, y[0]!))),
      },
      t,
      [H],
      end,
      {
        rtol: RTOL,
        atol: ATOL_K * tank.C_liquid,
        dense,
        events: now === 'liquid' ? [] : [leaves],
      },
    );
    if (run.reason !== 'finished' && run.reason !== 'event') {
      throw new SolverError(`the ice could not be followed: ${run.reason}`, {
        code: 'integration-failed',
        law: 'ice tank',
        value: run.t,
      });
    }
    t = run.t;
    H = run.y[0]!;
    if (run.reason === 'finished') break;
    phase = now === 'frozen' ? 'melting' : 'liquid';
  }
  const y = new Float64Array(1);
  const at = (time: number) => {
    if (dense.steps > 0) dense.value(time, y);
    else y[0] = H0;
    return { phase: phases.findLast(({ from }) => from <= time)!.phase, H: y[0]! };
  };
  const states = times.map(at);
  const startOf = (phase: IcePhase) => phases.find((p) => p.phase === phase)?.from ?? null;
  return {
    t_melt_start: startOf('melting'),
    t_melt_end: H0 < 0 ? startOf('liquid') : null,
    T: states.map((s) => temperatureOf(tank, s.phase, s.H)),
    ice_mass: states.map((s) => iceMassOf(tank, s.phase, s.H)),
  };
}

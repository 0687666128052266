/** Heat entering and heat leaving a loop whose knobs are moved and whose feedbacks are switched. */
import { airModel } from '../../airside/face';
import { chargeState } from '../../charge/state';
import { requireWithin } from '../../errors';
import { goRound } from '../balance';
import { prepareLoop, type PreparedLoop } from '../prepare';
import { roundAt } from '../roundAt';
import { FLOW_STANDING } from '../standstill';
import type { AirDemand, AirSide, ChargeState, Duty } from '../types';
import { bayShift, hasBreaker, runningShare, scaledFlow } from './flow';
import { flowSolved, flowTable, type FlowSource } from './flowTable';
import {
  KNOB_RANGE,
  UNDERHOOD_RANGE,
  type Feedbacks,
  type HeatsAt,
  type Knobs,
  type WhatIf,
} from './types';

/** A loop and duty with its knobs set: both heats at any temperature. */
export interface Balance {
  readonly what: WhatIf;
  /** The loop described, with cap and cavitation as asked. */
  readonly prepared: PreparedLoop;
  readonly duty: Duty;
  readonly ambient: number;
  /** Temperatures of the reservoir's outlet for which heats exist, K. */
  readonly coldest: number;
  readonly hottest: number;
  readonly boilingPoint: number;
  /** Null where the liquid stands still. */
  at(T: number): HeatsAt | null;
}

/** The loop with cap and cavitation as asked; its flows are then shared by every setting of the knobs. */
export interface RunawayModel {
  readonly prepared: PreparedLoop;
  with(knobs: Knobs): Balance;
  /** The same with flow and liquid read from a table within 1e-4: for many temperatures in a row. */
  readonly tabled: Pick<RunawayModel, 'with'>;
}

/** Settings of fan and ambient whose air side is remembered. */
const REMEMBERED = 256;

/**
 * Prepare a loop and duty for every setting of the knobs.
 *
 * The suction feedback decides whether cavitation is counted, whatever the loop says. The flow that
 * pump, restriction and suction side give is multiplied by the flow knob: pump and passages grow alike.
 * A breaker that cycles is seen as the mean flow over its cycles; what the charge air does while the
 * pump stands is not in this balance.
 */
export function runawayModel(
  prepared: PreparedLoop,
  duty: Duty,
  { feedbacks, cap }: Omit<WhatIf, 'knobs'>,
): RunawayModel {
  const { underhood } = feedbacks;
  if (underhood) requireWithin('underhood', UNDERHOOD_RANGE, { ...underhood });
  const base = variantOf(prepared, feedbacks, cap);
  const opens = feedbacks.breaker && hasBreaker(base);
  const airs = new Map<string, AirSide>();
  let tabled: RunawayModel['tabled'] | undefined;

  const airOf = (fan: number, ambientShift: number): AirSide => {
    const key = `${fan} ${ambientShift}`;
    const known = airs.get(key);
    if (known) return known;
    const { fans, site } = base.loop;
    const ambientTemperature = site.ambientTemperature + ambientShift;
    const air =
      fan === 1 && ambientShift === 0
        ? base.airAt(duty.vehicleSpeed)
        : airModel({
            ...base.loop,
            site: { ...site, ambientTemperature },
            fans: { ...fans, volts: fan * fans.volts },
          }).at(duty.vehicleSpeed);
    if (airs.size >= REMEMBERED) airs.clear();
    airs.set(key, air);
    return air;
  };

  const withFlow = ({ flowAt: flowOf, currentAt }: FlowSource) => ({
    with(knobs: Knobs): Balance {
      requireWithin('runaway', KNOB_RANGE, { ...knobs });
      const { site } = base.loop;
      const ambient = site.ambientTemperature + knobs.ambientShift;
      const loop = { ...base.loop, site: { ...site, ambientTemperature: ambient } };
      const loaded: Duty = { ...duty, air: scaledDemand(duty.air, knobs.load) };
      const air = airOf(knobs.fan, knobs.ambientShift);
      const running = (T: number) =>
        opens
          ? runningShare(base, currentAt(T), knobs.ambientShift + bayShift(underhood, T, ambient))
          : 1;
      let charge: ChargeState | null | undefined;
      const set: PreparedLoop = {
        ...base,
        loop,
        chargeAt: () => (charge === undefined ? (charge = chargeState(loop, loaded)) : charge),
        flowAt: (T) => scaledFlow(flowOf(T), knobs.flow, running(T)),
      };
      return {
        what: { knobs, feedbacks, cap },
        prepared: base,
        duty: loaded,
        ambient,
        coldest: base.coldest,
        hottest: base.movedUpTo,
        boilingPoint: base.boilingPoint,
        at: (T) => {
          const found = heatsAt(set, loaded, air, T, feedbacks, running(T));
          return found && { ...found, pumpFlow: flowOf(T).flow };
        },
      };
    },
  });
  return {
    prepared: base,
    ...withFlow(flowSolved(base)),
    get tabled() {
      return (tabled ??= withFlow(flowTable(base, opens)));
    },
  };
}

/** As {@link runawayModel}, for one setting. */
export const balanceAt = (prepared: PreparedLoop, duty: Duty, what: WhatIf): Balance =>
  runawayModel(prepared, duty, what).with(what.knobs);

function variantOf(
  prepared: PreparedLoop,
  { suction }: Feedbacks,
  cap: WhatIf['cap'],
): PreparedLoop {
  const { loop } = prepared;
  const cavitation = suction ? 'counted' : 'ignored';
  const capGauge = cap === 'open' ? 0 : loop.reservoir.capGauge;
  const same =
    cavitation === (loop.pump.cavitation ?? 'ignored') && capGauge === loop.reservoir.capGauge;
  if (same) return prepared;
  return prepareLoop({
    ...loop,
    pump: { ...loop.pump, cavitation },
    reservoir: { ...loop.reservoir, capGauge },
  });
}

/** More of the same: power and speed carry the air flow, stated heat is itself. */
function scaledDemand(air: AirDemand, load: number): AirDemand {
  switch (air.by) {
    case 'power':
      return { ...air, power: load * air.power };
    case 'speed-density':
      return { ...air, rotation: load * air.rotation };
    case 'heat':
      return { ...air, heat: load * air.heat };
  }
}

function heatsAt(
  set: PreparedLoop,
  duty: Duty,
  air: AirSide,
  T: number,
  { underhood }: Feedbacks,
  running: number,
): Omit<HeatsAt, 'pumpFlow'> | null {
  if (!(set.flowAt(T).flow >= FLOW_STANDING)) return null;
  const { flow, charge, round, liquid } = roundAt(set, duty, air, T);
  const ambient = set.loop.site.ambientTemperature;
  const bay = bayShift(underhood, T, ambient);
  const { state, core } = charge;
  // Compression multiplies the inlet's absolute temperature by one ratio, bypass or not.
  const carried = state ? state.compressorOutlet / (ambient + duty.intakeRise) : 0;
  const inlet = underhood ? carried * underhood.inletShare * bay : 0;
  const { heats, residual, temperatures } = goRound(
    underhood
      ? { ...round, bayAir: round.bayAir + bay, chargeAirIn: round.chargeAirIn + inlet }
      : round,
    T,
  );
  const leaving = -heats.frontExchanger;
  const drop = temperatures.frontIn - temperatures.frontOut;
  return {
    T,
    entering: residual + leaving,
    leaving,
    left: residual,
    flow,
    running,
    heats,
    temperatures,
    drop,
    capacityRate: round.C,
    density: liquid.rho,
    specificHeat: liquid.cp,
    conductance:
      temperatures.frontIn === ambient
        ? round.frontConductance
        : leaving / (temperatures.frontIn - ambient),
    chargeOut: core && core.C_air > 0 ? core.airIn + inlet - heats.charge / core.C_air : null,
  };
}

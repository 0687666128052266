/** What of a loop does not depend on temperature or duty, worked out once and shared. */
import { airModel } from '../airside/face';
import { pressureAtAltitude } from '../air/atmosphere';
import { coreModel, type CoreModel } from '../cores/conductance';
import { coolantBoilingPoint, coolantProperties, coolantRange } from '../fluids/coolant';
import type { LiquidProperties } from '../fluids/properties';
import {
  hydraulicModel,
  type HowToSettle,
  type HydraulicModel,
} from '../hydraulics/operatingPoint';
import { AFRESH } from '../kept';
import { chargeState } from '../charge/state';
import { hottestMoved } from '../suction/stall';
import type { AirSide, ChargeState, Duty, Loop } from './types';

export interface LiquidFlow {
  readonly liquid: LiquidProperties;
  /** m³/s */
  readonly flow: number;
  /** From the pump into the liquid, W. */
  readonly pumpHeat: number;
}

/** Temperatures remembered by {@link PreparedLoop.flowAt}. */
const REMEMBERED = 512;

export interface PreparedLoop {
  readonly loop: Loop;
  readonly hydraulics: HydraulicModel;
  readonly chargeCore: CoreModel;
  readonly frontCore: CoreModel;
  /** Absolute pressure over the liquid in the reservoir, Pa: the cap is taken to hold its rating. */
  readonly tankPressure: number;
  /** Boiling point at {@link tankPressure}, K. Places under the pump's pressure boil later. */
  readonly boilingPoint: number;
  readonly freezingPoint: number;
  /** Temperatures of the reservoir's outlet among which a balance is sought, K. */
  readonly coldest: number;
  readonly hottest: number;
  /** Up to here the pump moves the liquid, K: below `hottest` only where cavitation is counted. */
  readonly movedUpTo: number;
  /** Properties of the loop's liquid; `T` outside the range counts as its end. */
  liquidAt(T: number): LiquidProperties;
  /** Properties and flow at a temperature; the latest few hundred are remembered, as duties share them. */
  flowAt(T: number): LiquidFlow;
  /** Charge air of a duty whose air does not depend on the manifold's temperature; worked out once. */
  chargeAt(duty: Duty): ChargeState | null;
  /** Air side at a vehicle speed; solved once per speed. */
  airAt(vehicleSpeed: number): AirSide;
}

/**
 * Prepare a loop so that several duties, or a schedule, share what they have in common.
 * @param how - for studies of many loops; absent: from the ground up, down to rounding
 * @throws {@link InvalidInputError}, {@link OutOfRangeError} where a part contradicts itself
 */
export function prepareLoop(loop: Loop, how: HowToSettle = {}): PreparedLoop {
  const { kept = AFRESH } = how;
  const { coolant, site, reservoir } = loop;
  const tankPressure = pressureAtAltitude(site.altitude) + reservoir.capGauge;
  const boilingPoint = coolantBoilingPoint(coolant, tankPressure);
  const [freezingPoint, propertiesEnd] = coolantRange(coolant);
  const hottest = Math.min(boilingPoint, propertiesEnd);
  const air = airModel(loop);
  const charges = new Map<Duty, ChargeState | null>();
  const sides = new Map<number, AirSide>();
  const hydraulics = hydraulicModel(loop, how);
  const flows = new Map<number, LiquidFlow>();
  const inside = (T: number) => Math.min(Math.max(T, freezingPoint), hottest);
  const liquidAt = (T: number) => coolantProperties(coolant, inside(T));
  const flowOf = (T: number) => hydraulics.flowAt(liquidAt(T), inside(T));
  const starves = loop.pump.cavitation === 'counted' && hydraulics.pump.speedRatio > 0;
  return {
    loop,
    hydraulics,
    chargeCore: coreModel(loop.chargeCooler, 'chargeCooler', kept),
    frontCore: coreModel(loop.frontExchanger, 'frontExchanger', kept),
    tankPressure,
    boilingPoint,
    freezingPoint,
    coldest: freezingPoint,
    hottest,
    movedUpTo: starves ? hottestMoved(flowOf, [freezingPoint, hottest]) : hottest,
    liquidAt,
    flowAt(T) {
      const known = flows.get(T);
      if (known) return known;
      const liquid = liquidAt(T);
      const { flow, pump } = hydraulics.settled(liquid, inside(T));
      const found = { liquid, flow, pumpHeat: pump.heatToLiquid };
      if (flows.size >= REMEMBERED) flows.clear();
      flows.set(T, found);
      return found;
    },
    chargeAt(duty) {
      const known = charges.get(duty);
      if (known !== undefined) return known;
      const state = chargeState(loop, duty);
      charges.set(duty, state);
      return state;
    },
    airAt(vehicleSpeed) {
      const known = sides.get(vehicleSpeed);
      if (known) return known;
      const side = air.at(vehicleSpeed);
      sides.set(vehicleSpeed, side);
      return side;
    },
  };
}

/** Accept a loop as described or already prepared. */
export function prepared(loop: Loop | PreparedLoop): PreparedLoop {
  return 'hydraulics' in loop ? loop : prepareLoop(loop);
}

/** Puts a round that was found into the form the sheets read. */
import { hottestRise } from '../airside/overlap';
import type { Note } from '../errors';
import { coolantNotes, coolantVapourPressure } from '../fluids/coolant';
import type { LiquidProperties } from '../fluids/properties';
import { suctionMargin } from '../suction/npsh';
import { goRound, relativeResidual } from './balance';
import type { ChargeExchange } from './chargeSide';
import { frontState } from './front';
import type { PreparedLoop } from './prepare';
import type { RoundAt } from './roundAt';
import type {
  AirSide,
  CoreState,
  Duty,
  LiquidState,
  LoopTemperatures,
  Margins,
  OperatingPoint,
  SteadySolution,
} from './types';

/** Residual above which a balance is shown with a note. */
export const CLOSED_WITHIN = 1e-9;

/** `found` is the state at the balance, or at the limit the liquid would pass. */
export function solution(
  prepared: PreparedLoop,
  duty: Duty,
  air: AirSide,
  found: RoundAt,
  ended: 'balanced' | 'boils' | 'freezes',
): SteadySolution {
  const { liquid, T, charge, front } = found;
  const { temperatures, heats, residual } = goRound(found.round, T);
  const operating = prepared.hydraulics.operatingPoint(liquid, T);
  const relative = relativeResidual(heats, residual);
  const limits = margins(prepared, temperatures, operating, T);
  const chargeCooler = coolerState(charge, temperatures, heats.charge, found.round.C);
  const notes = [...endNotes(prepared, ended, limits, residual)];
  if (ended === 'balanced' && relative > CLOSED_WITHIN) {
    notes.push({
      code: 'balance-loose',
      message:
        'the heats close less sharply than usual: a part of the loop jumps at this temperature',
      value: relative,
      range: [0, CLOSED_WITHIN],
    });
  }
  return {
    status: ended === 'balanced' && limits.boiling < 0 ? 'boils' : ended,
    duty: duty.id,
    charge: charge.state,
    chargeOut: chargeCooler?.airOut ?? null,
    liquid: liquidState(prepared, liquid, T),
    temperatures,
    operating,
    air,
    chargeCooler,
    front: frontState(front, temperatures.frontIn, prepared.loop.site.ambientTemperature),
    ledger: heats,
    residual,
    relativeResidual: relative,
    margins: limits,
    notes: [
      ...notes,
      ...stackNotes(air),
      ...dewNotes(charge, temperatures.chargeCoolerIn),
      ...coolantNotes(prepared.loop.coolant, T),
    ],
  };
}

/** The charge cooler with its temperatures and heat put in; null where the heat is stated. */
export function coolerState(
  { core, conductance }: ChargeExchange,
  { chargeCoolerIn }: Pick<LoopTemperatures, 'chargeCoolerIn'>,
  heat: number,
  C: number,
): CoreState | null {
  if (!core) return null;
  return {
    ...core,
    liquidIn: chargeCoolerIn,
    // Behind the core; the engine's heat comes on top, see the temperatures by place.
    liquidOut: C > 0 && conductance > 0 ? chargeCoolerIn + heat / C : chargeCoolerIn,
    airOut: core.C_air > 0 ? core.airIn - heat / core.C_air : core.airIn,
    heat,
  };
}

export function liquidState(
  { loop }: PreparedLoop,
  { rho, cp, mu, k }: LiquidProperties,
  T: number,
): LiquidState {
  return {
    temperature: T,
    density: rho,
    specificHeat: cp,
    viscosity: mu,
    conductivity: k,
    vapourPressure: coolantVapourPressure(loop.coolant, T),
  };
}

export function margins(
  { boilingPoint, freezingPoint }: PreparedLoop,
  temperatures: LoopTemperatures,
  operating: OperatingPoint,
  T: number,
): Margins {
  return {
    suction: suctionMargin({
      available: operating.npshAvailable,
      required: operating.npshRequired,
    }),
    boiling: boilingPoint - Math.max(...Object.values(temperatures)),
    freezing: T - freezingPoint,
    boilingPoint,
    freezingPoint,
  };
}

function endNotes(
  { hottest, movedUpTo, boilingPoint }: PreparedLoop,
  ended: 'balanced' | 'boils' | 'freezes',
  { boiling }: Margins,
  residual: number,
): Note[] {
  if (ended === 'boils') {
    if (movedUpTo < hottest) return [{ ...STARVED, value: residual }];
    const message =
      hottest < boilingPoint
        ? 'heat still flows in at the highest temperature for which the liquid is described; the state shown is the one there'
        : 'heat still flows in at the boiling point; the state shown is the one there';
    return [{ code: 'loop.boils', message, quantity: 'residual', value: residual }];
  }
  if (ended === 'freezes') {
    const message = 'heat still flows out at the freezing point; the state shown is the one there';
    return [{ code: 'loop.freezes', message, quantity: 'residual', value: residual }];
  }
  if (boiling < 0) {
    const message =
      'the heats balance, but the hottest liquid is above the boiling point at the pressure of the reservoir';
    return [
      { code: 'loop.boils-at-hottest', message, quantity: 'margins.boiling', value: boiling },
    ];
  }
  return [];
}

const STARVED: Note = {
  code: 'loop.pump-starved',
  message:
    'heat still flows in where the liquid boils at the pump and the pump moves nothing any more; the state shown is the one there',
  quantity: 'residual',
};

/** No condenser or cooler in front runs this much hotter than the day, K (common practice, no source). */
const STACK_RISE_LIKELY: readonly [number, number] = [0, 60];

export function stackNotes(air: AirSide): Note[] {
  const rise = hottestRise(air);
  if (!(rise > STACK_RISE_LIKELY[1])) return [];
  return [
    {
      code: 'air.stack-rise-unlikely',
      message:
        'so little air moves that the heat stated for the other cores would make it hotter than those parts can be; in truth they give off less',
      quantity: 'air.stackRise',
      value: rise,
      range: STACK_RISE_LIKELY,
    },
  ];
}

function dewNotes({ state }: ChargeExchange, liquidIn: number): Note[] {
  if (!state || !(liquidIn < state.dewPoint)) return [];
  return [
    {
      code: 'charge.condensation',
      message: 'the liquid enters the charge cooler below the dew point of the charge air',
      quantity: 'temperatures.chargeCoolerIn',
      value: liquidIn,
      range: [state.dewPoint, Infinity],
    },
  ];
}

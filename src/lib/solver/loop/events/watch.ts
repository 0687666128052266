/** The events watched for in one mode, and what each does. */
import { ICE_POINT } from '../../fluids/ice';
import type { OdeEvent } from '../../numerics/event';
import { NODE } from '../network';
import type { EventNetwork } from './eventNetwork';
import type { Mode } from './mode';
import type { Layout } from './layout';
import type { Switches } from './switches';
import type { EventKind, EventRequest, EventSolution, LiquidPart } from './types';

/** What comes of a crossing. */
export type Outcome =
  | { readonly ends: Exclude<EventSolution['status'], 'completed'> }
  | { readonly kind: EventKind; readonly value: number; readonly part?: LiquidPart };

export interface Watched extends OdeEvent {
  /** Change the switches at the crossing and say what happened. */
  happen(y: Float64Array): Outcome;
}

/** What the watch needs to know besides switches and mode. */
export interface WatchFacts {
  readonly request: EventRequest;
  readonly layout: Layout;
  readonly net: EventNetwork;
  readonly boilingPoint: number;
  readonly coldest: number;
  readonly hottest: number;
  /** Reservoir temperature at which the air shut in lifts the cap; Infinity: never. */
  readonly capLiftsAt: number;
  readonly capGauge: number;
  /** State of the reservoir at which it counts as frozen through, K. */
  readonly frozenAt: number;
  /** Steam lost at which the reservoir counts as dry, kg. */
  readonly dryAt: number;
}

/** Below the ice point by this, K, before ice in the reservoir counts as ice in the hoses. */
const SUPERCOOLED = 0.01;

export function watched(facts: WatchFacts, s: Switches, mode: Mode): Watched[] {
  const { request, layout, net } = facts;
  const list: Watched[] = [limits(facts, mode)];
  if (request.breaker && layout.breaker >= 0) {
    const { reset, resetState } = request.breaker.breaker;
    const state = layout.breaker;
    if (s.closed) {
      list.push({
        direction: 1,
        value: (_t, y) => y[state]!,
        happen() {
          s.closed = false;
          return { kind: 'breaker-trips', value: mode.current };
        },
      });
    } else if (reset === 'automatic' || (reset === 'modified' && !s.switchedOn)) {
      list.push({
        direction: -1,
        value: (_t, y) => y[state]! + 1 - resetState,
        happen() {
          s.closed = true;
          return { kind: 'breaker-closes', value: resetState };
        },
      });
    }
  }
  if (request.thermostat) {
    const { sensor, onAt, offAt } = request.thermostat;
    const edge = s.fansOn ? offAt : onAt;
    const value = (_t: number, y: Float64Array) =>
      (sensor === 'frontOut' ? y[NODE.frontLiquid]! : net.reservoir(mode, y)) - edge;
    list.push({
      direction: s.fansOn ? -1 : 1,
      value,
      happen() {
        s.fansOn = !s.fansOn;
        return { kind: s.fansOn ? 'fans-on' : 'fans-off', value: edge };
      },
    });
  }
  if (request.ice && request.ice.mass > 0) {
    list.push({
      direction: s.melting ? 1 : -1,
      value: (_t, y) => y[NODE.reservoir]! - ICE_POINT,
      happen() {
        s.melting = !s.melting;
        return { kind: s.melting ? 'ice-forms' : 'ice-gone', value: ICE_POINT };
      },
    });
    if (s.melting) {
      list.push({
        direction: -1,
        value: (_t, y) => y[NODE.reservoir]! - facts.frozenAt,
        happen: () => ({ ends: 'freezes' }),
      });
    }
  }
  if (request.boiling) list.push(...boiling(facts, s, mode));
  if (!s.capLifted && facts.capLiftsAt < Infinity) {
    list.push({
      direction: 1,
      value: (_t, y) => net.reservoir(mode, y) - facts.capLiftsAt,
      happen() {
        s.capLifted = true;
        return { kind: 'cap-lifts', value: facts.capGauge };
      },
    });
  }
  return list;
}

export const BOILING = [
  { part: 'reservoir', of: 'reservoir', heat: 'reservoirHeat' },
  { part: 'chargeLiquid', of: 'charge', heat: 'chargeHeat' },
  { part: 'frontLiquid', of: 'front', heat: 'frontHeat' },
] as const;

function boiling(
  { net, layout, boilingPoint, dryAt }: WatchFacts,
  s: Switches,
  mode: Mode,
): Watched[] {
  const list = BOILING.map(({ part, of, heat }): Watched => {
    const happen = (): Outcome => {
      s.boils[of] = !s.boils[of];
      return { kind: s.boils[of] ? 'boiling-begins' : 'boiling-ends', value: boilingPoint, part };
    };
    if (s.boils[of]) return { direction: -1, value: (_t, y) => net.read(mode, y)[heat], happen };
    const temperature =
      part === 'reservoir'
        ? (y: Float64Array) => net.reservoir(mode, y)
        : (y: Float64Array) => y[NODE[part]]!;
    return { direction: 1, value: (_t, y) => temperature(y) - boilingPoint, happen };
  });
  if (mode.boils.reservoir || mode.boils.charge || mode.boils.front) {
    list.push({
      direction: 1,
      value: (_t, y) => y[layout.vapour]! - dryAt,
      happen: () => ({ ends: 'boiled-dry' }),
    });
  }
  return list;
}

/** Where the liquid stops being one that is followed: as in the warm-up, unless boiling is. */
function limits({ request, net, boilingPoint, coldest, hottest }: WatchFacts, mode: Mode): Watched {
  const iced = (request.ice?.mass ?? 0) > 0;
  const coldEnd = iced ? coldest - SUPERCOOLED : coldest;
  // A boiling liquid stays at its boiling point; past the end of its properties it cannot be followed.
  const hotEnd = request.boiling && hottest >= boilingPoint ? Infinity : hottest;
  let toBoiling = 0;
  let toFreezing = 0;
  return {
    direction: -1,
    value(_t, y) {
      const { T_out, coolerIn, frontIn, reservoir } = net.read(mode, y);
      toBoiling = hotEnd - T_out;
      if (!request.boiling) {
        const warmest = Math.max(
          T_out,
          coolerIn,
          frontIn,
          reservoir,
          y[NODE.chargeLiquid]!,
          y[NODE.frontLiquid]!,
        );
        toBoiling = Math.min(toBoiling, boilingPoint - warmest);
      }
      toFreezing = T_out - coldEnd;
      return Math.min(toBoiling, toFreezing);
    },
    happen: () => ({ ends: toBoiling <= toFreezing ? 'boils' : 'freezes' }),
  };
}

/** What is on, open, melting or boiling at a moment of a drive, and how it changes. */
import type { Mode } from './mode';
import type { EventRequest, LoopEvent } from './types';
import type { ModeForcing } from './variants';

/** The state of everything that switches; changed in place as the drive goes on. */
export interface Switches {
  fansOn: boolean;
  /** The breaker lets current through. */
  closed: boolean;
  /** The pump's switch. */
  switchedOn: boolean;
  primed: boolean;
  /** When the air will have left the pump; Infinity: it turns, or has none. */
  primeDue: number;
  melting: boolean;
  readonly boils: { reservoir: boolean; charge: boolean; front: boolean };
  capLifted: boolean;
  /** Moment whose appointments were kept last: an edge between segments is come to twice. */
  keptAt: number;
}

export const newSwitches = (): Switches => ({
  fansOn: true,
  closed: true,
  switchedOn: true,
  primed: true,
  primeDue: Infinity,
  melting: false,
  boils: { reservoir: false, charge: false, front: false },
  capLifted: false,
  keptAt: -1,
});

/** The pump turns; it moves liquid when it is primed too. */
export const turns = (s: Switches): boolean => s.closed && s.switchedOn;
export const moves = (s: Switches): boolean => turns(s) && s.primed;

/** Current of an air-bound pump over that at work, where not stated. Common practice, no source. */
export const AIR_BOUND_CURRENT = 0.55;

/** The mode for the rates, frozen until the next change. */
export function modeOf(
  s: Switches,
  forcing: ModeForcing,
  { airBound }: EventRequest,
  current: number,
) {
  const share = s.primed ? 1 : (airBound?.currentShare ?? AIR_BOUND_CURRENT);
  const mode: Mode = {
    forcing,
    melting: s.melting,
    boils: { ...s.boils },
    current: turns(s) ? share * current : 0,
  };
  return mode;
}

/** Times at which something is done from outside, rising: the drive stops at each. */
export function appointedTimes({ pumpOff, airBound, breaker }: EventRequest): number[] {
  const times = [
    ...(pumpOff ?? []).flatMap(({ from, until }) => [from, until]),
    ...(airBound ? [airBound.at] : []),
    ...(breaker?.breaker.reset === 'manual' ? (breaker.pushedAt ?? []) : []),
  ];
  return [...new Set(times)].sort((a, b) => a - b);
}

type Told = Omit<LoopEvent, 't' | 'part'>;

/** Do what is appointed for `t` exactly. @returns what happened */
export function keepAppointments(
  s: Switches,
  t: number,
  request: EventRequest,
  T_reservoir: number,
  breakerState: number,
): Told[] {
  const { pumpOff = [], airBound, breaker } = request;
  const told: Told[] = [];
  const tell = (kind: Told['kind'], value: number) => told.push({ kind, value });

  if (s.primeDue <= t) {
    s.primed = true;
    s.primeDue = Infinity;
    tell('pump-primed', T_reservoir);
  }
  if (s.keptAt === t) return told;
  s.keptAt = t;
  const turned = turns(s);
  const on = !pumpOff.some(({ from, until }) => t >= from && t < until);
  if (on !== s.switchedOn) {
    s.switchedOn = on;
    tell(on ? 'pump-switched-on' : 'pump-switched-off', T_reservoir);
  }
  if (airBound?.at === t) {
    s.primed = false;
    tell('prime-lost', T_reservoir);
  }
  if (breaker && !s.closed) {
    const { reset, resetState } = breaker.breaker;
    const cool = breakerState <= resetState;
    const pushed = reset === 'manual' && breaker.pushedAt?.includes(t);
    if (pushed || (reset === 'modified' && !on && cool)) {
      if (cool) s.closed = true;
      tell(cool ? 'breaker-closes' : 'breaker-push-refused', breakerState);
    }
  }
  restOf(s, t, turned, request);
  return told;
}

/** The air rises out of a pump that stands; one that turns keeps it. */
export function restOf(
  s: Switches,
  t: number,
  turnedBefore: boolean,
  { airBound }: EventRequest,
): void {
  if (s.primed || turns(s)) s.primeDue = Infinity;
  else if (s.primeDue === Infinity || turnedBefore) s.primeDue = t + (airBound?.restToPrime ?? 0);
}

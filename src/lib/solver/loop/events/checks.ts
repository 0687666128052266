/** Checks of what is asked of a drive. */
import { InvalidInputError, requireWithin, type Interval } from '../../errors';
import { BREAKER_RANGE, deratedRating } from '../../feed/breaker';
import { ICE_DENSITY, ICE_POINT, ICE_RANGE } from '../../fluids/ice';
import type { PreparedLoop } from '../prepare';
import { NODES } from './layout';
import type { EventRequest } from './types';

/** Enforced on the features of a request. */
export const EVENT_RANGE = {
  current: [0, 3000],
  breakerStart: [0, 1],
  restToPrime: [0, 1e5],
  currentShare: [0, 1.5],
  onAt: [200, 450],
  offAt: [200, 450],
  iceMass: [0, 100],
  timeConstant: [1, 1e5],
  liquidGain: [0, 0.9],
  inletShare: [0, 1],
  cells: [1, 8],
} as const satisfies Record<string, Interval>;

/** Shortest segment, s. */
const SHORTEST = 1e-6;

/**
 * Refuse what cannot be driven.
 * @throws {@link InvalidInputError} for a schedule without time, a state that is not a number, a feature
 *   that contradicts itself or the loop
 * @throws {@link OutOfRangeError} outside {@link EVENT_RANGE}
 */
export function requireEventRequest({ loop, boilingPoint }: PreparedLoop, r: EventRequest): void {
  const refuse = (path: string, message: string, value?: number) => {
    throw new InvalidInputError(path, message, value);
  };
  const within = (values: Partial<Record<keyof typeof EVENT_RANGE, number>>) => {
    for (const key of Object.keys(values) as (keyof typeof EVENT_RANGE)[]) {
      requireWithin('drive', { [key]: EVENT_RANGE[key] }, { [key]: values[key]! });
    }
  };
  if (r.schedule.length === 0) refuse('schedule', 'the schedule has no segment');
  r.schedule.forEach(({ duration, heat }, i) => {
    if (!(duration > SHORTEST && duration < Infinity)) {
      refuse(`schedule.${i}.duration`, 'must be above a microsecond', duration);
    }
    if (heat !== undefined && !Number.isFinite(heat)) {
      refuse(`schedule.${i}.heat`, 'must be a number', heat);
    }
  });
  for (const node of NODES) {
    const T = r.start[node];
    if (!Number.isFinite(T)) refuse(`start.${node}`, 'must be a number', T);
    if (r.boiling && !node.endsWith('Metal') && T > boilingPoint) {
      refuse(`start.${node}`, 'the liquid is above its boiling point at the start', T);
    }
  }
  for (const [i, { from, until }] of (r.pumpOff ?? []).entries()) {
    if (!(from >= 0 && until > from))
      refuse(`pumpOff.${i}.until`, 'must be after its start', until);
  }
  if (r.breaker) {
    const { breaker, current, start = 0 } = r.breaker;
    within({ breakerStart: start, ...(current === undefined ? {} : { current }) });
    const { timeConstant, resetState } = breaker;
    const { timeConstant: time, resetState: reset } = BREAKER_RANGE;
    const ranges = { timeConstant: time, resetState: reset };
    requireWithin('breaker', ranges, { timeConstant, resetState });
    deratedRating(breaker, loop.site.ambientTemperature);
  }
  if (r.airBound) {
    const { at, restToPrime, currentShare = 1 } = r.airBound;
    if (!(at >= 0)) refuse('airBound.at', 'must not lie before the start', at);
    within({ restToPrime, currentShare });
  }
  if (r.thermostat) {
    const { onAt, offAt } = r.thermostat;
    within({ onAt, offAt });
    if (!(onAt > offAt)) refuse('thermostat.onAt', 'must be above where the fans go off', onAt);
  }
  if (r.underhood) {
    const { timeConstant, liquidGain, inletShare } = r.underhood;
    within({ timeConstant, liquidGain, inletShare });
  }
  if (r.hoseDelay) {
    within({ cells: r.hoseDelay.cells });
    if (!Number.isInteger(r.hoseDelay.cells)) refuse('hoseDelay.cells', 'must be a whole number');
  }
  if (r.ice && r.ice.mass !== 0) requireIce(loop, r.ice);
}

function requireIce(
  { coolant, reservoir }: PreparedLoop['loop'],
  { mass, temperature = ICE_POINT }: NonNullable<EventRequest['ice']>,
): void {
  requireWithin(
    'ice',
    { mass: EVENT_RANGE.iceMass, T_ice: ICE_RANGE.T_ice },
    { mass, T_ice: temperature },
  );
  if (coolant.massFraction > 0) {
    throw new InvalidInputError(
      'ice',
      'ice in a glycol mixture melts along its freezing curve, which is not followed: plain water only',
    );
  }
  const room = reservoir.totalVolume - reservoir.liquidVolume;
  if (mass / ICE_DENSITY > room) {
    throw new InvalidInputError('ice.mass', 'the ice does not fit into the reservoir', mass);
  }
}

import { requireWithin, type Interval } from '../errors';
import { copperArea, wireArea, type WireSize } from './gauge';
import { ABYC_E11_105C_AT_30C } from './ampacityTable';

/** Temperature of the insulation for which the table was made, K (105 °C). */
export const INSULATION_LIMIT = 378.15;

/** Surroundings for which the table was made, K (30 °C). */
export const AMPACITY_REFERENCE = 303.15;

/** Surroundings accepted: to 100 °C; nearer the limit of the insulation the wire may carry almost nothing. */
export const AMPACITY_RANGE = {
  ambient: [233.15, 373.15],
  area: [wireArea({ awg: 18 }), 2e-4], // the thinnest of the table
} as const satisfies Record<string, Interval>;

/**
 * Share of the tabulated current that is left in hotter surroundings: heat grows with the square of the
 * current and leaves in proportion to the difference of temperature. Never above 1: the table is the most.
 *
 * @formula k = min(1, sqrt((378.15 - ambient) / (378.15 - 303.15)))
 * @symbol ambient - temperature round the wire, K
 * @returns k, 1
 * @throws {@link OutOfRangeError} outside {@link AMPACITY_RANGE}
 * @source Steady heat balance; gives the engine-space column of ABYC E-11 (50 °C) within its rounding
 * @example ampacityFactor({ ambient: 323.15 }) // 0.85635
 */
export function ampacityFactor({ ambient }: { ambient: number }): number {
  requireWithin('ampacity', { ambient: AMPACITY_RANGE.ambient }, { ambient });
  return Math.min(
    1,
    Math.sqrt((INSULATION_LIMIT - ambient) / (INSULATION_LIMIT - AMPACITY_REFERENCE)),
  );
}

/**
 * Current a single wire with 105 °C insulation may carry, A. A size between two gauges of the table
 * gets the thinner one's current. Bundled wires carry less: not covered.
 * @throws {@link OutOfRangeError} for wire thinner than 18 AWG (0.8 mm²) or surroundings outside the range
 * @source ABYC E-11 as reprinted (boats; a stated practice), see the table
 */
export function ampacity(size: WireSize, ambient: number): number {
  const area = copperArea(size);
  requireWithin('ampacity', { area: AMPACITY_RANGE.area }, { area });
  let amps = 0;
  for (const [awg, rated] of ABYC_E11_105C_AT_30C) {
    // The table runs from thin to thick; a hair of slack so that a gauge given by its own area is itself.
    if (wireArea({ awg }) <= area * (1 + 1e-9)) amps = rated;
  }
  return amps * ampacityFactor({ ambient });
}

/** Whether a fuse or breaker opens before the wire is harmed. */
export interface FuseCheck {
  readonly protects: boolean;
  readonly ampacity: number;
  /** Ampacity less rating, A; negative: the wire is the fuse. */
  readonly margin: number;
}

/**
 * A fuse protects a wire when its rating is no more than the wire may carry where it lies.
 * @throws {@link OutOfRangeError} as {@link ampacity}, or for a rating that is no positive number
 */
export function fuseProtectsWire(rating: number, size: WireSize, ambient: number): FuseCheck {
  requireWithin('fuse', { rating: [0.1, 500] }, { rating });
  const carries = ampacity(size, ambient);
  return { protects: rating <= carries, ampacity: carries, margin: carries - rating };
}

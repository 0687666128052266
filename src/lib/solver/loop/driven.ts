/** A loop driven through segments of duty, and what became of it. SI. */
import type { Note } from '../errors';
import type { DutyId } from './description';

/** One segment of a drive schedule. */
export interface Segment {
  readonly duty: DutyId;
  readonly duration: number;
  /** Overrides the duty's vehicle speed. */
  readonly vehicleSpeed?: number;
  /** Overrides the charge heat, W. */
  readonly heat?: number;
}

/** States of the transient, K: liquid node of each core holds the liquid leaving it. */
export interface TransientState {
  readonly reservoir: number;
  readonly chargeLiquid: number;
  readonly chargeMetal: number;
  readonly frontLiquid: number;
  readonly frontMetal: number;
}

export interface WarmUpRequest {
  readonly schedule: readonly Segment[];
  readonly start: TransientState;
  /** Limit on the charge temperature for "time to limit", K. */
  readonly chargeLimit: number;
  /** Recovered when the reservoir is within this of its value before the hardest segment, K. */
  readonly recoveryBand: number;
  readonly rtol?: number;
  /** Evenly spaced points of the history, besides both sides of every edge; 600 unless told. */
  readonly points?: number;
}

/** Capacity of heat by part, J/K. */
export interface ThermalMass {
  readonly part:
    | 'reservoirLiquid'
    | 'reservoirMetal'
    | 'chargeLiquid'
    | 'chargeMetal'
    | 'frontLiquid'
    | 'frontMetal'
    | 'hoses';
  readonly capacity: number;
  readonly liquidVolume: number;
}

/** Parallel arrays over time, equal length. NaN in `chargeOut` where heat was stated outright. */
export interface WarmUpHistory {
  readonly t: Float64Array;
  readonly reservoir: Float64Array;
  readonly chargeLiquid: Float64Array;
  readonly chargeMetal: Float64Array;
  readonly frontLiquid: Float64Array;
  readonly frontMetal: Float64Array;
  readonly chargeOut: Float64Array;
  readonly heatIn: Float64Array;
  readonly heatOut: Float64Array;
  readonly flow: Float64Array;
}

/** The segment a schedule is judged by. */
export interface HardestSegment {
  /** Its place in the schedule, from 0. */
  readonly index: number;
  readonly from: number;
  readonly to: number;
  /** Reservoir as it began, and the highest until the segment after it ends, K. */
  readonly before: number;
  readonly peak: number;
}

export interface WarmUpSolution {
  /**
   * `completed`, or `boils` (`freezes`) when the hottest liquid reached the boiling point (the liquid
   * leaving the reservoir its freezing point) at `endTime`.
   */
  readonly status: 'completed' | 'boils' | 'freezes';
  readonly endTime: number;
  readonly history: WarmUpHistory;
  readonly segmentStarts: readonly number[];
  readonly end: TransientState;
  readonly peakCharge: { readonly t: number; readonly value: number } | null;
  readonly peakReservoir: { readonly t: number; readonly value: number };
  /** First time the charge passes the limit; null: never in this schedule. */
  readonly timeToLimit: number | null;
  /** The segment with the most heat per second; null where no time passed. */
  readonly hardest: HardestSegment | null;
  /** From the end of the hardest segment until the reservoir is back; null: not in this schedule. */
  readonly recoveryTime: number | null;
  /** Heat gathered over the run, J: all but the front exchanger's, and the front exchanger's. */
  readonly heatIn: number;
  readonly heatOut: number;
  readonly thermalMass: readonly ThermalMass[];
  /** Heat in less heat out less heat stored, over heat in: how well the integration closed. */
  readonly energyError: number;
  readonly steps: number;
  readonly rejected: number;
  readonly notes: readonly Note[];
}

/** Words between a log and the loop described: what was logged, at which means a fit holds. */

/** Channels at one pace, SI; what drives the loop has no gaps, what was read may have. */
export interface Logged {
  /** Rising, s. */
  readonly t: Float64Array;
  readonly reservoir?: Float64Array;
  readonly chargeCoolerOut?: Float64Array;
  readonly frontIn?: Float64Array;
  readonly frontOut?: Float64Array;
  readonly chargeAirIn?: Float64Array;
  readonly chargeAirOut?: Float64Array;
  readonly ambient?: Float64Array;
  readonly flow?: Float64Array;
  readonly vehicleSpeed?: Float64Array;
  /** Revolutions per second. */
  readonly engineSpeed?: Float64Array;
  /** Absolute, Pa. */
  readonly manifold?: Float64Array;
  /** kg/s */
  readonly airFlow?: Float64Array;
  readonly heat?: Float64Array;
}

/** Which thermal masses are sought. */
export type MassesSought = 'none' | 'reservoir' | 'all';

/** What is sought beside the conductances. */
export interface Sought {
  readonly masses: MassesSought;
  /** Heat soaked into the charge cooler beside what the description says: where nobody described it. */
  readonly soak: boolean;
}

/** Means over the rows used. */
export interface LogMeans {
  readonly liquidTemperature: number;
  readonly ambient: number;
  /** Null where the log has none: then it is sought. */
  readonly flow: number | null;
  /** Null where the log has none: then it is the duty's. */
  readonly speed: number | null;
  /** kg/s; null where heat was stated. */
  readonly chargeAirFlow: number | null;
  /** W/K */
  readonly frontAirRate: number;
}

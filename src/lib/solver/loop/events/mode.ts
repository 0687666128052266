/** What holds between two events, and what is read off a state in it. */
import type { ModeForcing } from './variants';

/** What holds between two events. */
export interface Mode {
  readonly forcing: ModeForcing;
  /** Ice and water stand together in the reservoir. */
  readonly melting: boolean;
  readonly boils: {
    readonly reservoir: boolean;
    readonly charge: boolean;
    readonly front: boolean;
  };
  /** Through the breaker, A. */
  readonly current: number;
}

/** What can be read off a state besides the state itself. */
export interface EventReading {
  reservoir: number;
  T_out: number;
  coolerIn: number;
  frontIn: number;
  /** Arriving back at the reservoir. */
  returning: number;
  chargeOut: number;
  bayAir: number;
  flow: number;
  heatIn: number;
  heatOut: number;
  /** Heat a liquid would warm by, or boils by, W. */
  reservoirHeat: number;
  chargeHeat: number;
  frontHeat: number;
}

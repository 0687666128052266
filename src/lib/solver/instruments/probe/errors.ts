/** Readings that no probe in a divider can give. */
import { SolverError, type Interval } from '../../errors';

/** The input sits at its supply: the probe, its lead or its plug is open. */
export class OpenProbeError extends SolverError {
  constructor(quantity: string, value: number, range?: Interval) {
    super(`the reading is that of an open circuit: probe, lead or plug is broken`, {
      code: 'probe-open',
      quantity,
      value,
      ...(range && { range }),
    });
  }
}

/** The input sits at ground: the probe or its lead is shorted. */
export class ShortedProbeError extends SolverError {
  constructor(quantity: string, value: number, range?: Interval) {
    super(`the reading is that of a short circuit: the probe or its lead touches ground`, {
      code: 'probe-short',
      quantity,
      value,
      ...(range && { range }),
    });
  }
}

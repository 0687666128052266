/** Every fault the diagnosis knows, in the order in which they stand on the sheet. */
import { AIR_FAULTS } from './airFaults';
import { INSTRUMENT_FAULTS } from './instrumentFaults';
import { LIQUID_FAULTS } from './liquidFaults';
import type { Fault, FaultId } from './types';

/** Nothing beyond what the job says. */
const asDescribed: Fault = {
  id: 'as-described',
  name: 'Nothing beyond what is described',
  sign: 'The readings agree with the loop as it is entered in this job.',
  weight: 2,
  severity: null,
  apply: ({ loop }) => loop,
};

export const FAULTS: readonly Fault[] = [
  asDescribed,
  ...LIQUID_FAULTS,
  ...AIR_FAULTS,
  ...INSTRUMENT_FAULTS,
];

/** The fault of that name. */
export const faultOf = (id: FaultId): Fault => FAULTS.find((fault) => fault.id === id)!;

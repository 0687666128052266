/** The public list of the solver: what a program needs to solve a loop. Laws are imported from their own modules. */
export * from './errors';
export * from './formula';
export { SI_UNIT, type Quantity } from './quantity';
export { SOURCES, type Source, type SourceStanding } from './sources';
export type * from './loop/types';
export { prepareLoop, type PreparedLoop } from './loop/prepare';
export { steady, steadyIn } from './loop/steady';
export { thermalMass, totalCapacity } from './loop/thermalMass';
export { coldState, settledState, warmUp } from './loop/warmUp';
export { simulate } from './loop/events/simulate';
export type * from './loop/events/types';

/**
 * What a loop is, what a solution of it is: one place to import from. SI throughout. Plain frozen data,
 * no classes: it crosses to a worker as it is.
 */
export type * from './description';
export type * from './driven';
export type * from './solved';

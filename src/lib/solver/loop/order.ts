/** What follows from the order in which the liquid passes the two cores. */
import type { LiquidOrder, Loop } from './description';
import type { LoopTemperatures } from './solved';

export type CoreId = 'chargeCooler' | 'frontExchanger';
type Ordered = Pick<Loop, 'liquidOrder'>;

export const orderOf = ({ liquidOrder = 'cooler-first' }: Ordered): LiquidOrder => liquidOrder;

/** Whether the liquid comes from the pump to the front exchanger, and to the charge cooler after it. */
export const isFrontFirst = (loop: Ordered): boolean => orderOf(loop) === 'front-first';

/** Both cores in order of flow. */
export const coresInOrder = (loop: Ordered): readonly [CoreId, CoreId] =>
  isFrontFirst(loop) ? ['frontExchanger', 'chargeCooler'] : ['chargeCooler', 'frontExchanger'];

/** Liquid leaving the first core for the run between the two, K. */
export const leavingFirstCore = (t: LoopTemperatures, loop: Ordered): number =>
  isFrontFirst(loop) ? t.frontOut : t.chargeCoolerOut;

/** Liquid arriving at the second core, K. */
export const reachingSecondCore = (t: LoopTemperatures, loop: Ordered): number =>
  isFrontFirst(loop) ? t.chargeCoolerIn : t.frontIn;

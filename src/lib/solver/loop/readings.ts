/** What a technician reads off a settled loop: differences and sums of its solution. */
import { isFrontFirst } from './order';
import type { Loop, SteadySolution } from './types';

/**
 * Liquid on its way to the charge cooler above ambient, K: the first number to compare between loops.
 * That of the reservoir, or, where the front exchanger comes first, of the liquid behind it.
 */
export const approach = ({ temperatures: t }: SteadySolution, loop: Loop): number =>
  (isFrontFirst(loop) ? t.chargeCoolerIn : t.reservoir) - loop.site.ambientTemperature;

/** Drop of the liquid through the front exchanger, K. */
export const frontDrop = ({ temperatures: t }: SteadySolution): number => t.frontIn - t.frontOut;

/** Heat that the engine and its bay put into the liquid, W. */
export const soakHeat = ({ ledger: h }: SteadySolution): number =>
  h.engineSoak + h.hoseSoak + h.reservoirSoak;

/** Everything that enters the liquid except at the front exchanger, W. */
export const heatIn = (s: SteadySolution): number => s.ledger.charge + soakHeat(s) + s.ledger.pump;

/** Hottest liquid anywhere in the loop, K. */
export const hottestLiquid = ({ temperatures }: SteadySolution): number =>
  Math.max(...Object.values(temperatures));

/** Charge air above the liquid that cools it, K; null where the air is not known. */
export const chargeAboveLiquid = ({ chargeOut, temperatures }: SteadySolution): number | null =>
  chargeOut === null ? null : chargeOut - temperatures.chargeCoolerIn;

/**
 * Which side holds the front exchanger back. The liquid gives up the share `liquidEffectiveness` of
 * what it could; near one it leaves as cold as the air and only more flow carries more heat; near
 * nothing it leaves as hot as it came and only air and area carry more.
 * The bounds (0.6 and 0.35) are common practice, no source.
 */
export function frontLimit({ front }: SteadySolution): 'flow' | 'air-and-area' | 'both' {
  if (front.liquidEffectiveness > 0.6) return 'flow';
  return front.liquidEffectiveness < 0.35 ? 'air-and-area' : 'both';
}

/** Healthy street loops sit this far above ambient, K (common practice, no source): 10–25 °F moving, 20–45 °F in traffic. */
export const HEALTHY_APPROACH = { moving: 25 / 1.8, traffic: 45 / 1.8 } as const;

/** More than this effectiveness and the charge leaves at the liquid's temperature for any thermometer. */
export const CHARGE_IS_LIQUID = 0.9;

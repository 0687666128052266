/**
 * Largest drop advised across one part under load, V.
 * A workshop manual quotes these as SAE advice; the SAE document was not identified: common practice.
 * Wire is judged per side, out or back.
 */
import type { FeedWalk, WalkDrop } from './walk';

export const DROP_ADVICE = {
  connector: 0.1,
  protection: 0.1,
  wire: 0.2,
  relay: 0.3,
} as const satisfies Record<WalkDrop['kind'], number>;

/** A part that loses more than advised. */
export interface DropExcess {
  readonly part: WalkDrop;
  readonly advised: number;
}

/** More than {@link DROP_ADVICE} across this part. */
export const aboveAdvice = ({ drop, kind }: Pick<WalkDrop, 'drop' | 'kind'>): boolean =>
  drop > DROP_ADVICE[kind];

/** Parts of a walked feed that lose more than {@link DROP_ADVICE}, worst first. */
export function dropsAboveAdvice({ drops }: Pick<FeedWalk, 'drops'>): DropExcess[] {
  return drops
    .map((part) => ({ part, advised: DROP_ADVICE[part.kind] }))
    .filter(({ part }) => aboveAdvice(part))
    .sort((a, b) => b.part.drop - b.advised - (a.part.drop - a.advised));
}

/** How a value stands against a limit it must not pass: `near` is the last tenth before it. */
export function stateWithin(value: number, limit: number): 'ok' | 'near' | 'over' {
  if (!(value <= limit)) return 'over';
  return value > 0.9 * limit ? 'near' : 'ok';
}

/** Volts read at the plug may differ from those worked out by this much before a joint is missing, V. */
export const UNEXPLAINED = 0.2;

/** Volts worked out for the plug less those read there, V: above zero, a loss nobody has described. */
export const unexplainedDrop = (workedOut: number, read: number): number => workedOut - read;

/** Part of the drop that lies between the pump and the battery's negative post, V. */
export const groundDrop = ({ drops }: Pick<FeedWalk, 'drops'>): number =>
  drops.reduce((sum, { side, drop }) => sum + (side === 'ground' ? drop : 0), 0);

/** The joint (not wire) that makes the most heat; null without joints. */
export const hottestJoint = ({ drops }: Pick<FeedWalk, 'drops'>): WalkDrop | null =>
  drops
    .filter(({ kind }) => kind !== 'wire')
    .reduce<WalkDrop | null>((worst, d) => (worst && worst.heat >= d.heat ? worst : d), null);

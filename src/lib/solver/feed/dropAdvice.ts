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

/** Parts of a walked feed that lose more than {@link DROP_ADVICE}, worst first. */
export function dropsAboveAdvice({ drops }: Pick<FeedWalk, 'drops'>): DropExcess[] {
  return drops
    .map((part) => ({ part, advised: DROP_ADVICE[part.kind] }))
    .filter(({ part, advised }) => part.drop > advised)
    .sort((a, b) => b.part.drop - b.advised - (a.part.drop - a.advised));
}

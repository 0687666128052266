import type { Arrangement } from '../loop/types';

/**
 * How the two streams pass each other, as the effectiveness relations know it. The loop says which
 * medium is mixed; the relations ask whether that is the stream of the smaller capacity rate.
 */
export type ExchangerArrangement =
  | 'counterflow'
  | 'parallel'
  | 'crossflow-both-unmixed'
  | 'crossflow-both-unmixed-approximate'
  | 'crossflow-cmin-mixed'
  | 'crossflow-cmax-mixed'
  | 'crossflow-both-mixed'
  | 'shell-and-tube-1-2';

/** The arrangement of a core once it is known whether its air has the smaller capacity rate. */
export function exchangerArrangement(
  arrangement: Arrangement,
  airIsSmaller: boolean,
): ExchangerArrangement {
  switch (arrangement) {
    case 'crossflow-air-mixed':
      return airIsSmaller ? 'crossflow-cmin-mixed' : 'crossflow-cmax-mixed';
    case 'crossflow-liquid-mixed':
      return airIsSmaller ? 'crossflow-cmax-mixed' : 'crossflow-cmin-mixed';
    default:
      return arrangement;
  }
}

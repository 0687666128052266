/** From values to what the sheet of runaway tries: knobs, feedbacks, cap. */
import type { WhatIf } from '$lib/solver/loop/runaway/types';
import type { Values } from '../values';

/** Field that holds each knob. */
export const KNOB_PATH = {
  flow: 'runaway.flowShare',
  fan: 'runaway.fanShare',
  ambientShift: 'runaway.ambientShift',
  load: 'runaway.loadShare',
} as const;

/** Knobs and feedbacks as they stand, and what the cap does. */
export function whatIfOf(values: Values): WhatIf {
  const si = (path: string) => values[path]!.si!;
  const on = (path: string) => values[path]!.choice === 'on';
  return {
    knobs: {
      flow: si(KNOB_PATH.flow),
      fan: si(KNOB_PATH.fan),
      ambientShift: si(KNOB_PATH.ambientShift),
      load: si(KNOB_PATH.load),
    },
    feedbacks: {
      suction: on('runaway.suctionFeedback'),
      breaker: on('runaway.breakerFeedback'),
      underhood: on('runaway.underhoodFeedback') ? gainOf(values) : null,
    },
    cap: values['runaway.capHeld']!.choice as WhatIf['cap'],
  };
}

/** How bay and inlet follow the liquid. */
export const gainOf = (values: Values) => ({
  liquidGain: values['runaway.liquidGain']!.si!,
  inletShare: values['runaway.inletShare']!.si!,
});

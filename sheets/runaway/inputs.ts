/** Which inputs of the job this sheet shows. */
export const GAIN_PATHS = ['runaway.liquidGain', 'runaway.inletShare'];
export const LOOP_PATHS = [
  'site.ambient',
  'reservoir.cap',
  'reservoir.vent',
  'soak.engineConductance',
];

/** Field that holds each knob. */
export const KNOB_PATH = {
  flow: 'runaway.flowShare',
  fan: 'runaway.fanShare',
  ambientShift: 'runaway.ambientShift',
  load: 'runaway.loadShare',
} as const;

export const FEEDBACK_PATHS = [
  'runaway.suctionFeedback',
  'runaway.breakerFeedback',
  'runaway.underhoodFeedback',
  'runaway.capHeld',
] as const;

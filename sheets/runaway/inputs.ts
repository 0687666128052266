/** Which inputs of the job this sheet shows. */
export const GAIN_PATHS = ['runaway.liquidGain', 'runaway.inletShare'];
export const LOOP_PATHS = [
  'site.ambient',
  'reservoir.cap',
  'reservoir.vent',
  'soak.engineConductance',
];

export { KNOB_PATH } from '$lib/job/models/toWhatIf';

export const FEEDBACK_PATHS = [
  'runaway.suctionFeedback',
  'runaway.breakerFeedback',
  'runaway.underhoodFeedback',
  'runaway.capHeld',
] as const;

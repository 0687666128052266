/** Why a result is absent, each for itself. */
import type { Study } from './study';

const NO_BATHS = 'both baths are needed';
const UNEXPLAINED = 'nothing single explains the readings';
const ALIKE = 'both readings are nearly the same';
const EMPTY_RANGE = 'the range ends before it starts';
const NO_RANGE = 'the range reaches beyond the probe’s law';
/** Why there is no trim. */
export const NO_TRIM: Readonly<Record<NonNullable<Study['noTrim']>, string>> = {
  'not-needed': 'no trim is needed',
  repair: 'something is to be put right first',
  'bias-cannot': 'no bias mends this',
  'stock-cannot': 'no network of these resistors comes near enough',
  'no-stock': 'there is no resistor to choose from',
};

/** Why nothing is known of the error over the range; the trim has reasons of its own. */
export function unknown({ verdict, job, trims }: Study): string {
  if (!verdict && !job.readerBiasKnown) return NO_BATHS;
  if (trims && !trims.ok) return trims.problem.code === 'out-of-range' ? NO_RANGE : EMPTY_RANGE;
  return verdict?.alike ? ALIKE : UNEXPLAINED;
}

/** Why no explanation leads. */
export const misfitUnknown = ({ verdict }: Study): string =>
  !verdict ? NO_BATHS : verdict.alike ? ALIKE : UNEXPLAINED;

/** Lines that hold the measures of a core against its rating point, where one was typed in. */
import * as formulas from '$lib/solver/cores/geometry/formulas';
import { formulaLine, type Line } from '$lib/solver/formula';
import { ratingLines } from '../exchangers/ratingLines';
import { CORE_WORDS, type MeasuredCore } from './measured';

/** Usual measures are no witness against a rating. */
export const compared = ({ rated, assumed }: MeasuredCore): boolean => rated !== null && !assumed;

export function againstRatingLines(core: MeasuredCore): Line[] {
  if (!core.rated || !compared(core)) return [];
  const name = CORE_WORDS[core.core];
  return [
    ...ratingLines(name, core.rated.core, core.rated),
    formulaLine(
      formulas.measuresOverRating,
      { UA: core.made.UA, UA_r: core.rated.rated.UA },
      {
        id: `${name.id}.against-rating`,
        statement: `${name.title}: what its measures make, of what its rating stands for`,
        why: 'Two witnesses for one core: apart by more than a fifth, one of them is wrong, and money hangs on which.',
      },
    ),
  ];
}

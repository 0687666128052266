/** What must be said beside a fit, in words. */
import type { Note } from '../../errors';
import type { Identified } from './asked';
import { PARAMETERS, type ParameterName } from './types';

/** Residuals that hang together by more than this tell of a model that is not the loop. */
const HANGING = 0.3;

const nameOf = (name: string) => PARAMETERS[name as ParameterName].name;

export function readNotes(found: Omit<Identified, 'notes'>): Note[] {
  const notes: Note[] = [];
  const { reason } = found.fit;
  if (reason !== 'converged')
    notes.push({
      code: 'fit-not-converged',
      message: `The fit ended before it settled (${reason}); its numbers are where it stood.`,
    });
  for (const { name, atBound, value } of found.estimates.parameters) {
    if (!atBound) continue;
    notes.push({
      code: 'fit-at-bound',
      quantity: name,
      value,
      range: PARAMETERS[name as ParameterName].range,
      message: `${nameOf(name)} ran against the end of its range: this log or this model does not hold it.`,
    });
  }
  for (const { parameters, deviation } of found.separability.weak) {
    const names = parameters.map(nameOf);
    const of = Number.isFinite(deviation) ? `(± ${Math.round(100 * deviation)} %)` : '';
    notes.push({
      code: 'fit-not-separated',
      quantity: parameters[0],
      message:
        names.length === 1
          ? `This log does not tell: ${names[0]} ${of}`.trim() + '.'
          : `This log cannot separate ${names.slice(0, -1).join(', ')} and ${names.at(-1)} ${of}`.trim() +
            '.',
    });
  }
  for (const { channel, nextCorrelation } of found.channels) {
    if (nextCorrelation > HANGING)
      notes.push({
        code: 'fit-residuals-hang-together',
        quantity: channel,
        value: nextCorrelation,
        message:
          'What the model leaves of this channel is not noise: something drove the loop that the log or the model does not hold. The intervals are widened for it.',
      });
  }
  return notes;
}

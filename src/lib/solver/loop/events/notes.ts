/** What must be told beside the result of a drive. */
import type { Note } from '../../errors';
import { BREAKER_RANGE } from '../../feed/breaker';
import { TABLE_RTOL } from '../forcing';
import type { Coolant } from '../types';
import type { Stretch } from './history';
import type { EventHistory, EventRequest } from './types';

/** Share of the reservoir's liquid gone as steam from which the glycol left behind is spoken of. */
const STRONGER = 0.05;

export interface NoteFacts {
  readonly request: EventRequest;
  readonly coolant: Coolant;
  readonly stretches: readonly Stretch[];
  readonly history: EventHistory;
  readonly vapourLost: number;
  /** kg */
  readonly reservoirMass: number;
}

export function notesOf(facts: NoteFacts): Note[] {
  const { request, coolant, stretches, history, vapourLost, reservoirMass } = facts;
  const notes: Note[] = [];
  const worst = Math.max(0, ...stretches.map(({ mode }) => mode.forcing.base.table.worst));
  if (worst > TABLE_RTOL) {
    notes.push({
      code: 'drive.table-coarse',
      message:
        'flow or heat transfer changes so sharply with temperature that the table of them is coarse there',
      value: worst,
      range: [0, TABLE_RTOL],
    });
  }
  if (request.breaker && request.breaker.place !== 'outside') {
    const hottest = history.bayAir.reduce((most, T) => Math.max(most, T), 0);
    if (hottest > BREAKER_RANGE.ambient[1]) {
      notes.push({
        code: 'drive.breaker-hot',
        message: 'the bay gets hotter than any breaker is rated for: its trips there are a guess',
        quantity: 'bayAir',
        value: hottest,
        range: BREAKER_RANGE.ambient,
      });
    }
  }
  if (coolant.massFraction > 0 && vapourLost > STRONGER * reservoirMass) {
    notes.push({
      code: 'drive.glycol-stronger',
      message: 'so much water boils off that the glycol left is stronger than reckoned with',
      quantity: 'vapourLost',
      value: vapourLost,
      range: [0, STRONGER * reservoirMass],
    });
  }
  return notes;
}

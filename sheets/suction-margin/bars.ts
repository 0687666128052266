/** Rows of this sheet's bars. */
import { sentence, type UnitSystem } from '$lib/kit';
import { q } from '../types';
import { HELP_NAME } from './parts';
import type { Study } from './study';

/** Suction head gained by one change at a time; what gains nothing has no bar. */
export function helpRows({ helps }: Study, planned: Study | null, system: UnitSystem) {
  return helps
    .filter(({ gain }) => gain > 0)
    .map(({ id, from, to, quantity, gain, allowed }) => {
      const same = planned?.helps.find((help) => help.id === id);
      return {
        id,
        label: HELP_NAME[id],
        remark: sentence(
          [
            q(from, quantity),
            ' to ',
            q(to, quantity),
            allowed ? '' : ', above what the tank is made for',
          ],
          system,
        ),
        found: gain,
        ...(same && same.gain > 0 && { candidate: same.gain }),
      };
    });
}

/** Rows of this sheet's bars. */
import { worded, type UnitSystem } from '$lib/kit';
import { HELP_NAME } from './parts';
import type { Study } from './study';

/** Suction head gained by one change at a time; what gains nothing has no bar. */
export function helpRows({ helps }: Study, planned: Study | null, system: UnitSystem) {
  return helps
    .filter(({ gain }) => gain > 0)
    .map(({ id, from, to, quantity, gain }) => {
      const same = planned?.helps.find((help) => help.id === id);
      return {
        id,
        label: HELP_NAME[id],
        remark: `${worded(from, quantity, system)} to ${worded(to, quantity, system)}`,
        found: gain,
        ...(same && same.gain > 0 && { candidate: same.gain }),
      };
    });
}

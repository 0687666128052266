/** Where the loop settles on days of one temperature or another, all else as unsure as it is. */
import { spaced } from '$lib/solver/numerics/spaced';
import type { Side } from '../../evaluate';
import { fieldAt } from '../../fields';
import { dutyOf } from '../../shownDuty';
import { surenessKey } from '../sureness';
import { uncertainOf, type Uncertain } from '../surenessInputs';
import { loopModel } from '../surenessModel';
import { bandsRound, DRAWN_SLOW, type Bands, type BandSource, type Curves } from './bandSource';

const AMBIENT = 'site.ambient';
/** Cold morning to desert noon, K; what most tables of weather hold (common practice, no source). */
const AMBIENTS = [283.15, 318.15] as const;
const PLACES = 13;

function ambientBands(side: Side): Bands | null {
  const others = uncertainOf(side.values).filter(({ path }) => path !== AMBIENT);
  if (others.length === 0 || !side.prepared.ok) return null;
  const field = fieldAt(AMBIENT);
  const ends = field.kind === 'quantity' ? ([field.min, field.max] as const) : AMBIENTS;
  const days = spaced(Math.max(AMBIENTS[0], ends[0]), Math.min(AMBIENTS[1], ends[1]), PLACES);
  const ambient: Uncertain = {
    path: AMBIENT,
    distribution: { kind: 'normal', mean: side.values[AMBIENT]!.si!, sd: 0 },
    ends,
    axis: 0,
  };
  const inner = loopModel(side.values, [...others, ambient], (solve) => {
    const { chargeOut, reservoir } = solve(dutyOf(side));
    return [chargeOut ?? NaN, reservoir];
  });
  const x = new Float64Array(others.length + 1);
  const at = (given: Float64Array): Curves => {
    x.set(given);
    const all = days.map((day) => {
      x[others.length] = day;
      return inner(x) ?? [NaN, NaN];
    });
    return {
      charge: days.map((day, i) => [day, all[i]![0]!] as const),
      reservoir: days.map((day, i) => [day, all[i]![1]!] as const),
    };
  };
  // Days on which the loop as it stands has no answer may have one for most others.
  const everyDay = days.map((day) => [day, 0] as const);
  return bandsRound({ charge: everyDay, reservoir: everyDay }, others, at, { draws: DRAWN_SLOW });
}

export const AMBIENT_DAYS: BandSource = {
  name: 'ambient',
  keyOf: (side) => JSON.stringify([surenessKey(side), dutyOf(side)]),
  bands: ambientBands,
};

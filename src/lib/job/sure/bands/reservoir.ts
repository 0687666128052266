/** Reservoir: rise of one pull over the volume, and the present volume followed in time. */
import { points } from '$lib/solver/loop/history';
import { forcingOf } from '$lib/solver/loop/forcing';
import { thermalMass, totalCapacity } from '$lib/solver/loop/thermalMass';
import { coldState, settledState, warmUp } from '$lib/solver/loop/warmUp';
import { volumeSpan } from '$lib/solver/reservoir/curves';
import { riseInPull } from '$lib/solver/reservoir/pullFormulas';
import { pullStart } from '$lib/solver/reservoir/pullStart';
import { risesOf, runLengths, withVolume } from '$lib/solver/reservoir/volumes';
import { spaced } from '$lib/solver/numerics/spaced';
import type { Side } from '../../evaluate';
import { dutyOf } from '../../shownDuty';
import { curveSet, DRAWN_SLOW, type Curves } from './bandSource';

/** Points a run is followed by, besides its edges; volumes tried. */
const POINTS = 120;
const VOLUMES = 21;
/** Most of the present volume that the sheet follows; its runs are as long as that one needs. */
export const LARGEST = 2;

/** Settled before the pull, and in the duty held from cold; null where there is no balance. */
function settledRound(side: Side) {
  const duty = dutyOf(side);
  const around = duty === 'pull' ? 'cruise' : duty;
  const [before, settled, pull] = [side.steady[around], side.steady[duty], side.steady.pull];
  if (!side.prepared.ok || !before.ok || before.value.status !== 'balanced') return null;
  if (!settled.ok || !pull.ok) return null;
  return { ready: side.prepared.value, before: before.value, settled: settled.value };
}

const pullTimeOf = ({ values }: Side) => values['reservoirQuestion.pullTime']!.si!;

export const RESERVOIR = curveSet({
  name: 'reservoir',
  draws: DRAWN_SLOW,
  follows: pullTimeOf,
  frame(side) {
    const round = settledRound(side);
    if (!round) return null;
    const lengths = runLengths(round.ready, round, LARGEST);
    return {
      back: lengths.back(),
      hold: lengths.hold(),
      volumes: volumeSpan(side.loop.reservoir.liquidVolume),
    };
  },
  curves(side, frame): Curves {
    const round = settledRound(side);
    if (!round || !frame) return {};
    const { ready, before, settled } = round;
    const t = pullTimeOf(side);
    const T = before.liquid.temperature;
    const Q = pullStart(ready, 'pull', T)?.chargeHeat;
    const forcing = forcingOf(ready);
    const { recoveryBand, charge: chargeLimit } = side.limits;
    const follow = (start: Parameters<typeof warmUp>[1]['start'], schedule: Schedule) =>
      warmUp(ready, { recoveryBand, chargeLimit, start, schedule, points: POINTS }, forcing);
    const start = settledState(ready, before.duty, before);
    const pull = follow(start, [
      { duty: 'pull', duration: t },
      { duty: before.duty, duration: frame.back },
    ]);
    const held = follow(coldState(ready), [{ duty: settled.duty, duration: frame.hold }]);
    const present = side.loop.reservoir.liquidVolume;
    const capacityOf = (V: number) => totalCapacity(thermalMass(withVolume(ready, V / present), T));
    return {
      ...(Q !== undefined && {
        rise: spaced(...frame.volumes, VOLUMES).map(
          (V) => [V, riseInPull.value({ Q, t, C: capacityOf(V) })] as const,
        ),
      }),
      pull: risesOf(pull.history, t + frame.back / 2),
      held: points(held.history, 'reservoir'),
    };
  },
});

type Schedule = Parameters<typeof warmUp>[1]['schedule'];

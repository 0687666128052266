/** Plots of the reservoir: what one pull does at every volume, and three volumes on their way. */
import type { Side } from '$lib/job/evaluate';
import type { Chart, Curve, Point, SideName, Spot } from '$lib/kit';
import { reservoirPoints } from '$lib/solver/loop/history';
import { riseAgainstVolume, volumeSpan } from '$lib/solver/reservoir/curves';
import { partWay, pullRise, type VolumeRun } from '$lib/solver/reservoir/volumes';
import { marks, type BothBands } from '../bands/marks';
import { capacityLines } from './capacity';
import { studyOf, VOLUME_FACTORS } from './study';

const VOLUME_WORD = { 0.5: 'half the liquid', 1: 'as it is', 2: 'double' } as const;
/** Each run is named where it has made this share of its way, so that names keep apart. */
const NAMED_AT = { 0.5: 0.8, 1: 0.6, 2: 0.4 } as const;

/** Rise in one pull against volume: closed form as a curve, three runs in time as points. */
export function riseChart(found: Side, candidate: Side | null, bands: BothBands = []): Chart {
  const curves: Curve[] = [];
  const spots: Spot[] = [];
  const dots: { label: string; side: SideName; points: Point[] }[] = [];
  const draw = (side: Side, name: SideName) => {
    const { before, start, runs } = studyOf(side);
    if (!side.prepared.ok || !before || !start) return;
    const t = side.values['reservoirQuestion.pullTime']!.si!;
    const { V_o, C_m, rho_cp } = capacityLines(
      side,
      side.prepared.value,
      before.liquid.temperature,
      '',
    );
    const pull = { V_o, C_m, rho_cp, Q: start.chargeHeat, t };
    const { liquidVolume } = side.loop.reservoir;
    const points = riseAgainstVolume(pull, volumeSpan(liquidVolume));
    curves.push({ id: name, label: 'nothing given off', side: name, points });
    const [present] = riseAgainstVolume(pull, [liquidVolume, liquidVolume], 2);
    spots.push({
      label: name === 'found' ? 'as found' : 'candidate',
      side: name,
      x: present![0],
      y: present![1],
    });
    dots.push({
      label: 'followed in time',
      side: name,
      points: runs.map(({ volume, rise }) => [volume, rise]),
    });
  };
  draw(found, 'found');
  if (candidate) draw(candidate, 'candidate');
  return {
    x: { name: 'Liquid in the reservoir', quantity: 'volume', zero: true },
    y: { name: 'Rise in one pull', quantity: 'temperatureDifference', zero: true },
    curves,
    bands: marks(bands, 'rise'),
    spots,
    dots,
    limits: [
      {
        axis: 'y',
        at: found.values['reservoirQuestion.allowedRise']!.si!,
        label: 'allowed',
      },
    ],
  };
}

/** Half, present and double the liquid from cold, the duty held: three ways, one end. */
export function warmUpChart(found: Side, candidate: Side | null, bands: BothBands = []): Chart {
  return {
    x: { name: 'Time', quantity: 'time', zero: true },
    y: { name: 'Reservoir', quantity: 'temperature' },
    ...threeVolumes(
      found,
      candidate,
      ({ held }) => reservoirPoints(held().history),
      (run, factor) => partWay(run, NAMED_AT[factor]),
    ),
    bands: marks(bands, 'held', { id: '1' }),
  };
}

/** The same three through one pull and back, above where they stood before it. */
export function pullChart(found: Side, candidate: Side | null, bands: BothBands = []): Chart {
  return {
    x: { name: 'Time since the pull began', quantity: 'time', zero: true },
    y: { name: 'Reservoir above its start', quantity: 'temperatureDifference', zero: true },
    ...threeVolumes(found, candidate, pullRise, ({ pull, rise }) => [pull.peakReservoir.t, rise]),
    bands: marks(bands, 'pull', { id: '1' }),
    limits: [
      { axis: 'y', at: found.limits.recoveryBand, label: 'recovered below this', level: 'info' },
    ],
  };
}

/** All volumes of the loop as found; of a candidate only its own. */
function threeVolumes(
  found: Side,
  candidate: Side | null,
  pointsOf: (run: VolumeRun) => readonly Point[],
  named: (run: VolumeRun, factor: (typeof VOLUME_FACTORS)[number]) => Point | null,
): Pick<Chart, 'curves' | 'spots'> {
  const curves: Curve[] = [];
  const spots: Spot[] = [];
  const draw = (side: Side, name: SideName) => {
    for (const run of studyOf(side).runs) {
      const factor = run.factor as (typeof VOLUME_FACTORS)[number];
      if (name === 'candidate' && factor !== 1) continue;
      const points = pointsOf(run);
      // A start beyond freezing or boiling is no way anywhere.
      if (points.length < 2) continue;
      const ours = name === 'found';
      const label = ours ? VOLUME_WORD[factor] : 'candidate';
      // Three found end at one place and are named on the way; the candidate is named at its end.
      const thin = factor !== 1;
      curves.push({ id: `${name}-${factor}`, label, side: name, points, quiet: ours, thin });
      const at = ours && named(run, factor);
      if (at) spots.push({ label, side: name, x: at[0], y: at[1] });
    }
  };
  draw(found, 'found');
  if (candidate) draw(candidate, 'candidate');
  return { curves, spots };
}

/** Lines of the reservoir for several pulls: what it would have to hold, by hand. */
import { aroundPulls } from '$lib/job/invert/invertQuestion';
import { formulaLine, type Line } from '$lib/solver/formula';
import { riseAllowed, volumeByRise } from '$lib/solver/loop/targetFormulas';
import { peakRise } from '$lib/solver/loop/timeFormulas';
import { capacityLines } from '../reservoir/capacity';
import type { Study } from './study';

export function tankLines(study: Study): Line[] {
  const { answer, side } = study;
  const { question, level, present } = answer;
  const trial = study.now();
  if (!trial || level === null || present.tried.y === null) return [];
  if (question.input !== 'part.reservoir' || question.result !== 'pull-end') return [];
  const before = trial.settled(aroundPulls(question)).temperatures.reservoir;
  const now = formulaLine(
    peakRise,
    { T_peak: trial.pulls().end.reservoir, T_before: before },
    {
      id: 'rise-now',
      statement: 'Rise of the reservoir until the last pull ends, now',
      why: 'All that volume can take away.',
      notes: [{ code: 'followed', message: 'Both by the drive followed in time.' }],
    },
  );
  const allowed = formulaLine(
    riseAllowed,
    { dT_0: now.value, T_0: present.tried.y, T_z: level },
    {
      statement: 'Rise that leaves the target, a degree of liquid for a degree of charge',
      why: 'Not above zero: even a reservoir that does not warm at all is not enough.',
    },
  );
  if (!(allowed.value > LEAST_RISE && now.value > LEAST_RISE)) return [now, allowed];
  const holds = capacityLines(
    side,
    trial.prepared(),
    before,
    'at the temperature of the reservoir before the pulls',
  );
  return [
    now,
    allowed,
    ...holds.lines,
    formulaLine(
      volumeByRise,
      {
        V_t: present.x,
        dT_0: now.value,
        dT_z: allowed.value,
        C: holds.C,
        rho_cp: holds.rho_cp,
      },
      {
        statement: 'Liquid the reservoir would need by hand',
        why: 'As if all the loop warmed alike. The drive followed in time knows that the liquid in the cores warms first, so its value may lie well off this one.',
      },
    ),
  ];
}

/** Rise too small to divide by, K. */
const LEAST_RISE = 0.3;

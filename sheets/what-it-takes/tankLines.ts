/** Lines of the reservoir for several pulls: what it would have to hold, by hand. */
import { aroundPulls } from '$lib/job/invertQuestion';
import { chargeHeat } from '$lib/solver/charge/coolingFormulas';
import { formulaLine, type Line } from '$lib/solver/formula';
import { chargeFollows, pullsTogether, riseAllowed } from '$lib/solver/loop/targetFormulas';
import { volumeForRise } from '$lib/solver/reservoir/pullFormulas';
import { pullStart } from '$lib/solver/reservoir/pullStart';
import { capacityLines } from '../reservoir/capacity';
import type { Study } from './study';

export function tankLines(study: Study): Line[] {
  const { answer, side } = study;
  const { question, level } = answer;
  const trial = study.now();
  if (!trial || level === null) return [];
  if (question.input !== 'part.reservoir' || question.result !== 'pull-end') return [];
  const prepared = trial.prepared();
  const before = trial.settled(aroundPulls(question));
  const T = before.temperatures.reservoir;
  const start = pullStart(prepared, 'pull', before.liquid.temperature);
  const T_1 = trial.pulls().history.chargeOut[0]!;
  if (!start?.cooler || !(start.chargeHeat > 0) || !Number.isFinite(T_1)) return [];
  const { cooler, liquidIn } = start;
  const time = formulaLine(
    pullsTogether,
    { N: question.pulls, t_p: question.pullTime },
    { statement: 'Time at full power over all pulls' },
  );
  const heat = formulaLine(
    chargeHeat,
    { eps: cooler.effectiveness, C_min: cooler.C_min, T_2: cooler.airIn, T_l: liquidIn },
    {
      id: 'pull-heat',
      statement: 'Heat from the charge air as the first pull begins',
      notes: [
        { code: 'pull-start', message: 'Effectiveness, capacity rate and temperatures: sheet 5.' },
      ],
    },
  );
  const follows = formulaLine(
    chargeFollows,
    { T_2: cooler.airIn, T_1, T_l: liquidIn },
    { statement: 'How far the charge follows the liquid' },
  );
  const rise = formulaLine(
    riseAllowed,
    { T_z: level, T_1, eps: follows.value },
    {
      statement: 'Rise of the liquid that lifts the charge from its first moment to the target',
      why: 'Not above zero: the charge is past the target before the liquid has gained anything, and no volume helps.',
    },
  );
  if (!(rise.value > LEAST_RISE)) return [time, heat, follows, rise];
  const holds = capacityLines(side, prepared, T, 'in the reservoir before the pulls');
  return [
    time,
    heat,
    follows,
    rise,
    ...holds.lines,
    formulaLine(
      volumeForRise,
      {
        Q: heat.value,
        t: time.value,
        dT: rise.value,
        C_m: holds.C_m,
        rho_cp: holds.rho_cp,
        V_o: holds.V_o,
      },
      {
        statement: 'Liquid the reservoir would need by hand, nothing given off between the pulls',
        why: 'On the safe side: what the front exchanger takes out in the rests counts in the value found. Negative: metal and cores hold it by themselves.',
      },
    ),
  ];
}

/** Rise too small to divide by, K. */
const LEAST_RISE = 0.5;

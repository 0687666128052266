/** Lines of a core: the conductance behind a rated heat, now and found. */
import { exchangerArrangement } from '$lib/solver/cores/arrangement';
import { ratedConductance } from '$lib/solver/cores/effectivenessFormulas';
import { effectivenessFromHeat } from '$lib/solver/cores/formulas';
import { formulaLine, type FormulaLine, type Line } from '$lib/solver/formula';
import { conductanceByHeight, overPresent } from '$lib/solver/loop/targetFormulas';
import type { Trial } from '$lib/job/invert/invertResults';
import type { Study } from './study';

type CoreName = 'chargeCooler' | 'frontExchanger';

/** Beyond this the last digits of a rated heat decide all of UA: no number for a calculator. */
const MOST_UNITS = 5;

export function coreLines(study: Study): Line[] {
  const { id } = study.input;
  const [now, found] = [study.now(), study.told()];
  if (!now || !found) return [];
  if (id === 'part.frontSameBuild') return byHeight(study, now);
  const core = /^(chargeCooler|frontExchanger)\.rating\.heat$/.exec(id)?.[1] as
    CoreName | undefined;
  if (!core) return [];
  const today = conductanceLines(core, now, 'now');
  const then = conductanceLines(core, found, study.answer.value === null ? 'best' : 'found');
  const [UA_0, UA] = [today.at(-1), then.at(-1)];
  return UA_0 && UA
    ? [
        ...today,
        ...then,
        formulaLine(
          overPresent('conductance'),
          { x: UA.value, x_0: UA_0.value },
          {
            id: 'ua-ratio',
            statement: 'Conductance as a multiple of the present core',
            why: 'Rated heat flattens out as a core grows; its conductance tells how much more core it is.',
          },
        ),
      ]
    : [...today, ...then];
}

const WHICH = {
  now: 'the core as it is',
  found: 'the core found',
  best: 'the largest core that rated heat can tell of',
} as const;

/** Effectiveness and conductance at the rating point. */
function conductanceLines(core: CoreName, trial: Trial, which: keyof typeof WHICH): FormulaLine[] {
  const { loop, chargeCore, frontCore } = trial.prepared();
  const { rated } = core === 'chargeCooler' ? chargeCore : frontCore;
  const { rating, arrangement } = loop[core];
  if (!(rated.NTU < MOST_UNITS)) return [];
  const C_min = Math.min(rated.C_air, rated.C_liquid);
  const C_max = Math.max(rated.C_air, rated.C_liquid);
  const eps = formulaLine(
    effectivenessFromHeat,
    {
      Q: rating.heat,
      C_min,
      T_hot: Math.max(rating.airInlet, rating.liquidInlet),
      T_cold: Math.min(rating.airInlet, rating.liquidInlet),
    },
    {
      id: `effectiveness-${which}`,
      statement: `Effectiveness at the rating, ${WHICH[which]}`,
      why: 'A rated heat near what the streams could carry at most asks for a far larger core.',
    },
  );
  const UA = formulaLine(
    ratedConductance(exchangerArrangement(arrangement, rated.C_air <= rated.C_liquid)),
    { eps: eps.value, C_min, C_max },
    {
      id: `ua-${which}`,
      statement: `Conductance behind it, ${WHICH[which]}`,
      why: 'Heat at a rating is what is sold; this is what is bought.',
    },
  );
  return [eps, UA];
}

/** The same build: conductance goes with the height. */
function byHeight({ answer, side }: Study, now: Trial): Line[] {
  if (!answer.at || side.values['frontExchanger.by']!.choice === 'measures') return [];
  return [
    formulaLine(
      conductanceByHeight,
      { UA_0: now.prepared().frontCore.ratedUA, h: answer.at.x, h_0: answer.present.x },
      {
        statement: 'Conductance at its own rating, a core of the same build that high',
        why: 'Rated heat and rated flows go with the height, so the core of another height is the same core, more of it.',
        notes: [{ code: 'ua', message: 'Conductance of the present core: sheet 4.' }],
      },
    ),
  ];
}

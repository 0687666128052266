/** Lines from the runs to K, from K to limits, and what the meter costs. */
import { formulaLine, type FormulaLine, type Line } from '$lib/solver/formula';
import {
  birgeRatio,
  flowAtFrequency,
  flowStepFormula,
  flowTaken,
  linearAboveFormula,
  meterLossFormula,
  pulseFrequency,
  readableFrom,
  readableFromSlip,
  readableTo,
  RUN_SHARE,
  runFlow,
  runK,
  runsFormulas,
  straightFormula,
  wholePlusMinus,
} from '$lib/solver/instruments/meter/formulas';
import type { KFactor } from '$lib/solver/instruments/meter/kFactor';
import { STRAIGHT } from '$lib/solver/instruments/meter/meterInLoop';
import type { Study } from './study';

export const lines = (study: Study): Line[] => [
  ...(study.test?.ok ? testLines(study, study.test.value) : []),
  ...limitLines(study),
  ...placeLines(study),
];

function testLines({ meter }: Study, { runs, chiSquare, freedom, widened }: KFactor): Line[] {
  const { errors, counting } = meter;
  const each = runs.flatMap(({ run }, i): FormulaLine[] => {
    const [V, t, N] = [run.volume, run.time, run.pulses];
    const name = `Run ${i + 1}`;
    return [
      formulaLine(
        runFlow,
        { V, t },
        {
          id: `flow-${i + 1}`,
          statement: `${name}: mean flow into the bucket`,
          why: 'A K-factor counts only for the flows it was found at.',
        },
      ),
      formulaLine(
        runK,
        { N, V },
        {
          id: `k-${i + 1}`,
          statement: `${name}: pulses per volume`,
          why:
            i === 0
              ? 'The watch is not in it: a count over a volume needs no time, unless the count itself was a frequency times the watch.'
              : 'Runs that agree make the factor sure; runs that drift with the flow say that one factor will not do.',
        },
      ),
      formulaLine(
        RUN_SHARE[counting],
        { u_N: errors.pulses, N, u_V: errors.volume, V, u_t: errors.time, t },
        {
          id: `share-${i + 1}`,
          statement: `${name}: ± of K, from what is fresh in each run`,
          why: 'It sets how much this run counts in the mean: a small bucket with a blurred mark counts little.',
        },
      ),
    ];
  });
  const values = Object.fromEntries(
    runs.flatMap((r, i) => [
      [`K_${i + 1}`, r.K],
      [`s_${i + 1}`, r.share],
    ]),
  );
  const formulas = runsFormulas(runs.length);
  const mean = formulaLine(formulas.mean, values, {
    id: 'mean',
    statement: 'K-factor from all runs, each weighted by its ±',
    why: 'A big bucket counts for more than a small one, as it should.',
  });
  const scatter =
    freedom > 0
      ? [
          formulaLine(
            formulas.chiSquare,
            { ...values, K: mean.value },
            {
              id: 'scatter',
              statement: 'Scatter of the runs against their ±, a ± being two standard deviations',
              why: 'About as many as runs less one is honest; far more says that something besides the stated errors is at work.',
            },
          ),
          formulaLine(
            birgeRatio,
            { chi: chiSquare, nu: freedom },
            {
              id: 'widened',
              statement: 'By how much the ± is widened for it',
              why: 'Runs that part by more than they should are less sure than they look.',
            },
          ),
        ]
      : [];
  const fromRuns = formulaLine(
    formulas.fromRuns,
    { ...values, K: mean.value, w: widened },
    {
      id: 'from-runs',
      statement: '± of K from the runs',
      why: 'More runs make it smaller, but only this part of the doubt.',
    },
  );
  const whole = formulaLine(
    wholePlusMinus,
    { u_r: fromRuns.value, K: mean.value, b: errors.bucket },
    {
      id: 'k-plus-minus',
      statement: '± of K, the bucket’s own marks with it',
      why: 'The same bucket errs the same way each time: more runs do not help against it, a scale does.',
    },
  );
  return [...each, mean, ...scatter, fromRuns, whole];
}

function limitLines({ meter, K, slip, above, inLoop }: Study): Line[] {
  const { input, gate, errorAllowed } = meter;
  const from = {
    id: 'range-from',
    statement: 'Flow from which the reading may be believed',
    why: 'The worst of meter, input and slip counts: below it the loop may flow more than it shows.',
  };
  const least = { Q_m: meter.lowest, f: input.lowest, K };
  return [
    ...(slip && slip.slip > 0
      ? [
          formulaLine(
            linearAboveFormula,
            { Q_0: slip.slip, x: errorAllowed },
            {
              id: 'linear-above',
              statement: 'Flow above which one K-factor holds within the error allowed',
              why: 'The bearing holds a turbine back by about the same flow always: much at little flow, little at much.',
            },
          ),
        ]
      : []),
    ...(inLoop
      ? [
          formulaLine(
            pulseFrequency,
            { K, Q: inLoop.with },
            {
              id: 'frequency',
              statement: 'Pulses at the flow of the loop',
              why: 'A multimeter on the signal wire should read this before any reader is believed.',
            },
          ),
        ]
      : []),
    formulaLine(
      pulseFrequency,
      { K, Q: meter.highest },
      {
        id: 'frequency-highest',
        statement: 'Pulses at the highest flow of the meter',
        why: 'The input must follow this far, or the best flows read too low.',
      },
    ),
    formulaLine(
      flowAtFrequency,
      { f: input.highest, K },
      {
        id: 'input-highest',
        statement: 'Flow at which the input no longer follows',
        why: 'Above it pulses are lost, and the reading falls as the flow rises.',
      },
    ),
    formulaLine(
      flowAtFrequency,
      { f: input.lowest, K },
      {
        id: 'input-lowest',
        statement: 'Flow below which the input shows nothing',
        why: 'A loop that shows no flow may only be slow.',
      },
    ),
    above === null
      ? formulaLine(readableFrom, least, from)
      : formulaLine(readableFromSlip, { ...least, Q_s: above }, from),
    formulaLine(
      readableTo,
      { Q_h: meter.highest, f_h: input.highest, K },
      {
        id: 'range-to',
        statement: 'Flow up to which it may be believed',
        why: 'A faster input or a larger meter moves it; the loop’s flow should lie well inside.',
      },
    ),
    formulaLine(
      flowStepFormula,
      { K, t_g: gate },
      {
        id: 'step',
        statement: 'One pulse more or less in the gate',
        why: 'The reading jumps by this, however steady the flow.',
      },
    ),
  ];
}

function placeLines({ meter, inLoop }: Study): Line[] {
  const straight = (n: number, id: string, where: string) =>
    formulaLine(
      straightFormula,
      { n, d: meter.bore },
      {
        id,
        statement: `Straight hose wanted ${where} the meter`,
        why: 'Out of a bend the liquid spins, and a turbine counts the spin.',
      },
    );
  const straights = [
    straight(STRAIGHT.before, 'straight-before', 'before'),
    straight(STRAIGHT.after, 'straight-after', 'after'),
  ];
  if (!inLoop) return straights;
  const loss = formulaLine(
    meterLossFormula,
    {
      dp_r: meter.loss.ratedLoss,
      Q: inLoop.with,
      Q_r: meter.loss.ratedFlow,
      rho: inLoop.density,
    },
    {
      id: 'loss',
      statement: 'Pressure lost in the meter at the flow it leaves',
      why: 'Counted with the square of the flow from one point of its maker; with cold thick glycol it is more.',
    },
  );
  const taken = meter.among
    ? []
    : [
        formulaLine(
          flowTaken,
          { Q: inLoop.without, Q_m: inLoop.with },
          {
            id: 'flow-taken',
            statement: 'Flow the meter costs the loop',
            why: 'The loop is solved again with the meter in its run; a meter left in costs it for good.',
          },
        ),
      ];
  return [loss, ...taken, ...straights];
}

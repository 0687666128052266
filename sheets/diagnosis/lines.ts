/** Lines: one reading beside its prediction, Bayes for the leading cause, the exchanger as read. */
import { liquidCapacityRate } from '$lib/solver/cores/formulas';
import { CHANNELS } from '$lib/solver/diagnosis/channels';
import {
  formulasOf,
  leadingProbability,
  measuredConductance,
  measuredDrop,
  measuredEffectiveness,
  measuredHeat,
  missWeight,
} from '$lib/solver/diagnosis/formulas';
import type { Fitted } from '$lib/solver/diagnosis/likelihood';
import { bayesTerms, type Cause } from '$lib/solver/diagnosis/rank';
import { plusMinusRead } from '$lib/solver/diagnosis/severity';
import { formulaLine, type Line } from '$lib/solver/formula';
import type { Study } from './study';
import { causeName, PLACE_WORDS, readingName } from './words';

/** The reading that the leading known cause misses most: its weight under the two leading causes. */
export function readingLines(study: Study): Line[] {
  const { worst, causes } = study.diagnosis;
  if (!worst) return [];
  const formulas = formulasOf(worst.reading.channel);
  const instrument = formulaLine(
    formulas.instrument,
    { pm: plusMinusRead(worst.reading) },
    {
      id: 'reading-instrument',
      statement: `${readingName(worst.reading)}: one standard deviation of the instrument`,
      why: 'A ± is read as two standard deviations, which holds it about 95 times in 100.',
    },
  );
  const [first, second] = causes.filter((c) => c.fault);
  const at = (cause: Cause | undefined) => cause?.fit.find((f) => f.reading === worst.reading);
  const other = at(second);
  return [
    instrument,
    ...underCause(study, causeName(first!), 'first', worst, instrument.value),
    ...(second && other && Number.isFinite(other.z)
      ? underCause(study, causeName(second), 'second', other, instrument.value)
      : []),
  ];
}

function underCause(
  { conditions }: Study,
  cause: string,
  which: 'first' | 'second',
  { reading, predicted, ambient }: Fitted,
  s_i: number,
): Line[] {
  const { model, modelShare, thermal } = CHANNELS[reading.channel];
  const formulas = formulasOf(reading.channel);
  const where = readingName(reading);
  const errors: Readonly<Record<string, number>> =
    thermal && reading.place !== 'once'
      ? { T_a: ambient, s_a: conditions.ambientSigma }
      : { c: modelShare };
  const together = formulaLine(
    formulas.together,
    { s_i, s_m: model, y_p: predicted, ...errors },
    {
      id: `reading-sigma-${which}`,
      statement: `${where}: errors of reading and model together, with “${cause}”`,
      why: 'The loop as described is not exact either, and a model held for exact would accuse healthy parts.',
    },
  );
  const miss = formulaLine(
    formulas.miss,
    { y: reading.value, y_p: predicted, s: together.value },
    {
      id: `reading-miss-${which}`,
      statement: `${where}: how far it lies from what “${cause}” predicts`,
      why:
        which === 'first'
          ? 'Of all readings this is the one that the likeliest known cause misses most; beyond 3 it does not fit.'
          : 'The same reading under the second likeliest cause: where both fit, it cannot tell them apart.',
    },
  );
  const weight = formulaLine(
    missWeight,
    { z: miss.value },
    {
      id: `reading-weight-${which}`,
      statement: `What this reading alone leaves of the likelihood of “${cause}”`,
      why: 'Temperatures share errors of model and ambient, so the whole is more than the product of such weights.',
    },
  );
  return [together, miss, weight];
}

/** Bayes, from weights and likelihoods to the leading cause's probability. */
export function bayesLines({ diagnosis }: Study): Line[] {
  const terms = bayesTerms(diagnosis);
  if (!terms) return [];
  const [first, second, third] = diagnosis.causes;
  return [
    formulaLine(leadingProbability, terms, {
      statement: `Probability of “${causeName(first!)}”, against “${causeName(second!)}”, “${causeName(third!)}” and the rest`,
      why: 'Each likelihood is the mean over that fault’s severities, so a fault that could have shown anything gains nothing by it.',
    }),
  ];
}

/** The exchanger by its own readings, without any model of it. */
export function exchangerLines({ exchanger }: Study): Line[] {
  if (!exchanger) return [];
  const { liquidIn: T_in, liquidOut, ambient: T_a, flow, density, specificHeat, duty } = exchanger;
  const drop = formulaLine(
    measuredDrop,
    { T_in, T_out: liquidOut },
    {
      statement: `Drop of the liquid across the front exchanger, ${PLACE_WORDS[duty]}`,
      why: 'Hot tank and large drop: too little flow. Hot tank and small drop: too little air or face.',
    },
  );
  const effectiveness = formulaLine(
    measuredEffectiveness,
    { dT: drop.value, T_in, T_a },
    {
      statement: 'Share of the possible drop that the liquid makes',
      why: 'If it is that of the core as described, the core is only small, not faulty.',
    },
  );
  if (flow === undefined || flow === 0) return [drop, effectiveness];
  const rate = formulaLine(
    liquidCapacityRate,
    { rho: density, V: flow, c_p: specificHeat },
    {
      statement: 'Heat the liquid carries for each degree',
      why: 'Density and specific heat are the coolant’s at the mean of in and out; those of water would overstate it.',
    },
  );
  const heat = formulaLine(
    measuredHeat,
    { C_l: rate.value, dT: drop.value },
    {
      statement: 'Heat given off by the front exchanger, as read',
      why: 'One degree of error in either reading is a large part of a small drop.',
    },
  );
  const conductance = formulaLine(
    measuredConductance,
    { Q_f: heat.value, T_in, T_a },
    {
      statement: 'Heat per degree above ambient, as read',
      why: 'It compares the exchanger with its own past and with the sheet of exchangers.',
    },
  );
  return [drop, effectiveness, rate, heat, conductance];
}

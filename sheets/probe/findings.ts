/** What the two baths mean, in plain words. */
import { pullUpBehind, type FittedHypothesis } from '$lib/solver/instruments/probe/hypotheses';
import { probeOff } from '$lib/solver/instruments/probe/verdict';
import { q, say, type Finding } from '../types';
import { alikeFinding, endFinding } from './endFindings';
import { coarseness, lotFindings } from './otherFindings';
import type { Study } from './study';
import { trimFindings } from './trimFindings';
import { HYPOTHESIS, hypothesisNumber } from './words';

const CURVE_ASSUMED: Finding = {
  code: 'curve-assumed',
  level: 'watch',
  sentence: say`The probe’s curve is not yours: an invented one stands in. Where the reader’s table is for this probe the bias found hardly depends on it, but volts, counts and the ends of the range do. Enter its points.`,
};

export const findings = (study: Study): Finding[] => [
  ...bathFindings(study),
  ...(study.curveAssumed ? [CURVE_ASSUMED] : []),
  ...probeItself(study),
  ...trimFindings(study),
  ...coarseness(study),
  ...lotFindings(study),
];

function bathFindings(study: Study): Finding[] {
  const { job, verdict } = study;
  if (!verdict) return [wanted(study)];
  const { explaining } = verdict;
  if (verdict.alike) return [alikeFinding(study, verdict, verdict.alike)];
  const [first, ...others] = explaining;
  if (!first) return unexplained(study);
  if (first.id === 'as-described') {
    return [
      {
        code: 'as-described',
        level: 'good',
        sentence: say`Both readings lie within their ±: ${q(job.ice!.shown, 'temperature')} in ice and ${q(job.boil!.shown, 'temperature')} where water boils at ${q(job.boilPoint, 'temperature')}. This probe can be trusted.`,
      },
    ];
  }
  return [leadingFinding(study, first), ...alternatives(study, first, others)];
}

function wanted({ job: { ice, boil, boilPoint } }: Study): Finding {
  const missing =
    ice === null && boil === null ? 'both baths' : ice === null ? 'the ice' : 'the boil';
  return {
    code: 'bath-missing',
    level: ice === null && boil === null ? 'info' : 'watch',
    sentence: say`Enter what the reader shows in ${missing === 'both baths' ? 'ice water and in boiling water' : missing === 'the ice' ? 'ice water too' : 'boiling water too'}. Two points tell what is wrong, one alone would fit anything. Here and today water boils at ${q(boilPoint, 'temperature')}.`,
  };
}

function leadingFinding({ job }: Study, first: FittedHypothesis): Finding {
  const fitted = job.setup.divider.bias;
  const number = hypothesisNumber(first, job.readerBiasKnown);
  const words: Record<Exclude<FittedHypothesis['id'], 'as-described'>, Finding['sentence']> = {
    bias: job.readerBiasKnown
      ? say`By both baths the circuit works like a bias of ${q(first.value!, 'resistance')} ± ${q(first.plusMinus, 'resistance')} where ${q(fitted, 'resistance')} was fitted.`
      : say`By both baths the reader’s table was made for a bias of ${q(first.value!, 'resistance')} ± ${q(first.plusMinus, 'resistance')}; ${q(fitted, 'resistance')} is fitted.`,
    'pull-up': say`A hidden pull-up inside the reader, beside your bias resistor, explains both readings.`,
    supply: say`The divider is not fed from what the reader measures against: a supply that is off explains both readings. Measure it at the bias resistor, the probe plugged in.`,
    pin: say`Resistance in the probe’s lead explains both readings: little in the ice, much at the boil. Clean and crimp the pins and the ground before anything is trimmed.`,
    leak: say`A leak across the probe explains both readings: much in the ice, little at the boil. Look for a wet plug, or a second reader on the same probe.`,
  };
  return {
    code: `explains-${first.id}`,
    level: 'act',
    sentence: [
      ...words[first.id as keyof typeof words],
      ...(first.id === 'bias' ? [] : [...say` By both baths, `, ...number, '.']),
    ],
  };
}

function alternatives(
  { job }: Study,
  first: FittedHypothesis,
  others: readonly FittedHypothesis[],
): Finding[] {
  const found: Finding[] = [];
  if (others.length > 0) {
    found.push({
      code: 'not-told-apart',
      level: 'watch',
      sentence: [
        ...say`Within the ± of the readings these explain both baths as well: `,
        ...others.flatMap((other, i) => [
          `${i > 0 ? '; ' : ''}${HYPOTHESIS[other.id]} (`,
          ...hypothesisNumber(other, job.readerBiasKnown),
          ')',
        ]),
        '. A finer reading, or ohms measured in the baths, would tell.',
      ],
    });
  }
  if (first.id === 'bias' && !job.readerBiasKnown) {
    const fitted = job.setup.divider.bias;
    // Seen the other way: the table made for the fitted bias, the circuit working with another.
    const working = first.setup.divider.bias;
    const pullUp = pullUpBehind(fitted, (fitted * working) / first.value!);
    found.push({
      code: 'bias-or-probe',
      level: 'info',
      sentence: pullUp
        ? say`It would look the same if the table were made for your bias and a pull-up of ${q(pullUp, 'resistance')} sat hidden in the reader, or if the probe had that much more or fewer ohms everywhere. An ohm-meter on the probe in the ice tells the last one.`
        : say`It would look the same if the probe had that much fewer or more ohms everywhere. An ohm-meter on the probe in the ice tells.`,
    });
  }
  return found;
}

function unexplained(study: Study): Finding[] {
  const { job, verdict, setup } = study;
  const { twoThings, otherTableBeta } = verdict!;
  const end = endFinding(study);
  if (end) return [end];
  if (setup && twoThings) {
    return [
      {
        code: 'two-things',
        level: 'act',
        sentence: say`No one thing explains both readings; a bias that does not match (${q(job.readerBiasKnown ? twoThings.bias : twoThings.assumed, 'resistance')}) together with ${q(twoThings.series, 'resistance')} in the probe’s lead would. Two unknowns always fit two points: mend the pin, then read both baths again.`,
      },
    ];
  }
  return [
    {
      code: 'unexplained',
      level: 'act',
      sentence: otherTableBeta
        ? say`No resistor explains both readings: ${q(job.ice!.shown, 'temperature')} in ice and ${q(job.boil!.shown, 'temperature')} at the boil. They are what the table of another probe would show, one with a Beta of ${q(otherTableBeta, 'beta')}; or this probe is bad. Do not trim: measure its ohms in both baths.`
        : say`No resistor explains both readings: ${q(job.ice!.shown, 'temperature')} in ice and ${q(job.boil!.shown, 'temperature')} at the boil. Do not trim: look at the probe, its plug and which bath was which.`,
    },
  ];
}

/** The probe by its own ohms, where someone measured them. */
function probeItself({ job }: Study): Finding[] {
  const { setup, tolerances } = job;
  return (['ice', 'boil'] as const).flatMap((bath): Finding[] => {
    const reading = job[bath];
    const off = reading && probeOff(setup, reading);
    if (off === null) return [];
    const bad = Math.abs(off) > tolerances.probe;
    return [
      {
        code: `probe-${bath}`,
        level: bad ? 'act' : 'good',
        sentence: say`The probe itself has ${q(reading!.ohms!, 'resistance')} ${bath === 'ice' ? 'in ice' : 'at the boil'}, ${q(Math.abs(off), 'percent')} ${off < 0 ? 'below' : 'above'} its curve: ${bad ? 'more than its tolerance, so the probe or its curve is wrong' : 'within its tolerance, so the error lies in bias, wiring or reader'}.`,
      },
    ];
  });
}

/** What the bucket test and the place of the meter mean, in plain words. */
import { readingFactor, type KFactor } from '$lib/solver/instruments/meter/kFactor';
import { inputState, type RangeLimit, type SlipLine } from '$lib/solver/instruments/meter/lowFlow';
import { flowTaken, pulseFrequency } from '$lib/solver/instruments/meter/formulas';
import { q, say, type Finding } from '../types';
import { placeFindings } from './placeFindings';
import { stands, type Study } from './study';

/** A ± wider than this share hardly improves on the maker's figure (common practice). */
const WIDE = 0.03;
/** Flow lost to the meter that one would notice, as a share (common practice). */
const NOTICED = 0.03;

export const findings = (study: Study): Finding[] => [
  ...testFindings(study),
  ...lowFindings(study),
  ...inputFindings(study),
  ...rangeFindings(study),
  ...costFindings(study),
  ...placeFindings(study),
];

function testFindings({ meter, test, slip }: Study): Finding[] {
  if (!test) {
    return [
      {
        code: 'no-runs',
        level: 'info',
        sentence: say`Enter the bucket’s runs: volume, seconds and pulses of each. Three at different flows tell K, its ± and where it stops holding. Until then the K-factor set in the reader, ${q(meter.statedK, 'pulsesPerVolume')}, stands in.`,
      },
    ];
  }
  if (!test.ok) {
    return [{ code: test.problem.code, level: 'act', sentence: say`${test.problem.message}` }];
  }
  return [...kFinding(meter.statedK, test.value), ...agreement(test.value, slip)];
}

function kFinding(statedK: number, { K, plusMinus }: KFactor): Finding[] {
  const factor = readingFactor(K, statedK);
  const off = Math.abs(factor - 1);
  const settled = off <= plusMinus / K;
  return [
    settled
      ? {
          code: 'k-confirmed',
          level: 'good',
          sentence: say`The bucket gives ${q(K, 'pulsesPerVolume')} ± ${q(plusMinus, 'pulsesPerVolume')}, which holds the ${q(statedK, 'pulsesPerVolume')} set in the reader: leave it.`,
        }
      : {
          code: 'k-differs',
          level: 'act',
          sentence: say`The bucket gives ${q(K, 'pulsesPerVolume')} ± ${q(plusMinus, 'pulsesPerVolume')}; the reader divides by ${q(statedK, 'pulsesPerVolume')} and shows ${q(factor, 'percent')} of the true flow. Set the bucket’s figure.`,
        },
  ];
}

function agreement(
  { runs, agree, chance, plusMinus, K, widened }: KFactor,
  slip: SlipLine | null,
): Finding[] {
  if (chance === null) {
    return [
      {
        code: 'one-run',
        level: 'watch',
        sentence: say`One run says nothing of how well it would repeat. Make three.`,
      },
    ];
  }
  if (!agree && stands(slip)) {
    return [
      {
        code: 'runs-slip',
        level: 'watch',
        sentence: say`The ${q(runs.length, 'count')} runs do not give one K: it falls towards low flow. The mean is right for flows like theirs, and its ± was widened ${q(widened, 'ratio')} times.`,
      },
    ];
  }
  if (!agree) {
    return [
      {
        code: 'runs-disagree',
        level: 'act',
        sentence: say`The ${q(runs.length, 'count')} runs scatter more than their ± allows: chance alone would do so ${q(chance, 'percent')} of the time. Bubbles, a meter that slips at low flow or a misread bucket; the ± was widened ${q(widened, 'ratio')} times for it.`,
      },
    ];
  }
  return plusMinus > WIDE * K
    ? [
        {
          code: 'wide',
          level: 'watch',
          sentence: say`The runs agree, but the ± is wide. A larger bucket, or weighing it, does more than further runs.`,
        },
      ]
    : [
        {
          code: 'runs-agree',
          level: 'good',
          sentence: say`The ${q(runs.length, 'count')} runs agree within their ±.`,
        },
      ];
}

function lowFindings({ meter, slip, above, inLoop }: Study): Finding[] {
  const found: Finding[] = [];
  if (stands(slip) && above !== null) {
    found.push({
      code: 'slips',
      level: inLoop && inLoop.with < above ? 'act' : 'info',
      sentence: say`At low flow the meter lags by ${q(slip.slip, 'volumeFlow')}: below ${q(above, 'volumeFlow')} it reads more than ${q(meter.errorAllowed, 'percent')} low.`,
    });
  } else if (slip) {
    found.push({
      code: 'no-slip-seen',
      level: 'good',
      sentence: say`Over the flows of the runs no slip stands out from the ±: one K-factor will do there.`,
    });
  }
  if (!inLoop) return found;
  if (inLoop.with < meter.lowest) {
    found.push({
      code: 'below-meter',
      level: 'act',
      sentence: say`The loop flows ${q(inLoop.with, 'volumeFlow')}, below the ${q(meter.lowest, 'volumeFlow')} for which the meter is made. Take a smaller one.`,
    });
  } else if (inLoop.with > meter.highest) {
    found.push({
      code: 'above-meter',
      level: 'act',
      sentence: say`The loop flows ${q(inLoop.with, 'volumeFlow')}, above the ${q(meter.highest, 'volumeFlow')} for which the meter is made. Take a larger one.`,
    });
  }
  return found;
}

function inputFindings({ meter, K, inLoop }: Study): Finding[] {
  const at = inLoop?.with ?? meter.highest;
  const frequency = pulseFrequency.value({ K, Q: at });
  const state = inputState(frequency, meter.input);
  const words = say`At ${q(at, 'volumeFlow')} the meter gives ${q(frequency, 'frequency')}`;
  if (state === 'counts') {
    return [
      {
        code: 'input-counts',
        level: 'good',
        sentence: [...words, '; the input follows that.'],
      },
    ];
  }
  return [
    {
      code: 'input-misses',
      level: 'act',
      sentence: [
        ...words,
        ...(state === 'too-fast'
          ? say`, more than the ${q(meter.input.highest, 'frequency')} the input counts: it would lose pulses and read low.`
          : say`, less than the ${q(meter.input.lowest, 'frequency')} the input needs: it would show no flow.`),
      ],
    },
  ];
}

const BY: Readonly<Record<RangeLimit, string>> = {
  slip: 'the slip',
  maker: 'the meter’s maker',
  input: 'the pulse input',
};

function rangeFindings({ range: { from, to } }: Study): Finding[] {
  if (from.flow < to.flow) {
    return [
      {
        code: 'range',
        level: 'info',
        sentence: say`Believe its reading from ${q(from.flow, 'volumeFlow')} (${BY[from.by]} sets that) to ${q(to.flow, 'volumeFlow')} (${BY[to.by]} does).`,
      },
    ];
  }
  return [
    {
      code: 'no-range',
      level: 'act',
      sentence: say`There is no flow at which meter and input both tell the truth: ${BY[from.by]} wants at least ${q(from.flow, 'volumeFlow')}, ${BY[to.by]} allows ${q(to.flow, 'volumeFlow')} at most.`,
    },
  ];
}

function costFindings({ meter, inLoop }: Study): Finding[] {
  if (!inLoop || meter.among) return [];
  const taken = flowTaken.value({ Q: inLoop.without, Q_m: inLoop.with });
  const much = taken > NOTICED * inLoop.without;
  return [
    {
      code: 'cost',
      level: much ? 'watch' : 'info',
      sentence: much
        ? meter.fitted
          ? say`The meter takes ${q(inLoop.loss, 'pressureDrop')} and ${q(taken, 'volumeFlow')} of the loop’s flow, on every sheet. Measured with, it may come out again.`
          : say`Fitted, the meter takes ${q(inLoop.loss, 'pressureDrop')} and ${q(taken, 'volumeFlow')} of the loop’s flow. Say above that it is fitted, and every sheet counts with it.`
        : say`The meter takes ${q(inLoop.loss, 'pressureDrop')} and ${q(taken, 'volumeFlow')} of the loop’s flow: it may stay in.`,
    },
  ];
}

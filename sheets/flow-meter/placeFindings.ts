/** Where a meter may sit: suction, straight hose, heat. */
import { STRAIGHT, straightLength } from '$lib/solver/instruments/meter/meterInLoop';
import { q, say, type Finding } from '../types';
import type { Study } from './study';

export const placeFindings = (study: Study): Finding[] => [
  runFinding(study),
  ...straightFinding(study),
  ...heatFinding(study),
];

function runFinding({ meter: { run }, frontFirst }: Study): Finding {
  const place = (level: Finding['level'], sentence: Finding['sentence']): Finding => ({
    code: 'place',
    level,
    sentence,
  });
  switch (run) {
    case 'suction':
      return place(
        'act',
        say`Between reservoir and pump the meter’s loss comes off the suction head, and bubbles pass it as flow. Move it behind the pump.`,
      );
    case 'transfer':
      return frontFirst
        ? place(
            'good',
            say`From the front exchanger to the charge cooler runs the coolest liquid, under the pump’s pressure: a good place. Mount it upright with the flow going up, so that bubbles leave it.`,
          )
        : place(
            'watch',
            say`From the charge cooler to the front exchanger runs the hottest liquid of the loop. The return to the reservoir shows the same flow, cooler.`,
          );
    case 'delivery':
      return frontFirst
        ? place(
            'info',
            say`Behind the pump is a fair place, if the swirl of its outlet has straight hose to settle in; the run between the cores is cooler and calmer.`,
          )
        : place(
            'info',
            say`Behind the pump is a fair place, if the swirl of its outlet has straight hose to settle in; the return from the front exchanger is cooler and calmer.`,
          );
    case 'back':
      return frontFirst
        ? place(
            'watch',
            say`From the charge cooler back to the reservoir runs the hottest liquid of the loop. The run between the cores shows the same flow, cooler.`,
          )
        : place(
            'good',
            say`In the return from the front exchanger the meter sees the coolest liquid and no suction: the best place. Mount it upright with the flow going up, so that bubbles leave it.`,
          );
  }
}

function straightFinding({ meter }: Study): Finding[] {
  const before = straightLength(STRAIGHT.before, meter.bore);
  const after = straightLength(STRAIGHT.after, meter.bore);
  if (meter.straightBefore >= before && meter.straightAfter >= after) {
    return [
      {
        code: 'straight',
        level: 'good',
        sentence: say`There is straight hose enough: ten bores before the meter, five after it (common practice; its maker’s figure goes first).`,
      },
    ];
  }
  return [
    {
      code: 'straight',
      level: 'watch',
      sentence: say`The meter wants ${q(before, 'dimension')} of straight hose before it and ${q(after, 'dimension')} after it (ten and five bores, common practice); it has ${q(meter.straightBefore, 'dimension')} and ${q(meter.straightAfter, 'dimension')}. Calibrate it where it sits, or move it.`,
    },
  ];
}

function heatFinding({ meter, liquidTemperature }: Study): Finding[] {
  if (liquidTemperature === null || liquidTemperature <= meter.hottest) return [];
  return [
    {
      code: 'too-hot',
      level: 'act',
      sentence: say`The liquid settles at ${q(liquidTemperature, 'temperature')} there, above the ${q(meter.hottest, 'temperature')} of the meter: it may soften or burst under the cap’s pressure.`,
    },
  ];
}

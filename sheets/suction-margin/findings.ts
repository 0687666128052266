/** What the numbers mean: does it cavitate, on what does the answer rest. */
import type { Side } from '$lib/job/evaluate';
import { NEAR_LIMIT } from '$lib/solver/loop/limits';
import { healthyFlow } from '$lib/solver/suction/path';
import { q, say, type Finding } from '../types';
import type { Study } from './study';

/** No circulation, or no balance: told first. */
export function stateFinding({ s, flows }: Study): Finding[] {
  if (!flows) {
    return [
      {
        code: 'no-flow',
        level: 'act',
        sentence: [
          'Nothing flows, so nothing is asked of the suction side: this is not cavitation. Look for volts at the plug, then for air in the pump.',
        ],
      },
    ];
  }
  if (s.status === 'balanced') return [];
  const starved = s.notes.some(({ code }) => code === 'loop.pump-starved');
  const words =
    s.status === 'freezes'
      ? 'In this duty the liquid freezes before the loop settles; what follows is told at the freezing point.'
      : starved
        ? 'In this duty the liquid comes to boil at the pump before the loop settles: the pump moves nothing any more.'
        : 'In this duty liquid boils somewhere in the loop before it settles. The suction side is told at the temperature leaving the reservoir; the boiling comes first.';
  return [{ code: s.status, level: 'act', sentence: [words] }];
}

/** The answer to "is it cavitating?". */
export function verdict(study: Study): Finding {
  const { s, vented } = study;
  const { suction } = s.margins;
  const T = q(s.liquid.temperature, 'temperature');
  if (suction < 0) {
    return {
      code: 'cavitates',
      level: 'act',
      sentence: say`At ${T} the pump lacks ${q(-suction, 'head')} of suction head: it cavitates. Proof costs nothing: cool the tank, or hold pressure in it, and flow and amperes must come back. If the noise stays with a cold tank it is air.`,
    };
  }
  const spare = say`At ${T} there is ${q(suction, 'head')} of suction head to spare`;
  if (suction < NEAR_LIMIT.head) {
    return {
      code: 'close',
      level: 'watch',
      sentence: [
        ...spare,
        ...say`, too little to be sure of: a hotter day or a little altitude uses it up. Give it more before looking elsewhere.`,
      ],
    };
  }
  const still =
    vented && vented.margin >= 0
      ? say`, and still ${q(vented.margin, 'head')} with the cap off`
      : [];
  return {
    code: 'not-cavitation',
    level: 'good',
    sentence: [
      ...spare,
      ...still,
      ': a pump that is noisy or slow here is not cavitating. Cavitation is blamed far more often than it happens.',
    ],
  };
}

/** A margin that is only there while the cap holds. */
export function capFindings({ loop }: Side, { s, vented }: Study): Finding[] {
  const { capGauge, ratedGauge } = loop.reservoir;
  const found: Finding[] = [];
  if (ratedGauge !== undefined && capGauge > ratedGauge) {
    found.push({
      code: 'cap-above-rating',
      level: 'act',
      sentence: say`The cap opens at ${q(capGauge, 'gaugePressure')}, but the tank is made for ${q(ratedGauge, 'gaugePressure')}. Suction head is never worth a burst tank of hot liquid: fit a smaller cap.`,
    });
  }
  if (vented && vented.margin < 0 && s.margins.suction >= 0) {
    found.push({
      code: 'rests-on-cap',
      level: 'watch',
      sentence: say`The margin rests on a cap that holds ${q(capGauge, 'gaugePressure')}. With a weak cap, or after opening it, the pump would lack ${q(-vented.margin, 'head')} at this temperature. Prove the cap with a tester before trusting this sheet.`,
    });
  }
  return found;
}

/** How hot is too hot. */
export function lossFinding({ loss, ventedLoss, s }: Study): Finding[] {
  if (loss.kind === 'no-flow') return [];
  if (loss.kind === 'always') {
    return [
      {
        code: 'always-short',
        level: 'act',
        sentence: [
          'The suction head is short at every temperature, cold as well: level, hose or the pump’s need is at fault, not heat.',
        ],
      },
    ];
  }
  const capOff =
    ventedLoss?.kind === 'at'
      ? say` With the cap off, or one that leaks, it would start at ${q(ventedLoss.point.temperature, 'temperature')}.`
      : [];
  if (loss.kind === 'never') {
    return [
      {
        code: 'never-short',
        level: 'good',
        sentence: [
          ...say`The margin holds up to ${q(loss.upTo, 'temperature')}, the hottest this liquid is followed here; there it is still ${q(loss.margin, 'head')}.`,
          ...capOff,
        ],
      },
    ];
  }
  const { temperature, flow } = loss.point;
  const boils = q(s.margins.boilingPoint, 'temperature');
  return [
    {
      code: 'first-loss',
      level: 'info',
      sentence: [
        ...say`Warming up, the pump starts to lose head (3 % of it) at ${q(temperature, 'temperature')} with ${q(flow, 'volumeFlow')} flowing; the liquid in the tank boils at ${boils}. A tank well below the first number is not what makes a pump slow.`,
        ...capOff,
      ],
    },
  ];
}

/** Head and flow lost to it, where that is counted; that it is not, where it matters. */
export function countedFinding({ loop }: Side, { s, prepared }: Study): Finding[] {
  const { headLeft, flow } = s.operating;
  if (loop.pump.cavitation !== 'counted') {
    if (!(s.margins.suction < 0)) return [];
    return [
      {
        code: 'not-counted',
        level: 'watch',
        sentence: [
          'Every sheet still takes the pump as giving its full curve, so the flows shown are too high. Have the loss counted (under Pump) to see the feedback: hotter liquid, less flow, hotter liquid.',
        ],
      },
    ];
  }
  // Less than a thousandth is no loss anyone could measure.
  if (!(headLeft < 0.999)) return [];
  const healthy = healthyFlow(prepared, s.liquid.temperature);
  return [
    {
      code: 'head-lost',
      level: headLeft < 0.97 ? 'act' : 'watch',
      sentence: say`Counted in, the pump keeps ${q(headLeft, 'percent')} of its head and moves ${q(flow, 'volumeFlow')}; in health it would move ${q(healthy, 'volumeFlow')}. The shape of that loss is a stated guess; only its 3 % point is a definition.`,
    },
  ];
}

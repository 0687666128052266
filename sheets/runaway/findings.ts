/** What the curves as tried mean, in plain words. */
import { changeOf, HARDER, holding, isLiquid, suctionOf } from '$lib/solver/loop/runaway/readings';
import { hasBreaker } from '$lib/solver/loop/runaway/flow';
import type { Knob } from '$lib/solver/loop/runaway/types';
import { q, say, type Finding } from '../types';
import type { Study } from './study';

export const findings = (study: Study): Finding[] => [
  ...settling(study),
  ...otherCrossings(study),
  ...edge(study),
  ...whatTells(study),
  ...suction(study),
  ...breaker(study),
];

function settling({ now, moved }: Study): Finding[] {
  const { fromCold, end, hotEnd } = now.found;
  const tried = moved ? 'As tried' : 'As described';
  if (fromCold) {
    if (!isLiquid(fromCold)) {
      return [
        {
          code: 'boils-on-the-way',
          level: 'act',
          sentence: say`${tried} the heats meet with ${q(fromCold.T, 'temperature')} leaving the reservoir, but somewhere on the way round the liquid is ${q(-fromCold.boilingMargin, 'temperatureDifference')} past boiling. In truth it boils there.`,
        },
      ];
    }
    return [
      {
        code: 'settles',
        level: 'info',
        sentence: say`${tried} the loop settles with ${q(fromCold.T, 'temperature')} leaving the reservoir: ${q(fromCold.entering, 'heat')} enter and leave. A degree hotter and ${q(holding(fromCold), 'conductance')} more leaves than enters, so a push dies away.`,
      },
    ];
  }
  if (!end) {
    return [
      {
        code: 'stands',
        level: 'act',
        sentence: say`As tried the liquid stands still, so there is no common temperature and no balance: the tank stays near its surroundings while the charge air is not cooled.`,
      },
    ];
  }
  if (end.left < 0) {
    return [
      {
        code: 'stays-cold',
        level: 'watch',
        sentence: say`As tried the liquid loses heat wherever it moves: it cools until it stiffens or freezes.`,
      },
    ];
  }
  const why = {
    boils: say`${tried} more heat enters than leaves at every temperature. The liquid is still gaining ${q(end.left, 'heat')} at ${q(end.T, 'temperature')}: no balance below that exists, and it runs away.`,
    starved: say`${tried} no balance is reached from cold. At ${q(end.T, 'temperature')} the liquid boils ahead of the pump, nothing is moved any more, and ${q(end.left, 'heat')} still flow in.`,
    stopped: say`${tried} no balance is reached from cold: beyond ${q(end.T, 'temperature')} the breaker leaves the pump without current for good, with ${q(end.left, 'heat')} still flowing in.`,
    'falls-back': say`${tried} no balance is reached from cold.`,
  };
  return [{ code: 'runs-away', level: 'act', sentence: why[hotEnd] }];
}

/** More than one temperature at which the heats meet. */
function otherCrossings({ now: { found } }: Study): Finding[] {
  const tips = found.all.find((c) => !c.stable);
  if (!tips) return [];
  const back = found.fromCold
    ? say`The heats also meet at ${q(tips.T, 'temperature')}, where the crossing does not hold: pushed past it by a long pull or a stopped fan, the liquid goes on upwards and does not come back when the push is over.`
    : say`The heats meet at ${q(tips.T, 'temperature')}, but that crossing does not hold.`;
  return [{ code: 'second-crossing', level: 'watch', sentence: back }];
}

const KNOB_WORD: Readonly<Record<Knob, string>> = {
  flow: 'flow',
  fan: 'fan volts',
  ambientShift: 'ambient',
  load: 'load',
};

function edge({ edge: found, knob, knobs }: Study): Finding[] {
  if (!found) return [];
  const at =
    knob === 'ambientShift'
      ? say`an ambient ${q(found.knob, 'temperatureDifference')} above the one described`
      : say`${KNOB_WORD[knob]} of ${q(found.knob, 'percent')}`;
  const beyond = HARDER[knob] > 0 ? 'Above' : 'Below';
  const why = {
    fold: say`the stable crossing meets the unstable one and both vanish. There is no slow approach: the last balance is lost at once`,
    boils: say`the hottest liquid boils although the heats would still meet`,
    end: say`the liquid leaves the range in which it is described`,
  }[found.why];
  return [
    {
      code: `edge-${found.why}`,
      level: Math.abs(found.knob - knobs[knob]) < NEAR[knob] ? 'watch' : 'info',
      sentence: [`${beyond} `, ...at, ` this balance is lost: `, ...why, `.`],
    },
  ];
}

/** Nearer than this the edge is worth a warning: a hot week, a weak fan. */
const NEAR: Readonly<Record<Knob, number>> = { flow: 0.2, fan: 0.2, ambientShift: 6, load: 0.3 };

/** Flow and drop against the loop as described. */
function whatTells({ now, neutral, moved }: Study): Finding[] {
  const a = neutral.found.fromCold;
  const b = now.found.fromCold;
  if (!moved || !a || !b) return [];
  const { liquid, dropRatio } = changeOf(a, b);
  const rise =
    liquid >= 0
      ? say`The liquid is ${q(liquid, 'temperatureDifference')} hotter than described`
      : say`The liquid is ${q(-liquid, 'temperatureDifference')} colder than described`;
  const words =
    dropRatio > WIDER
      ? 'A hotter tank with a wider drop points at the flow or at more heat; less air leaves the drop alone.'
      : dropRatio < 1 / WIDER
        ? 'A drop that narrows points at less heat given off per round: more flow, or less air or face.'
        : 'The drop has hardly moved, so the flow and the heat are much as they were: what moved is the day or the air side.';
  return [
    {
      code: 'what-tells',
      level: 'info',
      sentence: [
        ...rise,
        ...say`; the drop across the exchanger went from ${q(a.drop, 'temperatureDifference')} to ${q(b.drop, 'temperatureDifference')} and the flow from ${q(a.flow, 'volumeFlow')} to ${q(b.flow, 'volumeFlow')}. `,
        words,
      ],
    },
  ];
}

/** The drop counts as changed beyond this ratio. */
const WIDER = 1.15;

function suction({ now }: Study): Finding[] {
  const at = now.found.fromCold;
  if (!at) return [];
  const { margin, headLeft } = suctionOf(now.balance, at);
  const counted = now.balance.what.feedbacks.suction;
  if (margin >= 0) {
    return [
      {
        code: 'suction-rests',
        level: 'good',
        sentence: say`The pump has ${q(margin, 'head')} of suction head to spare at the crossing, so the suction feedback is at rest there.`,
      },
    ];
  }
  return [
    {
      code: 'suction-works',
      level: 'act',
      sentence: counted
        ? say`The pump lacks ${q(-margin, 'head')} of suction head and keeps ${q(headLeft, 'percent')} of its head: hotter liquid would leave it less, and less flow keeps the liquid hot.`
        : say`The pump lacks ${q(-margin, 'head')} of suction head. The feedback is switched off, so the flow drawn here is more than it can hold.`,
    },
  ];
}

function breaker({ now }: Study): Finding[] {
  const { feedbacks } = now.balance.what;
  if (!feedbacks.breaker) return [];
  if (!hasBreaker(now.balance.prepared)) {
    return [
      {
        code: 'breaker-absent',
        level: 'info',
        sentence: say`The feed as described has no breaker (or the pump’s volts are stated), so that feedback has nothing to act on.`,
      },
    ];
  }
  const at = now.found.fromCold;
  if (!at || at.running === 1) return [];
  return [
    {
      code: 'breaker-cycles',
      level: 'act',
      sentence: say`The breaker cycles: the pump runs for ${q(at.running, 'percent')} of the time. The balance sees the mean flow; while it stands the tank stays as it is and the charge air goes uncooled.`,
    },
  ];
}

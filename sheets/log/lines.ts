/** Lines that a reader can rebuild: heat from flow and drop, what the core does, what the event took. */
import { liquidCapacityRate } from '$lib/solver/cores/formulas';
import {
  measuredConductance,
  measuredDrop,
  measuredEffectiveness,
  measuredHeat,
} from '$lib/solver/diagnosis/formulas';
import { formulaLine, type Line } from '$lib/solver/formula';
import {
  halfWidth,
  heatPlusMinus,
  heatShare,
  leadFormula,
  leastUA,
  leastUAPlusMinus,
  shareLost,
  shareOfEntered,
  voltsLost,
} from '$lib/solver/loop/fromLog/formulas';
import type { Study } from './study';

export const lines = (study: Study): Line[] => [
  ...lookedLines(study),
  ...fitLines(study),
  ...eventLines(study),
];

function lookedLines({ looked, temperatureError, flowError }: Study): Line[] {
  if (!looked) return [];
  const { T_in, T_out, T_a, flow, rho, cp } = looked;
  const rate = formulaLine(
    liquidCapacityRate,
    { rho, V: flow, c_p: cp },
    {
      id: 'rate',
      statement: 'Capacity rate of the liquid at the mean flow of the spans',
      why: 'Density and specific heat are those of the liquid entered, at the mean of inlet and outlet; those of water would overstate a mixture’s heat by a seventh.',
    },
  );
  const drop = formulaLine(
    measuredDrop,
    { T_in, T_out },
    {
      id: 'drop',
      statement: 'Drop of the liquid through the front exchanger, means of the spans',
      why: 'Small against the ± of two probes, and everything built on it is loose.',
    },
  );
  const heat = formulaLine(
    measuredHeat,
    { C_l: rate.value, dT: drop.value },
    {
      id: 'heat',
      statement: 'Heat given off by the liquid',
      why: 'What the front exchanger does is told by the liquid alone: how much flows, how far it cools.',
    },
  );
  const share = formulaLine(
    heatShare,
    { u_V: flowError, u_T: temperatureError, dT: drop.value },
    {
      id: 'heat-share',
      statement: '± of that heat, of its value',
      why: 'Two probes a degree off each count against a drop of a few degrees: a small drop tells little.',
    },
  );
  const least = formulaLine(
    leastUA,
    { C_l: rate.value, T_in, T_out, T_a },
    {
      id: 'least-ua',
      statement: 'Least UA that cools the liquid so, from the two temperatures',
      why: 'As if the air kept the ambient’s temperature all the way through; a fit that warms the air must find more.',
    },
  );
  return [
    rate,
    drop,
    heat,
    share,
    formulaLine(
      heatPlusMinus,
      { Q_f: heat.value, x_Q: share.value },
      {
        id: 'heat-plus-minus',
        statement: '± of that heat',
        why: 'A change bought for less than this cannot be seen in the log.',
      },
    ),
    formulaLine(
      measuredEffectiveness,
      { dT: drop.value, T_in, T_a },
      {
        id: 'effectiveness',
        statement: 'Share of the possible drop that the liquid makes',
        why: 'Compared with the core’s own figure it tells a bad core from one that is merely small.',
      },
    ),
    formulaLine(
      measuredConductance,
      { Q_f: heat.value, T_in, T_a },
      {
        id: 'conductance',
        statement: 'Heat per degree of the liquid above ambient',
        why: 'It sums up core, fans, shroud and sealing in the figure the balance turns on.',
      },
    ),
    least,
    formulaLine(
      leastUAPlusMinus,
      {
        ...{ UA: least.value, u_V: flowError, C_l: rate.value, u_T: temperatureError },
        ...{ T_in, T_out, T_a },
      },
      {
        id: 'least-ua-plus-minus',
        statement: '± of that UA, by flow meter and probes',
        why: 'A drop of a few degrees read by two probes leaves it loose; one bath for both makes it sharper.',
      },
    ),
  ];
}

function fitLines({ frontUA, described }: Study): Line[] {
  if (!frontUA) return [];
  const { value, entered, low, high } = frontUA;
  const width =
    low !== null && high !== null
      ? [
          formulaLine(
            halfWidth,
            { UA_1: low, UA_2: high },
            {
              id: 'ua-plus-minus',
              statement: '± of the front exchanger’s UA, from the interval of the fit',
              why: 'The fit itself has no closed formula: least squares over every reading of the spans gives the two ends.',
            },
          ),
        ]
      : [];
  return entered === null || !described
    ? width
    : [
        ...width,
        formulaLine(
          shareOfEntered,
          { UA: value, UA_e: entered },
          {
            id: 'share-of-entered',
            statement: 'UA found, as a share of the UA described',
            why: 'Both at the same flows: below 100 % the core does less than its description.',
          },
        ),
      ];
}

function eventLines({ flowFell }: Study): Line[] {
  if (!flowFell) return [];
  const { event, change } = flowFell;
  const volts = event.changes.find(({ channel }) => channel === 'volts');
  const lost = formulaLine(
    shareLost,
    { V_1: change.before, V_2: change.after },
    {
      id: 'flow-lost',
      statement: 'Share of the flow lost in the event',
      why: 'Losing a little slowly is warming liquid; losing much at once is a fault.',
    },
  );
  if (!volts) return [lost];
  const [first, next] = change.at <= volts.at ? [change, volts] : [volts, change];
  return [
    lost,
    formulaLine(
      voltsLost,
      { U_1: volts.before, U_2: volts.after },
      {
        id: 'volts-lost',
        statement: 'Share of the pump’s volts lost in the event',
        why: 'If the volts fell as far as the flow, look at the feed and not at the pump.',
      },
    ),
    formulaLine(
      leadFormula,
      { t_1: first.at, t_2: next.at },
      {
        id: 'lead',
        statement: `From the fall of the ${first === change ? 'flow to that of the volts' : 'volts to that of the flow'}`,
        why: 'What moves first is nearer the cause: volts before flow speak of the feed, flow before volts of the pump or the liquid.',
      },
    ),
  ];
}

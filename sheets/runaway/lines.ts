/** Lines of the balance as tried: the sums, where they meet, why it holds, how far it is from being lost. */
import type { Side } from '$lib/job/evaluate';
import { liquidCapacityRate } from '$lib/solver/cores/formulas';
import { balanceLine, formulaLine, type Line } from '$lib/solver/formula';
import {
  boilingMargin,
  heatEntering,
  heatLeaving,
  settlesAt,
} from '$lib/solver/loop/balanceFormulas';
import * as runaway from '$lib/solver/loop/runaway/formulas';
import { suctionOf } from '$lib/solver/loop/runaway/readings';
import type { Crossing, HeatsAt } from '$lib/solver/loop/runaway/types';
import { headLeftFormula, suctionMarginFormula } from '$lib/solver/suction/formulas';
import type { Study } from './study';

export function lines(side: Side, study: Study): Line[] {
  const { balance, found } = study.now;
  const at = found.fromCold ?? found.end;
  if (!at) return [];
  return [
    ...stateLines(side, study, at),
    ...(found.fromCold
      ? [...meeting(study, found.fromCold), ...holds(study, found.fromCold)]
      : sums(study, at)),
    ...suctionLines(study, at),
    formulaLine(
      boilingMargin,
      {
        T_boil: balance.boilingPoint,
        T_hot: Math.max(...Object.values(at.temperatures)),
      },
      {
        id: 'boiling-margin',
        statement: 'Room below boiling, hottest place of the loop',
        why: 'When it is gone the pump loses its liquid and the balance its meaning.',
      },
    ),
  ];
}

/** Day, flow and drop as tried. */
function stateLines({ loop }: Side, { now, knobs }: Study, at: HeatsAt): Line[] {
  const ambient = formulaLine(
    runaway.triedAmbient,
    { T_amb: loop.site.ambientTemperature, dT: knobs.ambientShift },
    {
      id: 'ambient',
      statement: 'Ambient as tried',
      why: 'Every crossing moves up with the day, and the room above it shrinks.',
    },
  );
  const { underhood } = now.balance.what.feedbacks;
  const flow = formulaLine(
    runaway.triedFlow,
    { k: knobs.flow, V_p: at.pumpFlow, s: at.running },
    {
      id: 'flow',
      statement: 'Liquid flow as tried',
      why: 'The knob makes pump and passages larger alike, so that it moves the flow and nothing else.',
      notes: [
        {
          code: 'runaway.pump-flow',
          message:
            'Flow of pump and loop at this liquid temperature as on sheet 2; share of the time from the breaker’s cycle, 100 % where none opens.',
        },
      ],
    },
  );
  const rate = formulaLine(
    liquidCapacityRate,
    { rho: at.density, V: flow.value, c_p: at.specificHeat },
    {
      id: 'capacity-rate',
      statement: 'Heat the liquid carries per degree',
      why: 'With little of it, small heats make large swings from place to place.',
    },
  );
  return [
    ambient,
    ...(underhood
      ? [
          formulaLine(
            runaway.warmedBay,
            {
              T_amb: ambient.value,
              dT_b: now.balance.duty.bayRise,
              g: underhood.liquidGain,
              T: at.T,
            },
            {
              id: 'bay',
              statement: 'Air in the bay, warmed by the liquid',
              why: 'The hotter the liquid, the hotter the air that heats it: that is a feedback.',
            },
          ),
        ]
      : []),
    flow,
    rate,
    formulaLine(
      runaway.exchangerDrop,
      { Q: at.leaving, C: rate.value },
      {
        id: 'drop',
        statement: 'Drop across the front exchanger',
        why: 'Flow too small and exchanger too small look alike at the tank; the drop tells them apart.',
      },
    ),
  ];
}

const entering = ({ heats }: HeatsAt) => ({
  Q_c: heats.charge,
  Q_e: heats.engineSoak,
  Q_h: heats.hoseSoak,
  Q_t: heats.reservoirSoak,
  Q_p: heats.pump,
});

const leaving = ({ balance }: Study['now'], at: HeatsAt) => ({
  G: at.conductance,
  T_f: at.temperatures.frontIn,
  T_amb: balance.ambient,
});

/** Without a balance: both sums at the hot end, where they do not meet. */
const sums = ({ now }: Study, at: HeatsAt): Line[] => [
  formulaLine(heatEntering, entering(at), {
    id: 'entering',
    statement: 'Heat entering at the hot end of the liquid’s range',
    why: 'Even there more comes in than can leave: no crossing is left to settle at.',
  }),
  formulaLine(heatLeaving, leaving(now, at), {
    id: 'leaving',
    statement: 'Heat leaving there',
    why: 'Less leaves than enters at every temperature below, so nothing stops the liquid.',
  }),
];

function meeting({ now }: Study, at: Crossing): Line[] {
  // Where no heat leaves there is nothing to weigh but rounding.
  if (!(at.conductance > 0) || Math.abs(at.leaving) < 1e-3) return [];
  return [
    balanceLine(
      { formula: heatEntering, x: entering(at) },
      { formula: heatLeaving, x: leaving(now, at) },
      {
        id: 'balance',
        statement: 'The crossing reached from cold: as much heat enters as leaves',
        why: 'A loop that warms from cold stops here; others above it are reached only by a push.',
        unknown: {
          tex: 'T_{f,in}',
          quantity: 'temperature',
          name: 'liquid into the front exchanger',
          value: at.temperatures.frontIn,
        },
        method:
          'The whole range of the liquid is looked through in steps of 2 K (3.6 °F), each change of sign closed by a bracketed root: no two crossings farther apart are missed.',
      },
    ),
    formulaLine(
      settlesAt,
      { T_amb: now.balance.ambient, Q_in: at.leaving, G: at.conductance },
      {
        id: 'settles',
        statement: 'The same, read as ambient plus heat over conductance',
        why: 'A hotter day, more heat, or less conductance: everything that moves the crossing acts through one of the three.',
      },
    ),
  ];
}

/** Slope, and room to where the balance is lost. */
function holds({ knob, knobs, edge }: Study, at: Crossing): Line[] {
  const slope = formulaLine(
    runaway.holdingSlope,
    { S_out: at.slopeOut, S_in: at.slopeIn },
    {
      id: 'holding',
      statement: 'What pulls the liquid back to the crossing',
      why: 'Above zero a push dies away; at zero two crossings meet and vanish; below, a push grows.',
      notes: [
        {
          code: 'runaway.slopes',
          message:
            'Slopes of the two curves at the crossing, from both heats 0.01 K to either side of it.',
        },
      ],
    },
  );
  if (!edge) return [slope];
  const [formula, statement] =
    knob === 'ambientShift'
      ? ([runaway.roomInDegrees, 'Hotter day this balance can bear'] as const)
      : ([runaway.roomInPercent, `Room of the knob ${knob} until this balance is lost`] as const);
  return [
    slope,
    formulaLine(
      formula,
      { x_e: edge.knob, x: knobs[knob] },
      {
        id: 'room',
        statement,
        why: 'How far from the edge this loop is: near nought, one hot afternoon is enough.',
        notes: [
          {
            code: `runaway.edge-${edge.why}`,
            message: {
              fold: 'The last setting is a fold: a stable and an unstable crossing meet there. Found by following the crossing along the knob.',
              boils:
                'At the last setting the hottest liquid reaches its boiling point. Found by following the crossing along the knob.',
              end: 'At the last setting the liquid reaches the end of the range in which it is described. Found by following the crossing along the knob.',
            }[edge.why],
          },
        ],
      },
    ),
  ];
}

function suctionLines({ now }: Study, at: HeatsAt): Line[] {
  const { available, required } = suctionOf(now.balance, at);
  const heads = { NPSH_A: available, NPSH_R: required };
  return [
    formulaLine(suctionMarginFormula, heads, {
      id: 'suction-margin',
      statement: 'Suction head to spare at this temperature',
      why: 'Vapour pressure climbs ever faster with temperature: the last degrees take most of it.',
      notes: [
        {
          code: 'runaway.suction',
          message: 'Both heads as worked out on the sheet of the suction margin.',
        },
      ],
    }),
    ...(required > 0
      ? [
          formulaLine(headLeftFormula, heads, {
            id: 'head-left',
            statement: 'Share of the pump’s head that is left',
            why: 'Less head, less flow, hotter liquid, less head: here the circle closes.',
          }),
        ]
      : []),
  ];
}

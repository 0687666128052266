/** Lines of the suction head: available, required, to spare, what it leaves, where it ends. */
import { coolantVapourPressure } from '$lib/solver/fluids/coolant';
import { balanceLine, formulaLine, type Line, type Formula } from '$lib/solver/formula';
import { headFromPressure } from '$lib/solver/hydraulics/formulas';
import type { Loop } from '$lib/solver/loop/types';
import {
  degreesLeft,
  headLeftFormula,
  npshAvailableFormula,
  requiredEstimate,
  requiredFromPoints,
  suctionMarginFormula,
  suppressionFormula,
} from '$lib/solver/suction/formulas';
import type { FirstLoss, PathPoint } from '$lib/solver/suction/path';
import type { Study } from './study';

/** What goes into the balance of the suction head besides the liquid. */
export interface Inlet {
  readonly p_ambient: number;
  readonly p_vapour: number;
  readonly z: number;
}

export function marginLines(loop: Loop, study: Study, inlet: Inlet): Line[] {
  const { s } = study;
  const { operating, liquid } = s;
  const available = formulaLine(
    npshAvailableFormula,
    {
      ...inlet,
      p_tank_gauge: loop.reservoir.capGauge,
      rho: liquid.density,
      h_suction: operating.shares[0]!.head,
    },
    {
      id: 'npsh-available',
      statement: 'Suction head available',
      why: 'Everything that pushes, less vapour pressure and losses, told as metres or feet of the liquid.',
      notes: operating.notes.filter(({ code }) => code === 'suction.cap-pressure'),
    },
  );
  const cap =
    loop.reservoir.capGauge > 0
      ? [
          formulaLine(
            headFromPressure,
            { dp: loop.reservoir.capGauge, rho: liquid.density },
            {
              id: 'cap-worth',
              statement: 'Of that, the cap’s pressure is worth',
              why: 'All of it is gone with the cap off, and most of it while the tank is cold.',
            },
          ),
        ]
      : [];
  return [
    available,
    ...cap,
    ...requiredLine(loop, study),
    formulaLine(
      suctionMarginFormula,
      { NPSH_A: available.value, NPSH_R: operating.npshRequired },
      {
        id: 'suction-margin',
        statement: 'Suction head to spare',
        why: 'Below zero the pump loses head: more tank height, more cap or a wider hose, in that order of price.',
      },
    ),
    ...leftLines(study, available.value),
  ];
}

/** From points only: an estimate is an input. */
function requiredLine({ pump }: Loop, { prepared, s }: Study): Line[] {
  if (!pump.npshCurve) return [];
  return [
    formulaLine(
      requiredOf(prepared, s.liquid.temperature),
      { Q: s.operating.flow },
      {
        id: 'npsh-required',
        statement: 'Suction head the pump needs at this flow',
        why: 'NPSH3: by definition 3 % of its head is then already gone.',
        notes: s.operating.notes.filter(({ code }) => code === 'suction.beyond-points'),
      },
    ),
  ];
}

const requiredOf = ({ hydraulics, liquidAt }: Study['prepared'], T: number) =>
  requiredFromPoints((flow) => hydraulics.suctionAt(flow, liquidAt(T), T).required);

function leftLines({ s }: Study, NPSH_A: number): Line[] {
  const { npshRequired: NPSH_R } = s.operating;
  if (!(NPSH_R > 0)) return [];
  return [
    formulaLine(
      headLeftFormula,
      { NPSH_A, NPSH_R },
      {
        id: 'head-left',
        statement: 'Share of its head that the pump keeps at that',
        why: 'Exact only at its one fixed point, 97 % where available equals required; the rest is a smooth guess.',
      },
    ),
    formulaLine(
      suppressionFormula,
      { NPSH_R },
      {
        id: 'suppression',
        statement: 'Suction head at which, on average, not a bubble forms',
        why: 'NPSH3 is not where cavitation starts. Between the two a pump may hiss and wear, and still gives its head.',
      },
    ),
  ];
}

/** Where, warming up, available falls to required: with the cap holding, and with it off. */
export function lossLines(loop: Loop, study: Study, inlet: Inlet): Line[] {
  const { loss, ventedLoss, prepared, s } = study;
  return [
    ...(shown(loss)
      ? [
          lossLine(prepared, loop.reservoir.capGauge, loss.point, inlet, {
            id: 'first-loss',
            statement:
              'Temperature at which the pump starts to lose head: available falls to required',
            why: 'The number to compare with a thermometer in the tank before anyone says cavitation.',
          }),
          formulaLine(
            degreesLeft,
            { T_1: loss.point.temperature, T: s.liquid.temperature },
            {
              id: 'degrees-left',
              statement: 'The liquid is below that by',
              why: 'Negative: the pump is past it.',
            },
          ),
        ]
      : []),
    ...(ventedLoss && shown(ventedLoss)
      ? [
          lossLine(prepared, 0, ventedLoss.point, inlet, {
            id: 'first-loss-vented',
            statement: 'The same with the cap off, or one that does not hold',
            why: 'What the loop is good for on the day the cap fails.',
          }),
        ]
      : []),
  ];
}

/** A pump that needs nothing ends at the boiling point: both sides are nought, and no line tells more. */
const shown = (loss: FirstLoss): loss is Extract<FirstLoss, { kind: 'at' }> =>
  loss.kind === 'at' && loss.point.required > 0;

function lossLine(
  prepared: Study['prepared'],
  p_tank_gauge: number,
  point: PathPoint,
  inlet: Inlet,
  words: { readonly id: string; readonly statement: string; readonly why: string },
): Line {
  const { pump } = prepared.loop;
  const { temperature: T } = point;
  const required: { formula: Formula; x: Record<string, number> } = pump.npshCurve
    ? { formula: requiredOf(prepared, T), x: { Q: point.flow } }
    : { formula: requiredEstimate, x: { N_e: pump.npshRequired } };
  return balanceLine(
    {
      formula: npshAvailableFormula,
      x: { ...inlet, p_tank_gauge, ...liquidSideAt(prepared, point) },
    },
    required,
    {
      ...words,
      unknown: {
        tex: 'T_1',
        quantity: 'temperature',
        name: 'temperature of the first loss',
        value: T,
      },
      method:
        'Found by bracketed root finding (Brent), the flow following the liquid’s own properties; vapour pressure, density and loss in the suction hose are those at that temperature.',
    },
  );
}

/** What of the suction head depends on temperature and flow. */
function liquidSideAt(
  { hydraulics, liquidAt, loop }: Study['prepared'],
  { temperature: T, flow }: PathPoint,
) {
  const liquid = liquidAt(T);
  return {
    p_vapour: coolantVapourPressure(loop.coolant, T),
    rho: liquid.rho,
    h_suction: hydraulics.suctionAt(flow, liquid, T).side.h_suction,
  };
}

/** Lines of the pump itself: speed, power, what its flow means to the liquid, a second one. */
import { balanceLine, formulaLine, type Line } from '$lib/solver/formula';
import {
  affinityHead,
  affinityPower,
  passRise,
  pumpSetHead,
  speedFromVolts,
  systemHeadAt,
  wireToWater,
} from '$lib/solver/hydraulics/formulas';
import { electricalInput } from '$lib/solver/feed/circuitFormulas';
import { pumpCount } from '$lib/solver/feed/supply';
import type { HydraulicModel } from '$lib/solver/hydraulics/operatingPoint';
import { settledIn } from '$lib/solver/hydraulics/pumpInLoop';
import { pumpChoices, type PumpChoice } from '$lib/solver/hydraulics/whatIf';
import type { Loop, SteadySolution } from '$lib/solver/loop/types';

/** Speed at the voltage measured, and what it leaves of the head. */
export function speedLines({ pump }: Loop, model: HydraulicModel): Line[] {
  const { speedRatio: s, rated, volts } = model.pump;
  return [
    ...(pump.motor === 'brushed'
      ? [
          formulaLine(
            speedFromVolts,
            { U: volts, U_r: pump.ratedVolts },
            {
              id: 'speed-ratio',
              statement: 'Speed of the pump at the volts on its plug',
              why: 'A brushed motor follows its volts; every joint in the feed is paid for in flow.',
            },
          ),
        ]
      : []),
    formulaLine(
      affinityHead,
      { H_r: rated.shutOff, s },
      {
        id: 'shut-off-head',
        statement: 'Head of one pump without flow at that speed',
        why: 'Head goes with speed squared. A gauge at the outlet with the line pinched shut reads this.',
        ...(pump.motor === 'held-speed' &&
          s > 0 && {
            notes: [
              {
                code: 'pump.holds-speed',
                message: 'The controller holds rated speed down to its cut-out, so s is 1.',
              },
            ],
          }),
      },
    ),
  ];
}

/** Power in the wires, and what of it arrives in the liquid. */
export function powerLines({ pump }: Loop, model: HydraulicModel, s: SteadySolution): Line[] {
  const { flow: Q, head: H, speedRatio } = s.operating;
  const { supplied } = settledIn(model, s.liquid);
  const inWires =
    supplied?.status === 'runs'
      ? formulaLine(
          electricalInput,
          { V_p: supplied.volts, I: supplied.current },
          {
            id: 'electrical-input',
            statement: 'Electrical input behind its feed',
            why: 'Wire and fuse must carry it, and most of it warms the liquid.',
            notes: [
              { code: 'from-feed', message: 'Volts and current from the sheet of the feed.' },
            ],
          },
        )
      : formulaLine(
          affinityPower,
          { n: pumpCount(pump), P_r: pump.electricPower, s: speedRatio },
          {
            id: 'electrical-input',
            statement: 'Electrical input at this speed',
            why: 'Wire and fuse must carry it, and most of it warms the liquid.',
          },
        );
  if (!(inWires.value > 0)) return [];
  return [
    inWires,
    formulaLine(
      wireToWater,
      { rho: s.liquid.density, Q, H, P: inWires.value },
      {
        id: 'wire-to-water',
        statement: 'Share of the electrical input that moves liquid',
        why: 'Brushed magnetic-drive pumps reach 10 to 25 %, good brushless ones 30 to 45 % (from memory).',
      },
    ),
  ];
}

/** What the flow means to the liquid: how much warmer it leaves the charge cooler. */
export const riseLine = ({ liquid, operating, ledger }: SteadySolution): Line =>
  formulaLine(
    passRise,
    {
      Q_c: ledger.charge,
      Q_e: ledger.engineSoak,
      rho: liquid.density,
      Q: operating.flow,
      c_p: liquid.specificHeat,
    },
    {
      id: 'pass-rise',
      statement: 'Rise of the liquid in one pass through the charge cooler',
      why: 'Twice the flow halves it; the heat carried away hardly changes.',
      notes: [{ code: 'from-balance', message: 'Both heats from sheet 1, loop balance.' }],
    },
  );

const CHOICE_WORDS = {
  one: 'one pump',
  'two-in-series': 'two of this pump in series',
  'two-in-parallel': 'two of this pump in parallel',
} as const;

/** The flow with the pumps arranged otherwise. */
export function secondPumpLines(loop: Loop, model: HydraulicModel, s: SteadySolution): Line[] {
  const liquid = { rho: s.liquid.density, mu: s.liquid.viscosity };
  const atFlow = systemHeadAt((flow) => model.systemHead(flow, liquid));
  const balanced = ({ arrangement, flow, speedRatio }: PumpChoice): Line =>
    balanceLine(
      {
        formula: pumpSetHead(model.pump),
        x: {
          n_s: arrangement === 'two-in-series' ? 2 : 1,
          n_p: arrangement === 'two-in-parallel' ? 2 : 1,
          Q: flow,
          s: speedRatio,
        },
      },
      { formula: atFlow, x: { Q: flow } },
      {
        id: `flow-${arrangement}`,
        statement: `Flow of this loop with ${CHOICE_WORDS[arrangement]}, the liquid as warm as now`,
        why: 'Divide it by the flow of one pump: what is over one is the gain.',
        unknown: { tex: 'Q', quantity: 'volumeFlow', name: 'flow', value: flow },
        method: 'Flow found by bracketed root finding (Brent).',
        ...(loop.feed && {
          notes: [
            {
              code: 'same-feed',
              message:
                'Behind the feed as described: other amperes leave other volts, hence this speed.',
            },
          ],
        }),
      },
    );
  return pumpChoices(loop, liquid)
    .filter(({ arrangement, flow }) => arrangement !== loop.pump.arrangement && flow > 0)
    .map(balanced);
}

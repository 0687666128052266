/** Lines of the charge cooler in the duty shown. */
import type { CoreModel } from '$lib/solver/cores/conductance';
import { hAAir, liquidCapacityRate, overallConductance } from '$lib/solver/cores/formulas';
import { formulaLine, type Line } from '$lib/solver/formula';
import type { ChargeState, CoreState, Loop, SteadySolution } from '$lib/solver/loop/types';
import { farFrom, liquidSideLines } from './liquidSideLines';
import type { CoreName } from './ratingLines';
import { shareLines } from './shareLines';

export const CHARGE: CoreName = { id: 'charge', title: 'Charge cooler' };

/** Heat the liquid carries per degree: the same all round the loop. */
export const liquidRateLine = ({ liquid, operating }: SteadySolution): Line =>
  formulaLine(
    liquidCapacityRate,
    { rho: liquid.density, V: operating.flow, c_p: liquid.specificHeat },
    {
      id: 'liquid-rate',
      statement: 'Heat the liquid carries per degree, in both cores',
      why: 'The flow is the one at which pump and restriction agree; see their sheet.',
    },
  );

/** Up to its share of the possible heat; what that makes of the charge air is told on sheet 1. */
export function chargeLines(
  loop: Loop,
  model: CoreModel,
  s: SteadySolution,
  state: ChargeState,
  core: CoreState,
): Line[] {
  const cooler = loop.chargeCooler;
  const at = (key: string, says: string) => ({
    id: `charge.${key}`,
    statement: `Charge cooler: ${says}`,
  });
  return [
    formulaLine(
      hAAir,
      {
        UA_r: model.ratedUA,
        s_a: cooler.airShare,
        m: state.massFlow,
        m_r: cooler.rating.airMassFlow,
        n: cooler.airExponent,
      },
      {
        ...at('air-side', 'conductance of its air side here'),
        why: 'The air flow is that of the engine in this duty; see the loop balance.',
        notes: farFrom(core.notes, 'airMassFlow'),
      },
    ),
    ...liquidSideLines(CHARGE, cooler, model, loop, s, farFrom(core.notes, 'liquidFlow')),
    formulaLine(
      overallConductance,
      { c: cooler.cleanliness, hA_a: core.hA_air, hA_l: core.hA_liquid },
      {
        ...at('ua', 'conductance at these flows'),
        why: 'The core in one figure at this duty: it is less at cruise than in the catalogue.',
      },
    ),
    liquidRateLine(s),
    ...shareLines(at, {
      state: core,
      arrangement: cooler.arrangement,
      why: 'Near one, the air leaves at the temperature of the liquid, and a larger core changes nothing.',
      notes: [
        {
          code: 'from-balance',
          message:
            'What the air carries per degree: sheet 1, where the charge temperature is worked out from this share.',
        },
      ],
    }),
  ];
}

/** Lines of the charge cooler in the duty shown. */
import * as charge from '$lib/solver/charge/formulas';
import { chargeHeat, chargeOutlet } from '$lib/solver/charge/coolingFormulas';
import { exchangerArrangement } from '$lib/solver/cores/arrangement';
import type { CoreModel } from '$lib/solver/cores/conductance';
import { effectivenessFormula } from '$lib/solver/cores/effectivenessFormulas';
import {
  capacityRatio,
  hAAir,
  liquidCapacityRate,
  overallConductance,
  transferUnits,
} from '$lib/solver/cores/formulas';
import { warmedOutlet } from '$lib/solver/cores/ratioFormulas';
import { formulaLine, type Line } from '$lib/solver/formula';
import type { ChargeState, CoreState, Loop, SteadySolution } from '$lib/solver/loop/types';
import { farFrom, liquidSideLines } from './liquidSideLines';
import { AIR_PROPERTIES, type CoreName } from './ratingLines';

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

export function chargeLines(
  loop: Loop,
  model: CoreModel,
  s: SteadySolution,
  state: ChargeState,
  core: CoreState,
): Line[] {
  const cooler = loop.chargeCooler;
  const C_min = Math.min(core.C_air, core.C_liquid);
  const C_max = Math.max(core.C_air, core.C_liquid);
  const at = (key: string, says: string) => ({
    id: `charge.${key}`,
    statement: `Charge cooler: ${says}`,
  });
  return [
    formulaLine(
      hAAir,
      {
        hA_r: model.rated.hA_air,
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
      at('ua', 'conductance at these flows'),
    ),
    formulaLine(
      charge.airCapacityRate,
      { m: state.massFlow, c_p: state.airCp },
      { ...at('air-rate', 'heat its air carries per degree'), notes: [AIR_PROPERTIES] },
    ),
    liquidRateLine(s),
    formulaLine(transferUnits, { UA: core.UA, C_min }, at('ntu', 'transfer units')),
    formulaLine(capacityRatio, { C_min, C_max }, at('ratio', 'ratio of the two streams')),
    formulaLine(
      effectivenessFormula(
        exchangerArrangement(cooler.arrangement, core.C_air <= core.C_liquid),
        core,
      ),
      { NTU: core.NTU, Cr: core.Cr },
      {
        ...at('effectiveness', 'share of the possible cooling that it does'),
        why: 'Near one, the air leaves at the temperature of the liquid, and a larger core changes nothing.',
      },
    ),
    formulaLine(
      chargeHeat,
      { eps: core.effectiveness, C_min, T_2: core.airIn, T_l: core.liquidIn },
      at('heat', 'heat from the charge air into the liquid'),
    ),
    formulaLine(
      chargeOutlet,
      { T_2: core.airIn, Q: core.heat, C_a: core.C_air },
      at('air-out', 'charge air to the engine'),
    ),
    formulaLine(
      warmedOutlet,
      { T_in: core.liquidIn, Q: core.heat, C: core.C_liquid },
      at('liquid-out', 'liquid leaving the core, before the engine warms it'),
    ),
  ];
}

/** Lines of the charge cooler: how much of the charge heat goes into the liquid. */
import * as charge from '$lib/solver/charge/coolingFormulas';
import { exchangerArrangement } from '$lib/solver/cores/arrangement';
import { effectivenessFormula } from '$lib/solver/cores/effectivenessFormulas';
import { capacityRatio, liquidCapacityRate, transferUnits } from '$lib/solver/cores/formulas';
import { formulaLine, type Line } from '$lib/solver/formula';
import type { Arrangement, CoreState, SteadySolution } from '$lib/solver/loop/types';

/** Heat the liquid carries per degree; every drop and rise along the loop divides by it. */
export function liquidRate({ liquid, operating }: SteadySolution): Line {
  return formulaLine(
    liquidCapacityRate,
    { rho: liquid.density, V: operating.flow, c_p: liquid.specificHeat },
    {
      id: 'liquid-capacity-rate',
      statement: 'Heat the liquid carries per degree',
      why: 'The flow is the one at which pump and restriction agree; see the sheet on them.',
    },
  );
}

export function coolerLines(arrangement: Arrangement, s: SteadySolution, core: CoreState): Line[] {
  const C_min = Math.min(core.C_air, core.C_liquid);
  const C_max = Math.max(core.C_air, core.C_liquid);
  return [
    formulaLine(
      transferUnits,
      { UA: core.UA, C_min },
      {
        id: 'charge-cooler-ntu',
        statement: 'Size of the charge cooler for these flows, in transfer units',
        why: 'UA is worked out on the sheet of the exchangers. A core sized for a pull is far too large for a cruise.',
      },
    ),
    formulaLine(
      capacityRatio,
      { C_min, C_max },
      {
        id: 'charge-cooler-cr',
        statement: 'Ratio of the two streams',
        why: 'Near nought, the liquid hardly warms while it cools the air; near one, both share the change.',
      },
    ),
    formulaLine(
      effectivenessFormula(exchangerArrangement(arrangement, core.C_air <= core.C_liquid), core),
      { NTU: core.NTU, Cr: core.Cr },
      {
        id: 'charge-cooler-effectiveness',
        statement: 'Share of the possible cooling that it does',
        why: 'Near one, the charge leaves at the temperature of the liquid: the intake reading is the liquid.',
      },
    ),
    formulaLine(
      charge.chargeHeat,
      {
        eps: core.effectiveness,
        C_min,
        T_2: core.airIn,
        T_l: s.temperatures.chargeCoolerIn,
      },
      {
        statement: 'Heat from the charge air into the liquid',
        why: 'Negative means that hot liquid heats the charge.',
      },
    ),
    formulaLine(
      charge.chargeOutlet,
      { T_2: core.airIn, Q: core.heat, C_a: core.C_air },
      {
        statement: 'Charge air to the engine',
        why: 'It sets density and knock: this is what the loop is there for.',
      },
    ),
    formulaLine(
      charge.intakeAboveLiquid,
      { T_3: core.airOut, T_l: s.temperatures.chargeCoolerIn },
      {
        statement: 'Charge air above the liquid that cools it',
        why: 'A few degrees at cruise: then cooling the liquid is all that helps.',
      },
    ),
    formulaLine(
      charge.coolantRise,
      {
        Q: core.heat,
        rho: s.liquid.density,
        V: s.operating.flow,
        c_p: s.liquid.specificHeat,
      },
      {
        statement: 'Rise of the liquid in one pass through the charge cooler',
        why: 'A large rise says that more flow would help the charge; a small one that it would not.',
      },
    ),
  ];
}

/** Lines that turn the rating point of a core into its conductance. */
import { airCp } from '$lib/solver/air/air';
import { airCapacityRate } from '$lib/solver/charge/formulas';
import { exchangerArrangement } from '$lib/solver/cores/arrangement';
import type { CoreModel } from '$lib/solver/cores/conductance';
import { ratedConductance } from '$lib/solver/cores/effectivenessFormulas';
import { effectivenessFromHeat, liquidCapacityRate } from '$lib/solver/cores/formulas';
import type { Note } from '$lib/solver/errors';
import { formulaLine, type Line } from '$lib/solver/formula';
import type { Coolant, Core } from '$lib/solver/loop/types';

/** Which core, as ids and statements name it. */
export interface CoreName {
  readonly id: 'charge' | 'front';
  readonly title: 'Charge cooler' | 'Front exchanger';
}

/** Where the numbers of the air come from. */
export const AIR_PROPERTIES: Note = {
  code: 'air-properties',
  message: 'Specific heat of dry air at its inlet temperature, from the NASA polynomials.',
};

/** Where the numbers of a liquid come from. */
export const liquidProperties = ({ kind }: Coolant, where: string): Note => ({
  code: 'liquid-properties',
  message: `Properties of the liquid ${where}: ${
    kind === 'water' ? 'IAPWS formulations for water' : 'polynomials of Melinder, IIR 2010'
  }.`,
});

/** From one rating point to the conductance of the whole core. */
export function ratingLines(
  { id, title }: CoreName,
  core: Core,
  { rated }: Pick<CoreModel, 'rated'>,
): Line[] {
  const { rating } = core;
  const C_min = Math.min(rated.C_air, rated.C_liquid);
  const C_max = Math.max(rated.C_air, rated.C_liquid);
  const at = (key: string, says: string) => ({
    id: `${id}.rated-${key}`,
    statement: `${title}, at its rating: ${says}`,
  });
  return [
    formulaLine(
      airCapacityRate,
      { m: rating.airMassFlow, c_p: airCp(rating.airInlet) },
      {
        ...at('air-rate', 'heat the air carries per degree'),
        why: 'A rating at more air than the vehicle has flatters the core.',
        notes: [AIR_PROPERTIES],
      },
    ),
    formulaLine(
      liquidCapacityRate,
      { rho: rated.liquid.rho, V: rating.liquidFlow, c_p: rated.liquid.cp },
      {
        ...at('liquid-rate', 'heat the liquid carries per degree'),
        why: 'A rating with plenty of cold water says little about a small pump and glycol.',
        notes: [liquidProperties(rating.coolant, 'at the rated liquid inlet')],
      },
    ),
    formulaLine(
      effectivenessFromHeat,
      {
        Q: rating.heat,
        C_min,
        T_hot: Math.max(rating.airInlet, rating.liquidInlet),
        T_cold: Math.min(rating.airInlet, rating.liquidInlet),
      },
      {
        ...at('effectiveness', 'share of the greatest possible heat'),
        why: 'A heat without its flows and inlet temperatures says nothing: this ratio is what belongs to the core.',
      },
    ),
    formulaLine(
      ratedConductance(exchangerArrangement(core.arrangement, rated.C_air <= rated.C_liquid)),
      { eps: rated.effectiveness, C_min, C_max },
      {
        ...at('ua', 'conductance that gives this share'),
        why: 'One rating cannot tell its two sides apart; the split between them is an estimate, and two ratings at different flows would settle it.',
      },
    ),
  ];
}

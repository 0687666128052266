/** Lines that carry the liquid side of a core from its rating to this loop's liquid and flow. */
import type { CoreModel } from '$lib/solver/cores/conductance';
import { hALiquid, reynoldsRatio } from '$lib/solver/cores/formulas';
import type { Note } from '$lib/solver/errors';
import { formulaLine, type FormulaLine } from '$lib/solver/formula';
import type { Core, Loop, SteadySolution } from '$lib/solver/loop/types';
import { liquidProperties, type CoreName } from './ratingLines';

/** Reynolds ratio, then hA of the whole core on its liquid side: the last line. */
export function liquidSideLines(
  { id, title }: CoreName,
  core: Core,
  { rated, ratedUA }: CoreModel,
  { coolant }: Loop,
  { liquid, operating }: SteadySolution,
  far: readonly Note[],
): [FormulaLine, FormulaLine] {
  const re = formulaLine(
    reynoldsRatio,
    {
      rho: liquid.density,
      V: operating.flow,
      mu: liquid.viscosity,
      rho_r: rated.liquid.rho,
      V_r: core.rating.liquidFlow,
      mu_r: rated.liquid.mu,
    },
    {
      id: `${id}.reynolds-ratio`,
      statement: `${title}: Reynolds number of its liquid, over that of the rating`,
      why: 'Passages and their width cancel in the ratio, so nobody has to measure them.',
      notes: [liquidProperties(coolant, 'leaving the reservoir'), ...far],
    },
  );
  const side = formulaLine(
    hALiquid,
    {
      UA_r: ratedUA,
      s_a: core.airShare,
      x_Re: re.value,
      n: core.liquidExponent,
      k: liquid.conductivity,
      k_r: rated.liquid.k,
      c_p: liquid.specificHeat,
      mu: liquid.viscosity,
      c_pr: rated.liquid.cp,
      mu_r: rated.liquid.mu,
    },
    {
      id: `${id}.liquid-side`,
      statement: `${title}: conductance of its liquid side here`,
      why: 'In narrow tubes with cold glycol it hardly follows the flow: the exponent is then near 0.3.',
    },
  );
  return [re, side];
}

/** Notes of a core about one of its flows. */
export const farFrom = (notes: readonly Note[], flow: 'airMassFlow' | 'liquidFlow') =>
  notes
    .filter(({ code, quantity }) => code === 'core-far-from-rating' && quantity?.endsWith(flow))
    .slice(0, 1);

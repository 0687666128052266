/** Lines of the front exchanger in the duty shown, zone by zone of its face. */
import { streamOutlet } from '$lib/solver/cores/formulas';
import { formulaLine, type Line } from '$lib/solver/formula';
import { frontDropLine, heatToFreshAir, zonesTogether } from '$lib/solver/loop/frontFormulas';
import { frontChanged } from '$lib/solver/loop/frontWhatIf';
import type { PreparedLoop } from '$lib/solver/loop/prepare';
import type { SteadySolution } from '$lib/solver/loop/types';
import { farFrom, liquidSideLines } from './liquidSideLines';
import type { CoreName } from './ratingLines';
import { zoneLines } from './zoneLines';

export const FRONT: CoreName = { id: 'front', title: 'Front exchanger' };

export function frontLines(prepared: PreparedLoop, s: SteadySolution): Line[] {
  const { loop, frontCore: model } = prepared;
  const { site, frontExchanger: core } = loop;
  const { front, air } = s;
  const exchange = frontChanged(prepared, s);
  const side = liquidSideLines(FRONT, core, model, loop, s, farFrom(front.notes, 'liquidFlow'));
  const zones = air.zones.flatMap((zone, i) =>
    zone.airMassFlow > 0
      ? [zoneLines({ loop, model, s, side: side[1].value, zone, state: exchange.zones[i]!.core })]
      : [],
  );
  const [first, second] = zones.map((lines) => lines.at(-1)!.value);
  if (first === undefined) return side;

  const together =
    second === undefined
      ? []
      : [
          formulaLine(
            zonesTogether,
            { G_s: first, G_o: second },
            at('together', 'heat per degree above the fresh air, whole face'),
          ),
        ];
  const heat = formulaLine(
    heatToFreshAir,
    {
      G: together[0]?.value ?? first,
      T_f: front.liquidIn,
      T_amb: site.ambientTemperature,
      dT_stack: air.stackRise,
    },
    {
      ...at('heat', 'heat it gives off'),
      notes: [
        {
          code: 'from-other-sheets',
          message: 'Liquid that enters: sheet 1. Rise of the air by what stands in front: sheet 3.',
        },
      ],
    },
  );
  return [
    ...side,
    ...zones.flat(),
    ...together,
    heat,
    formulaLine(
      frontDropLine,
      { Q_f: heat.value, C_l: front.C_liquid },
      {
        ...at('drop', 'drop of the liquid through it'),
        why: 'Too little flow shows here as a large drop; too small a core does not.',
      },
    ),
    formulaLine(
      streamOutlet,
      { T_in: front.liquidIn, Q: heat.value, C: front.C_liquid },
      {
        ...at('liquid-out', 'liquid leaving it'),
        why: 'Every other place of the loop is as warm as this, or warmer.',
      },
    ),
  ];
}

const at = (key: string, says: string) => ({
  id: `front.${key}`,
  statement: `Front exchanger: ${says}`,
});

/** Lines of the front exchanger in the duty shown, zone by zone of its face. */
import { streamOutlet } from '$lib/solver/cores/formulas';
import { facePaths, type FacePath } from '$lib/solver/airside/overlap';
import { formulaLine, type FormulaLine, type Line } from '$lib/solver/formula';
import {
  fourPartsTogether,
  frontDropLine,
  heatToFreshAir,
  twoPartsTogether,
  zonesTogether,
} from '$lib/solver/loop/frontFormulas';
import { frontChanged } from '$lib/solver/loop/frontWhatIf';
import type { PreparedLoop } from '$lib/solver/loop/prepare';
import type { SteadySolution } from '$lib/solver/loop/types';
import { farFrom, liquidSideLines } from './liquidSideLines';
import type { CoreName } from './ratingLines';
import { pathName, zoneLines } from './zoneLines';

export const FRONT: CoreName = { id: 'front', title: 'Front exchanger' };

export function frontLines(prepared: PreparedLoop, s: SteadySolution): Line[] {
  const { loop, frontCore: model } = prepared;
  const { site, frontExchanger: core } = loop;
  const { front, air } = s;
  const exchange = frontChanged(prepared, s);
  const side = liquidSideLines(FRONT, core, model, loop, s, farFrom(front.notes, 'liquidFlow'));
  const paths = facePaths(air).flatMap((zone, i) =>
    zone.airMassFlow > 0
      ? [
          {
            zone,
            lines: zoneLines({
              loop,
              model,
              s,
              side: side[1].value,
              zone,
              state: exchange.zones[i]!.core,
            }),
          },
        ]
      : [],
  );
  if (paths.length === 0) return side;
  const perDegree = paths.map(({ lines }) => lines.at(-1)!.value);
  const given = { T_f: front.liquidIn, T_amb: site.ambientTemperature };
  const heats = paths.some(({ zone }) => zone.covered !== null)
    ? partHeats(paths, given)
    : wholeHeat(perDegree, { ...given, dT_stack: air.stackRise });
  const heat = heats.at(-1)!;
  return [
    ...side,
    ...paths.flatMap(({ lines }) => lines),
    ...heats,
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

interface Ends {
  readonly T_f: number;
  readonly T_amb: number;
}

/** One air for all of the face: conductances add up, and meet it together. */
function wholeHeat(
  [first, second]: readonly number[],
  ends: Ends & { readonly dT_stack: number },
): FormulaLine[] {
  const together =
    second === undefined
      ? []
      : [
          formulaLine(
            zonesTogether,
            { G_s: first!, G_o: second },
            {
              ...at('together', 'heat per degree above the fresh air, whole face'),
              why: 'One figure to compare cores, fans and shrouds by, whatever the day is like.',
            },
          ),
        ];
  return [
    ...together,
    formulaLine(
      heatToFreshAir,
      { G: together[0]?.value ?? first!, ...ends },
      { ...at('heat', 'heat it gives off'), why: HEAT_WHY, notes: [FROM_OTHERS] },
    ),
  ];
}

/** Covered and clear parts meet airs of their own: each gives its heat, then they are added. */
function partHeats(
  paths: readonly { readonly zone: FacePath; readonly lines: readonly FormulaLine[] }[],
  ends: Ends,
): FormulaLine[] {
  const each = paths.map(({ zone, lines }) => {
    const { key, says } = pathName(zone);
    return formulaLine(
      heatToFreshAir,
      { G: lines.at(-1)!.value, ...ends, dT_stack: zone.rise },
      {
        id: `front.${key}.heat`,
        statement: `Front exchanger, ${says}: heat it gives off`,
        why: zone.covered
          ? 'Less air, and warmer: what the other cores cost this one.'
          : 'Cool air in plenty: this part works as if nothing else stood there.',
        notes: [FROM_OTHERS],
      },
    );
  });
  const x = Object.fromEntries(each.map(({ value }, i) => [`Q_${i + 1}`, value]));
  return [
    ...each,
    formulaLine(each.length > 2 ? fourPartsTogether : twoPartsTogether, x, {
      ...at('heat', 'heat it gives off'),
      why: HEAT_WHY,
    }),
  ];
}

const HEAT_WHY =
  'At balance it is all that the liquid takes up on its way round: what it cannot give off here it keeps.';
const FROM_OTHERS = {
  code: 'from-other-sheets',
  message: 'Liquid that enters: sheet 1. Rise of the air by other cores: sheet 3.',
};

const at = (key: string, says: string) => ({
  id: `front.${key}`,
  statement: `Front exchanger: ${says}`,
});

/** Lines of the front exchanger in the duty shown, zone by zone of its face. */
import { airCp } from '$lib/solver/air/air';
import { faceArea, recirculation, stackRise } from '$lib/solver/airside/formulas';
import { streamOutlet } from '$lib/solver/cores/formulas';
import { formulaLine, type Line } from '$lib/solver/formula';
import {
  freshAir,
  frontApproach,
  frontDropLine,
  heatToFreshAir,
  zonesTogether,
} from '$lib/solver/loop/frontFormulas';
import { frontChanged } from '$lib/solver/loop/frontWhatIf';
import type { PreparedLoop } from '$lib/solver/loop/prepare';
import type { Loop, SteadySolution } from '$lib/solver/loop/types';
import { farFrom, liquidSideLines } from './liquidSideLines';
import { AIR_PROPERTIES, type CoreName } from './ratingLines';
import { zoneLines } from './zoneLines';

export const FRONT: CoreName = { id: 'front', title: 'Front exchanger' };

export function frontLines(prepared: PreparedLoop, s: SteadySolution): Line[] {
  const { loop, frontCore: model } = prepared;
  const { site, airPath, frontExchanger: core } = loop;
  const { front, air } = s;
  const exchange = frontChanged(prepared, s);
  const side = liquidSideLines(FRONT, core, model, loop, s, farFrom(front.notes, 'liquidFlow'));
  const area = formulaLine(faceArea, { w: core.width, h: core.height }, at('face', 'finned face'));
  const before = airBefore(loop, s);
  const zones = air.zones.flatMap((zone, i) =>
    zone.airMassFlow > 0
      ? [
          zoneLines({
            loop,
            model,
            s,
            area: area.value,
            side: side[2].value,
            zone,
            state: exchange.zones[i]!.core,
          }),
        ]
      : [],
  );
  const [first, second] = zones.map((lines) => lines.at(-1)!.value);
  if (first === undefined) return [...side, area, ...before];

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
    { G: together[0]?.value ?? first, T_f: front.liquidIn, T_fresh: exchange.freshAir },
    at('heat', 'heat it gives off'),
  );
  const drop = formulaLine(
    frontDropLine,
    { Q_f: heat.value, C_l: front.C_liquid },
    {
      ...at('drop', 'drop of the liquid through it'),
      why: 'Too little flow shows here as a large drop; too small a core does not.',
    },
  );
  return [
    ...side,
    area,
    ...before,
    ...zones.flat(),
    ...together,
    heat,
    drop,
    formulaLine(
      streamOutlet,
      { T_in: front.liquidIn, Q: heat.value, C: front.C_liquid },
      at('liquid-out', 'liquid leaving it'),
    ),
    formulaLine(
      frontApproach,
      { T_f: front.liquidIn, dT_f: drop.value, T_amb: site.ambientTemperature },
      {
        ...at('approach', 'liquid leaving, above the day'),
        why: 'Every other place of the loop is as far above the day as this, or further.',
      },
    ),
  ];

  function airBefore({ duties }: Loop, { duty }: SteadySolution): Line[] {
    const lines: Line[] = [];
    if (airPath.recirculation > 0 && airPath.recirculationFade > 0) {
      lines.push(
        formulaLine(
          recirculation,
          {
            r_0: airPath.recirculation,
            v: duties[duty].vehicleSpeed,
            v_f: airPath.recirculationFade,
          },
          {
            ...at('recirculation', 'hot air that comes round again'),
            why: 'It slips through unsealed gaps beside the core and heats the air the core is given.',
          },
        ),
      );
    }
    if (airPath.stackHeat > 0 && air.totalMassFlow > 0) {
      lines.push(
        formulaLine(
          stackRise,
          { Q_s: airPath.stackHeat, m_a: air.totalMassFlow, cp: airCp(site.ambientTemperature) },
          {
            ...at('stack-rise', 'air warmed by what stands in front'),
            notes: [AIR_PROPERTIES],
          },
        ),
        formulaLine(
          freshAir,
          { T_amb: site.ambientTemperature, dT_stack: air.stackRise },
          at('fresh-air', 'fresh air as it is offered to the core'),
        ),
      );
    }
    return lines;
  }
}

const at = (key: string, says: string) => ({
  id: `front.${key}`,
  statement: `Front exchanger: ${says}`,
});

/** Lines of the front exchanger in the duty shown, zone by zone of its face. */
import { airCp } from '$lib/solver/air/air';
import {
  airCapacityRate,
  airMassFlow,
  faceArea,
  recirculation,
  stackRise,
} from '$lib/solver/airside/formulas';
import { exchangerArrangement } from '$lib/solver/cores/arrangement';
import type { CoreModel } from '$lib/solver/cores/conductance';
import { effectivenessFormula } from '$lib/solver/cores/effectivenessFormulas';
import { capacityRatio, streamOutlet, transferUnits } from '$lib/solver/cores/formulas';
import { formulaLine, type FormulaLine, type Line } from '$lib/solver/formula';
import {
  freshAir,
  frontApproach,
  frontDropLine,
  heatToFreshAir,
  zoneAirSide,
  zoneConductance,
  zoneLiquidRate,
  zonesTogether,
  zoneToFreshAir,
} from '$lib/solver/loop/frontFormulas';
import { frontChanged } from '$lib/solver/loop/frontWhatIf';
import type { PreparedLoop } from '$lib/solver/loop/prepare';
import type { CoreState, FaceZone, Loop, SteadySolution } from '$lib/solver/loop/types';
import { farFrom, liquidSideLines } from './liquidSideLines';
import { AIR_PROPERTIES, type CoreName } from './ratingLines';

export const FRONT: CoreName = { id: 'front', title: 'Front exchanger' };

const ZONE = { shrouded: 'behind the shroud', open: 'open face' } as const;

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

interface ZoneContext {
  readonly loop: Loop;
  readonly model: CoreModel;
  readonly s: SteadySolution;
  /** Finned face, m². */
  readonly area: number;
  /** Liquid side of the whole core, W/K. */
  readonly side: number;
  readonly zone: FaceZone;
  readonly state: CoreState;
}

/** One zone: from its air to heat per degree, the last line. */
function zoneLines({ loop, model, s, area, side, zone, state }: ZoneContext): FormulaLine[] {
  const { frontExchanger: core } = loop;
  const of = (key: string, says: string) => ({
    id: `front.${zone.zone}.${key}`,
    statement: `Front exchanger, ${ZONE[zone.zone]}: ${says}`,
  });
  const x = zone.share;
  const C_min = Math.min(state.C_air, state.C_liquid);
  const C_max = Math.max(state.C_air, state.C_liquid);
  const mass = formulaLine(
    airMassFlow,
    { rho: s.air.density, u: zone.faceVelocity, A: area, x },
    {
      ...of('air', 'air through it'),
      why: 'The face velocity is that of the sheet on fans and face airflow.',
    },
  );
  const airSide = formulaLine(
    zoneAirSide,
    {
      hA_r: model.rated.hA_air,
      m: mass.value,
      x,
      m_r: core.rating.airMassFlow,
      n: core.airExponent,
    },
    {
      ...of('air-side', 'air side of the core, were all of it in this air'),
      notes: farFrom(state.notes, 'airMassFlow'),
    },
  );
  return [
    mass,
    airSide,
    formulaLine(
      zoneConductance,
      { x, c: core.cleanliness, hA_a: airSide.value, hA_l: side },
      of('ua', 'its share of the conductance'),
    ),
    formulaLine(
      airCapacityRate,
      { m_a: mass.value, cp: airCp(state.airIn) },
      { ...of('air-rate', 'heat its air carries per degree'), notes: [AIR_PROPERTIES] },
    ),
    formulaLine(
      zoneLiquidRate,
      { x, C_l: s.front.C_liquid },
      of('liquid-rate', 'heat its liquid carries per degree'),
    ),
    formulaLine(transferUnits, { UA: state.UA, C_min }, of('ntu', 'transfer units')),
    formulaLine(capacityRatio, { C_min, C_max }, of('ratio', 'ratio of the two streams')),
    formulaLine(
      effectivenessFormula(
        exchangerArrangement(core.arrangement, state.C_air <= state.C_liquid),
        state,
      ),
      { NTU: state.NTU, Cr: state.Cr },
      of('effectiveness', 'share of the greatest possible heat'),
    ),
    formulaLine(
      zoneToFreshAir,
      { eps: state.effectiveness, C_min, r: s.air.recirculation, C_a: state.C_air },
      of('per-degree', 'heat per degree above the fresh air'),
    ),
  ];
}

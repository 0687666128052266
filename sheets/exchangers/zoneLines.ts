/** Lines of one zone of the front exchanger's face: behind the shroud, or open. */
import { airCp } from '$lib/solver/air/air';
import { airCapacityRate, airMassFlow } from '$lib/solver/airside/formulas';
import { exchangerArrangement } from '$lib/solver/cores/arrangement';
import type { CoreModel } from '$lib/solver/cores/conductance';
import { effectivenessFormula } from '$lib/solver/cores/effectivenessFormulas';
import { capacityRatio, transferUnits } from '$lib/solver/cores/formulas';
import { formulaLine, type FormulaLine } from '$lib/solver/formula';
import {
  zoneAirSide,
  zoneConductance,
  zoneLiquidRate,
  zoneToFreshAir,
} from '$lib/solver/loop/frontFormulas';
import type { CoreState, FaceZone, Loop, SteadySolution } from '$lib/solver/loop/types';
import { farFrom } from './liquidSideLines';
import { AIR_PROPERTIES } from './ratingLines';

const ZONE = { shrouded: 'behind the shroud', open: 'open face' } as const;

export interface ZoneContext {
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
export function zoneLines({ loop, model, s, area, side, zone, state }: ZoneContext): FormulaLine[] {
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

/** Lines of one zone of the front exchanger's face: behind the shroud, or open. */
import { airCp } from '$lib/solver/air/air';
import type { CoreModel } from '$lib/solver/cores/conductance';
import { formulaLine, type FormulaLine } from '$lib/solver/formula';
import {
  zoneAirRate,
  zoneAirSide,
  zoneConductance,
  zoneToFreshAir,
} from '$lib/solver/loop/frontFormulas';
import type { FacePath } from '$lib/solver/airside/overlap';
import type { CoreState, Loop, SteadySolution } from '$lib/solver/loop/types';
import { farFrom } from './liquidSideLines';
import { AIR_PROPERTIES } from './ratingLines';
import { shareLines, smallerOf } from './shareLines';

const ZONE = { shrouded: 'behind the shroud', open: 'open face' } as const;

/** Key and words of a path through the face. */
export const pathName = ({ zone, covered }: FacePath) =>
  covered === null
    ? { key: zone as string, says: ZONE[zone] as string }
    : covered
      ? { key: `${zone}.covered`, says: `${ZONE[zone]}, covered` }
      : { key: `${zone}.clear`, says: `${ZONE[zone]}, clear` };

export interface ZoneContext {
  readonly loop: Loop;
  readonly model: CoreModel;
  readonly s: SteadySolution;
  /** Liquid side of the whole core, W/K. */
  readonly side: number;
  readonly zone: FacePath;
  readonly state: CoreState;
}

/** One zone: from its air to heat per degree, the last line. */
export function zoneLines({ loop, model, s, side, zone, state }: ZoneContext): FormulaLine[] {
  const { frontExchanger: core } = loop;
  const path = pathName(zone);
  const of = (key: string, says: string) => ({
    id: `front.${path.key}.${key}`,
    statement: `Front exchanger, ${path.says}: ${says}`,
  });
  const x = zone.share;
  const c_p = airCp(state.airIn);
  const { C_liquid: C_l } = s.front;
  const rate = formulaLine(
    zoneAirRate,
    { rho: s.air.density, u: zone.faceVelocity, w: core.width, h: core.height, x, c_p },
    {
      ...of('air-rate', 'heat its air carries per degree'),
      why: 'Face velocity and density of the air are those of sheet 3.',
      notes: [AIR_PROPERTIES],
    },
  );
  const airSide = formulaLine(
    zoneAirSide,
    {
      UA_r: model.ratedUA,
      s_a: core.airShare,
      C_a: rate.value,
      x,
      c_p,
      m_r: core.rating.airMassFlow,
      n: core.airExponent,
    },
    {
      ...of('air-side', 'air side of the core, were all of it in this air'),
      why: 'Mostly the weaker side of a front exchanger: what fans and shroud bring, they bring here.',
      notes: farFrom(state.notes, 'airMassFlow'),
    },
  );
  return [
    rate,
    airSide,
    formulaLine(
      zoneConductance,
      { x, c: core.cleanliness, hA_a: airSide.value, hA_l: side },
      {
        ...of('ua', 'its share of the conductance'),
        why: 'The weaker of the two sides sets it: doubling the stronger one brings little.',
      },
    ),
    ...shareLines(
      of,
      {
        state,
        arrangement: core.arrangement,
        why: 'Near one, this air leaves as hot as the liquid: only more air then carries more.',
      },
      { x, C_l },
    ),
    formulaLine(
      zoneToFreshAir(smallerOf(state)),
      { eps: state.effectiveness, r: s.air.recirculation, C_a: state.C_air, x, C_l },
      {
        ...of('per-degree', 'heat per degree above the fresh air'),
        why: 'The share of hot air that comes round again is that of sheet 3.',
      },
    ),
  ];
}

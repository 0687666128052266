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
import type { CoreState, FaceZone, Loop, SteadySolution } from '$lib/solver/loop/types';
import { farFrom } from './liquidSideLines';
import { AIR_PROPERTIES } from './ratingLines';
import { shareLines, smallerOf } from './shareLines';

const ZONE = { shrouded: 'behind the shroud', open: 'open face' } as const;

export interface ZoneContext {
  readonly loop: Loop;
  readonly model: CoreModel;
  readonly s: SteadySolution;
  /** Liquid side of the whole core, W/K. */
  readonly side: number;
  readonly zone: FaceZone;
  readonly state: CoreState;
}

/** One zone: from its air to heat per degree, the last line. */
export function zoneLines({ loop, model, s, side, zone, state }: ZoneContext): FormulaLine[] {
  const { frontExchanger: core } = loop;
  const of = (key: string, says: string) => ({
    id: `front.${zone.zone}.${key}`,
    statement: `Front exchanger, ${ZONE[zone.zone]}: ${says}`,
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
      notes: farFrom(state.notes, 'airMassFlow'),
    },
  );
  return [
    rate,
    airSide,
    formulaLine(
      zoneConductance,
      { x, c: core.cleanliness, hA_a: airSide.value, hA_l: side },
      of('ua', 'its share of the conductance'),
    ),
    ...shareLines(of, { state, arrangement: core.arrangement }, { x, C_l }),
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

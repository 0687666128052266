/** Lines of how much other cores warm this one's air, over all of the face or over a share of it. */
import { airCp } from '$lib/solver/air/air';
import {
  coveredFaceVelocity,
  coveredMassFlow,
  coveredRise,
  riseComingRound,
  riseMixed,
  stackRise,
} from '$lib/solver/airside/formulas';
import { coveredShare, stackHeatOnFace } from '$lib/solver/airside/overlap';
import { formulaLine, type FormulaLine } from '$lib/solver/formula';
import type { Loop, SteadySolution } from '$lib/solver/loop/types';

interface Whole {
  /** Air through all of the core, kg/s, and its face, m². */
  readonly mass: number;
  readonly area: number;
}

export function stackLines(loop: Loop, s: SteadySolution, { mass, area }: Whole): FormulaLine[] {
  const { airPath, site } = loop;
  const Q_s = stackHeatOnFace(airPath);
  if (!(Q_s > 0)) return [];
  const { air } = s;
  const cp = airCp(site.ambientTemperature);
  const notes = [AMBIENT_CP_NOTE, ...s.notes.filter(({ code }) => code.startsWith('air.stack'))];
  const words = {
    id: 'stack-rise',
    statement: 'Rise of the air by the other cores',
    why: 'The front exchanger never gets colder air than this.',
    notes,
  };
  const behind = airPath.stackPlace === 'behind';
  const comesRound = {
    ...words,
    statement: 'Rise of the air by the other cores, of which only what comes round again counts',
    why: 'Standing behind, they cost this core air but no heat, save what leaks round to the front.',
  };
  if (air.zones[0]!.parts === undefined) {
    return [
      behind
        ? formulaLine(riseComingRound, { r: air.recirculation, Q_s, m_c: mass, cp }, comesRound)
        : formulaLine(stackRise, { Q_s, m_a: mass, cp }, words),
    ];
  }

  const [shrouded, open] = air.zones.map(({ parts }) => parts![0].faceVelocity);
  const velocity =
    open === undefined
      ? []
      : [
          formulaLine(
            coveredFaceVelocity,
            { u_cs: shrouded!, u_co: open, x: air.zones[0]!.share },
            {
              id: 'covered-velocity',
              statement: 'Face velocity where covered, over shrouded and open face',
              why: 'It tells how much air takes up the heat of the other cores.',
            },
          ),
        ];
  const covered = formulaLine(
    coveredMassFlow,
    {
      rho: air.density,
      u_c: velocity[0]?.value ?? shrouded!,
      A: area,
      phi: coveredShare(airPath),
    },
    {
      id: 'covered-mass-flow',
      statement: 'Air that passes the other cores',
      why: 'All their heat goes into this air and none into the rest.',
    },
  );
  const rise = behind
    ? formulaLine(
        riseComingRound,
        { r: air.recirculation, Q_s, m_c: covered.value, cp },
        comesRound,
      )
    : formulaLine(
        coveredRise,
        { Q_s, m_c: covered.value, cp },
        {
          ...words,
          statement: 'Rise of the covered air by the other cores',
          why: 'The covered part of this core never gets colder air than this; the clear part gets the air of the day.',
        },
      );
  return [
    ...velocity,
    covered,
    rise,
    formulaLine(
      riseMixed,
      { dT_c: rise.value, m_c: covered.value, m_a: mass },
      {
        id: 'stack-rise-mixed',
        statement: 'The same rise, all air taken together',
        why: 'One thermometer behind a mixing duct would see this, and neither part of the core does.',
      },
    ),
  ];
}

const AMBIENT_CP_NOTE = {
  code: 'air.specific-heat-ambient',
  message: 'Specific heat of air at ambient temperature: NASA/TP-2002-211556.',
};

/** Lines of the suction side. */
import { pressureAtAltitude } from '$lib/solver/fluids/formulas';
import { formulaLine, type Line } from '$lib/solver/formula';
import type { Loop, SteadySolution } from '$lib/solver/loop/types';
import {
  headLeftFormula,
  npshAvailableFormula,
  suctionMarginFormula,
} from '$lib/solver/suction/formulas';
import { levelAboveEye } from '$lib/solver/suction/inlet';

/** How far the liquid at the pump's inlet is from boiling, as head of itself. */
export function suctionLines(loop: Loop, s: SteadySolution): Line[] {
  const { npshRequired: NPSH_R } = s.operating;
  const air = formulaLine(
    pressureAtAltitude,
    { h: loop.site.altitude },
    {
      id: 'ambient-pressure',
      statement: 'Pressure of the air at this altitude',
      why: 'It is what pushes the liquid into the pump; there is less of it up high.',
    },
  );
  const available = formulaLine(
    npshAvailableFormula,
    {
      p_ambient: air.value,
      p_tank_gauge: loop.reservoir.capGauge,
      p_vapour: s.liquid.vapourPressure,
      rho: s.liquid.density,
      z: levelAboveEye(loop),
      h_suction: s.operating.shares[0]!.head,
    },
    {
      id: 'npsh-available',
      statement: 'Suction head available at the pump',
      why: 'Hot liquid, altitude and a narrow suction hose take it away; a tank above the pump and a cap give it.',
      notes: [VAPOUR_NOTE, ...s.operating.notes.filter((n) => n.code === 'suction.cap-pressure')],
    },
  );
  return [
    air,
    available,
    formulaLine(
      suctionMarginFormula,
      { NPSH_A: available.value, NPSH_R },
      {
        id: 'suction-margin',
        statement: 'Suction head to spare',
        why: 'Required means that the head has fallen by 3 %; noise and wear may start above that. Sheet 7 takes it apart.',
      },
    ),
    ...(loop.pump.cavitation === 'counted' && NPSH_R > 0
      ? [
          formulaLine(
            headLeftFormula,
            { NPSH_A: available.value, NPSH_R },
            {
              id: 'head-left',
              statement: 'Share of its head that the pump keeps at that',
              why: 'What is missing is flow that no voltage brings back.',
            },
          ),
        ]
      : []),
  ];
}

const VAPOUR_NOTE = {
  code: 'liquid.vapour-pressure',
  message:
    'Vapour pressure at the reservoir’s outlet: IAPWS for water, lowered by Raoult’s law for a mixture.',
};

/** Lines of the suction side. */
import { pressureAtAltitude } from '$lib/solver/fluids/formulas';
import { formulaLine, type Line } from '$lib/solver/formula';
import type { Loop, SteadySolution } from '$lib/solver/loop/types';
import { npshAvailableFormula, suctionMarginFormula } from '$lib/solver/suction/formulas';

/** How far the liquid at the pump's inlet is from boiling, as head of itself. */
export function suctionLines(loop: Loop, s: SteadySolution): Line[] {
  const air = formulaLine(
    pressureAtAltitude,
    { h: loop.site.altitude },
    { id: 'ambient-pressure', statement: 'Pressure of the air at this altitude' },
  );
  const available = formulaLine(
    npshAvailableFormula,
    {
      p_ambient: air.value,
      p_tank_gauge: loop.reservoir.capGauge,
      p_vapour: s.liquid.vapourPressure,
      rho: s.liquid.density,
      z: loop.reservoir.levelAbovePump,
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
      { NPSH_A: available.value, NPSH_R: loop.pump.npshRequired },
      {
        id: 'suction-margin',
        statement: 'Suction head to spare',
        why: 'Required means that the head has fallen by 3 %; noise and wear may start above that.',
      },
    ),
  ];
}

const VAPOUR_NOTE = {
  code: 'liquid.vapour-pressure',
  message:
    'Vapour pressure at the reservoir’s outlet: IAPWS for water, lowered by Raoult’s law for a mixture.',
};

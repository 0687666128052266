/** Lines of what the loop holds: liquid, metal, heat per degree. */
import type { Side } from '$lib/job/evaluate';
import type { Note } from '$lib/solver/errors';
import { coolantProperties } from '$lib/solver/fluids/coolant';
import { volumetricHeatCapacity } from '$lib/solver/fluids/formulas';
import { formulaLine, type FormulaLine, type Line } from '$lib/solver/formula';
import type { PreparedLoop } from '$lib/solver/loop/prepare';
import type { Coolant } from '$lib/solver/loop/types';
import * as reservoir from '$lib/solver/reservoir/formulas';

export interface Capacity {
  readonly lines: readonly Line[];
  readonly V_o: number;
  readonly C_m: number;
  readonly rho_cp: number;
  readonly C: number;
  /** Against water, by volume; null where it is water. */
  readonly share: number | null;
}

const WATER: Coolant = { kind: 'water', massFraction: 0 };

/** Where density and specific heat come from. */
export const propertyNote = ({ kind }: Coolant, where: string): Note => ({
  code: 'properties',
  message: `Properties of the liquid ${where}: ${
    kind === 'water' ? 'IAPWS R7-97(2012)' : 'Melinder, IIR 2010'
  }.`,
});

/** With the liquid's properties at `T`; `where` says in words what temperature that is. */
export function capacityLines(
  side: Side,
  prepared: PreparedLoop,
  T: number,
  where: string,
): Capacity {
  const { loop, values } = side;
  const { hoses, coolant } = loop;
  const si = (path: string) => values[path]!.si!;
  const V_h = formulaLine(
    reservoir.hoseLiquid,
    {
      d_1: hoses.suction.bore,
      L_1: hoses.suction.length,
      d_2: hoses.delivery.bore,
      L_2: hoses.delivery.length,
      d_3: hoses.transfer.bore,
      L_3: hoses.transfer.length,
      d_4: hoses.back.bore,
      L_4: hoses.back.length,
    },
    {
      statement: 'Liquid in the hoses',
      why: 'Long, wide hoses are a second tank that nobody counted.',
    },
  );
  const V_o = formulaLine(
    reservoir.otherLiquid,
    {
      V_c: loop.chargeCooler.liquidVolume,
      V_f: loop.frontExchanger.liquidVolume,
      V_h: V_h.value,
    },
    {
      statement: 'Liquid outside the reservoir',
      why: 'It takes its share of the heat, and it expands too.',
    },
  );
  const C_m = formulaLine(
    reservoir.metalCapacity,
    {
      m_t: si('reservoir.metal'),
      m_c: si('chargeCooler.metal'),
      m_f: si('frontExchanger.metal'),
    },
    {
      statement: 'Heat the metal takes up per degree',
      why: 'Metal warms with the liquid, so a heavy core buffers like some liquid more.',
    },
  );
  const liquid = prepared.liquidAt(T);
  const rho_cp = formulaLine(
    volumetricHeatCapacity,
    { rho: liquid.rho, c_p: liquid.cp },
    {
      statement: 'Heat the liquid takes up per volume and degree',
      why: 'It says what a gallon is worth: water most, glycol less.',
      notes: [propertyNote(coolant, where)],
    },
  );
  const share = againstWater(coolant, T, rho_cp.value);
  const C = formulaLine(
    reservoir.loopCapacity,
    {
      rho_cp: rho_cp.value,
      V_t: loop.reservoir.liquidVolume,
      V_o: V_o.value,
      C_m: C_m.value,
    },
    {
      statement: 'Heat the whole loop takes up per degree',
      why: 'This is all that volume buys: it divides every rise and stretches every time.',
    },
  );
  return {
    lines: [V_h, V_o, C_m, rho_cp, ...(share ? [share] : []), C],
    V_o: V_o.value,
    C_m: C_m.value,
    rho_cp: rho_cp.value,
    C: C.value,
    share: share?.value ?? null,
  };
}

function againstWater(coolant: Coolant, T: number, rho_cp: number): FormulaLine | null {
  // Below freezing there is no water to compare with.
  if (coolant.kind === 'water' || T < 273.15) return null;
  const { rho, cp } = coolantProperties(WATER, T);
  return formulaLine(
    reservoir.againstWater,
    { rho_cp, rho_cp_w: volumetricHeatCapacity.value({ rho, c_p: cp }) },
    {
      statement: 'The same against plain water',
      why: 'Glycol costs capacity: the same tank holds less heat.',
    },
  );
}

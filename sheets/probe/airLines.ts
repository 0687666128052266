/** From altitude or barometer to the temperature of boiling water. */
import { pressureAtAltitude } from '$lib/solver/fluids/formulas';
import { formulaLine, type FormulaLine } from '$lib/solver/formula';
import type { Barometer } from '$lib/solver/instruments/probe/boilPoint';
import { boilPointFormula, stationPressureFormula } from '$lib/solver/instruments/probe/formulas';

/** Pressure of the air as it is known, and the boil point of water under it. */
export function airLines(barometer: Barometer, airPressure: number): FormulaLine[] {
  const statement = 'Pressure of the air here';
  const why = 'Water boils where its vapour pressure reaches that of the air.';
  const air =
    barometer.by === 'altitude'
      ? [formulaLine(pressureAtAltitude, { h: barometer.altitude }, { statement, why })]
      : barometer.by === 'report'
        ? [
            formulaLine(
              stationPressureFormula,
              { p_r: barometer.pressure, h: barometer.altitude },
              { statement, why },
            ),
          ]
        : [];
  return [
    ...air,
    formulaLine(
      boilPointFormula,
      { p_a: airPressure },
      {
        statement: 'Water at an open boil, here and today',
        why: 'Taken for 212 °F at altitude, it would bend the whole range to fit a wrong point.',
      },
    ),
  ];
}

/** Lines from the weather to the compressor's outlet. */
import type { Side } from '$lib/job/evaluate';
import * as charge from '$lib/solver/charge/formulas';
import { formulaLine, type Line } from '$lib/solver/formula';
import { pressureAtAltitude } from '$lib/solver/fluids/formulas';
import type { ChargeState, Duty, SteadySolution } from '$lib/solver/loop/types';

/** Everything ahead of the charge cooler. */
export function airLines({ loop }: Side, duty: Duty, s: SteadySolution, c: ChargeState): Line[] {
  return [
    formulaLine(
      pressureAtAltitude,
      { h: loop.site.altitude },
      {
        statement: 'Pressure of the air at this altitude',
        why: 'Thin air carries less heat off the core, and liquid boils earlier under it.',
      },
    ),
    ...demandLines(duty, s, c),
    ...ratioLines(loop, duty, c),
    ...compressionLines(loop, duty, c),
  ];
}

function demandLines(duty: Duty, s: SteadySolution, c: ChargeState): Line[] {
  const why = 'All charge heat rides on this air: little air at cruise, little heat.';
  if (duty.air.by === 'power') {
    const { power, fuelUse, airFuelRatio } = duty.air;
    return [
      formulaLine(
        charge.airFromPower,
        { P: power, b: fuelUse, AFR: airFuelRatio },
        { statement: 'Air the engine breathes', why },
      ),
    ];
  }
  if (duty.air.by !== 'speed-density' || s.chargeOut === null) return [];
  const { volumetricEfficiency, displacement, rotation } = duty.air;
  return [
    formulaLine(
      charge.manifoldPressure,
      { p_amb: c.ambientPressure, p_g: duty.manifoldGauge },
      {
        statement: 'Manifold pressure, absolute',
        why: 'The compressor works from the air of the day up to this, not from gauge zero.',
      },
    ),
    formulaLine(
      charge.airSpeedDensity,
      {
        eta_v: volumetricEfficiency,
        V_d: displacement,
        N: rotation,
        p_m: c.manifoldPressure,
        T_m: s.chargeOut,
      },
      { statement: 'Air the engine breathes', why },
    ),
  ];
}

function ratioLines(loop: Side['loop'], duty: Duty, c: ChargeState): Line[] {
  const why = 'The pressure ratio, not the boost alone, decides how hot the air leaves.';
  const statement = 'Pressure ratio across the compressor';
  if (duty.bypassRise !== null) {
    return [
      formulaLine(
        charge.pressureRatioOpen,
        { dp_by: duty.bypassRise, p_amb: c.ambientPressure, dp_in: c.inletLoss },
        { statement: `${statement}, bypass open`, why },
      ),
    ];
  }
  const cooler = loop.chargeCooler;
  return [
    ...(duty.air.by === 'speed-density'
      ? []
      : [
          formulaLine(
            charge.manifoldPressure,
            { p_amb: c.ambientPressure, p_g: duty.manifoldGauge },
            {
              statement: 'Manifold pressure, absolute',
              why: 'The compressor works from the air of the day up to this, not from gauge zero.',
            },
          ),
        ]),
    formulaLine(
      charge.coolerLossAtFlow,
      { dp_r: cooler.airLossRated, m: c.massFlow, m_r: cooler.rating.airMassFlow },
      {
        statement: 'Boost lost in the charge cooler',
        why: 'The compressor must make it too, and makes it as heat.',
      },
    ),
    formulaLine(
      charge.pressureRatioClosed,
      {
        p_m: c.manifoldPressure,
        dp_cc: c.coolerAirLoss,
        p_amb: c.ambientPressure,
        dp_in: c.inletLoss,
      },
      { statement, why },
    ),
  ];
}

function compressionLines({ site }: Side['loop'], duty: Duty, c: ChargeState): Line[] {
  const intake = formulaLine(
    charge.intakeTemperature,
    { T_amb: site.ambientTemperature, dT_i: duty.intakeRise },
    {
      statement: 'Fresh air at the intake',
      why: 'Every degree here comes out of the compressor as more than a degree.',
    },
  );
  const lines: Line[] = [intake];
  if (duty.bypassRise !== null && duty.recirculation > 0) {
    const pass = formulaLine(
      charge.passRise,
      { PR: c.pressureRatio, eta: duty.compressorEfficiency },
      {
        statement: 'What one pass through the compressor adds, as a share of its inlet',
        why: 'Air that goes round is heated by this again and again.',
      },
    );
    lines.push(
      pass,
      formulaLine(
        charge.mixedInlet,
        {
          r: duty.recirculation,
          T_i: intake.value,
          k: pass.value,
        },
        {
          statement: 'Compressor inlet with air going round the open bypass',
          why: 'The same air is worked more than once: cruise is not free of heat.',
        },
      ),
    );
  }
  lines.push(
    formulaLine(
      charge.compressorOutletLine,
      { T_1: c.compressorInlet, PR: c.pressureRatio, eta: duty.compressorEfficiency },
      {
        statement: 'Air leaving the compressor',
        why: 'It is the hot end of the cooler: without one, the engine would breathe this.',
      },
    ),
    formulaLine(
      charge.airCapacityRate,
      { m: c.massFlow, c_p: c.airCp },
      {
        statement: 'Heat this air carries per degree',
        why: 'The charge heat is this times the degrees the cooler takes off.',
      },
    ),
  );
  return lines;
}

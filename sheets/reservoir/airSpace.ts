/** Lines of the air over the liquid. */
import type { Side } from '$lib/job/evaluate';
import { coolantVapourPressure } from '$lib/solver/fluids/coolant';
import { pressureAtAltitude } from '$lib/solver/fluids/formulas';
import { formulaLine, type Line } from '$lib/solver/formula';
import type { PreparedLoop } from '$lib/solver/loop/prepare';
import * as reservoir from '$lib/solver/reservoir/formulas';
import { propertyNote } from './capacity';

export interface AirSpace {
  readonly lines: readonly Line[];
  readonly mass: number;
  /** When filled, m³; not above zero: none. */
  readonly space: number;
  /** Growth from filling to the hottest the liquid can be, and what is then left; negative: it does not fit. */
  readonly growth: number;
  readonly left: number;
  readonly hottest: number;
  /** Left at the temperature it settles at; null where it does not settle. */
  readonly leftSettled: number | null;
  /** Gauge pressure with the cap shut at the temperature it settles at; null where the tank is vented, full or does not settle. */
  readonly gauge: number | null;
}

/** `settled`: temperature of the reservoir in the duty shown; null where it does not settle. */
export function airSpaceLines(
  side: Side,
  prepared: PreparedLoop,
  V_o: number,
  settled: number | null,
): AirSpace {
  const { coolant, reservoir: tank } = side.loop;
  const { liquidVolume: V_t, totalVolume: V_full } = tank;
  const T_1 = side.values['reservoirQuestion.fillTemperature']!.si!;
  const rho = (T: number) => prepared.liquidAt(T).rho;
  const notes = (where: string) => [propertyNote(coolant, where)];

  const mass = formulaLine(
    reservoir.liquidMass,
    { rho: rho(T_1), V_t, V_o },
    {
      statement: 'What the liquid weighs',
      why: 'Volume buys time and costs this on the axle.',
      notes: notes('at the filling temperature'),
    },
  );
  const space = formulaLine(
    reservoir.airSpace,
    { V_full, V_t },
    {
      statement: 'Air space when filled',
      why: 'Too little and the tank spills hot; too much and it draws air in corners.',
    },
  );
  const growth = formulaLine(
    reservoir.liquidGrowth,
    { V_t, V_o, rho_1: rho(T_1), rho_2: rho(prepared.hottest) },
    {
      statement: 'Growth of the liquid from filling to the hottest it can be',
      why: 'Liquid does not give way: what the air space cannot take goes out past the cap.',
      notes: notes('at filling and at the boiling point under the cap (120 °C at most)'),
    },
  );
  const left = formulaLine(
    reservoir.airSpaceLeft,
    { V_a: space.value, dV: growth.value },
    {
      statement: 'Air space left at that temperature; negative: it overflows',
      why: 'What overflows hot is missing cold, and the next drive draws air.',
    },
  );
  const sealed =
    settled === null || !(space.value > 0)
      ? { lines: [], left: null, gauge: null }
      : sealedLines(side, prepared, { V_o, V_a: space.value, T_1, T_2: settled });
  return {
    lines: [mass, space, growth, left, ...sealed.lines],
    mass: mass.value,
    space: space.value,
    growth: growth.value,
    left: left.value,
    hottest: prepared.hottest,
    leftSettled: sealed.left,
    gauge: sealed.gauge,
  };
}

function sealedLines(
  { loop }: Side,
  prepared: PreparedLoop,
  x: { V_o: number; V_a: number; T_1: number; T_2: number },
) {
  const { coolant, reservoir: tank, site } = loop;
  const growth = formulaLine(
    reservoir.liquidGrowth,
    {
      V_t: tank.liquidVolume,
      V_o: x.V_o,
      rho_1: prepared.liquidAt(x.T_1).rho,
      rho_2: prepared.liquidAt(x.T_2).rho,
    },
    {
      id: 'growth-settled',
      statement: 'Growth to the temperature it settles at in the duty shown',
      why: 'The mark to fill to when cold must leave this much room.',
      notes: [propertyNote(coolant, 'at filling and settled')],
    },
  );
  const left = formulaLine(
    reservoir.airSpaceLeft,
    { V_a: x.V_a, dV: growth.value },
    {
      id: 'left-settled',
      statement: 'Air space left there',
      why: 'It is what squeezes the air under the cap and makes the tank’s pressure.',
    },
  );
  if (!(tank.capGauge > 0) || !(left.value > 0)) {
    return { lines: [growth, left], left: left.value, gauge: null };
  }
  const p_a = formulaLine(
    pressureAtAltitude,
    { h: site.altitude },
    {
      statement: 'Pressure of the surrounding air',
      why: 'The cap counts from here: the same cap boils earlier up high.',
    },
  );
  const gauge = formulaLine(
    reservoir.sealedGauge,
    {
      p_a: p_a.value,
      p_v1: coolantVapourPressure(coolant, x.T_1),
      V_a: x.V_a,
      V_a2: left.value,
      T_2: x.T_2,
      T_1: x.T_1,
      p_v2: coolantVapourPressure(coolant, x.T_2),
    },
    {
      statement: 'Pressure the closed cap would hold back there, gauge',
      why: 'The cap’s rating is a lid, not a pump: the tank only has the pressure that air and vapour make.',
      notes: [
        {
          code: 'vapour-pressure',
          message:
            'Vapour pressures: IAPWS R7-97(2012) times the mole fraction of water (Raoult, from memory). Tank and hoses are taken not to stretch.',
        },
      ],
    },
  );
  return { lines: [growth, left, p_a, gauge], left: left.value, gauge: gauge.value };
}

/** Lines of the balance itself: the other heats, the sum, both sides at the temperature found. */
import type { Side } from '$lib/job/evaluate';
import { balanceLine, formulaLine, type Line } from '$lib/solver/formula';
import { pumpHeat } from '$lib/solver/hydraulics/formulas';
import { settledIn } from '$lib/solver/hydraulics/pumpInLoop';
import {
  bayAir,
  boilingMargin,
  heatEntering,
  heatLeaving,
  reservoirSoak,
  settlesAt,
  soakHeat,
} from '$lib/solver/loop/balanceFormulas';
import { leavingFirstCore } from '$lib/solver/loop/order';
import { hottestLiquid } from '$lib/solver/loop/readings';
import type { Duty, SteadySolution } from '$lib/solver/loop/types';

export function balanceLines(side: Side, duty: Duty, s: SteadySolution): Line[] {
  const { soak, site, reservoir } = side.loop;
  const { temperatures: t } = s;
  const C = s.front.C_liquid;
  const bay = formulaLine(
    bayAir,
    { T_amb: site.ambientTemperature, dT_b: duty.bayRise },
    {
      statement: 'Air in the engine bay',
      why: 'Hoses and tank sit in this air and take heat from it whatever the engine does.',
    },
  );
  return [
    formulaLine(
      soakHeat,
      {
        C,
        G: soak.engineConductance,
        T_s: soak.engineTemperature,
        T_l: s.chargeCooler?.liquidOut ?? t.chargeCoolerIn,
      },
      {
        id: 'engine-soak',
        statement: 'Heat from the engine into the charge cooler',
        why: 'It flows whether or not there is boost, and is often as large as the charge heat at cruise.',
      },
    ),
    bay,
    formulaLine(
      soakHeat,
      { C, G: soak.hoseConductance, T_s: bay.value, T_l: leavingFirstCore(t, side.loop) },
      {
        id: 'hose-soak',
        statement: 'Heat from the bay into the hoses',
        why: 'Small next to a pull, not next to a cruise; sleeves and routing are cheap.',
      },
    ),
    formulaLine(
      reservoirSoak,
      {
        s: reservoir.shortCircuit,
        C,
        G: soak.reservoirConductance,
        T_s: bay.value,
        T_l: t.returning,
      },
      {
        statement: 'Heat from the bay into the reservoir',
        why: 'A tank in the boot takes none of it: where it stands decides this line.',
      },
    ),
    ...pumpLines(side, s),
    ...meetingLines(side, s),
    formulaLine(
      boilingMargin,
      { T_boil: s.margins.boilingPoint, T_hot: hottestLiquid(s) },
      {
        statement: 'Room below boiling',
        why: 'What a hotter day, a hill or a lost cap may still add before steam forms.',
      },
    ),
  ];
}

/** The balance, where there is one: at a limit the sides do not meet, and the findings say so. */
function meetingLines({ loop }: Side, s: SteadySolution): Line[] {
  const { ledger, front, temperatures: t } = s;
  const T_amb = loop.site.ambientTemperature;
  const sum = {
    Q_c: ledger.charge,
    Q_e: ledger.engineSoak,
    Q_h: ledger.hoseSoak,
    Q_t: ledger.reservoirSoak,
    Q_p: ledger.pump,
  };
  if (s.status !== 'balanced') {
    return [
      formulaLine(heatEntering, sum, {
        statement: 'Heat entering the liquid at that limit',
        why: 'It says by how much the loop is too small: so much heat finds no way out.',
      }),
    ];
  }
  // No heat leaves, so none may enter: there is nothing to weigh but rounding.
  if (!(front.conductanceToAmbient > 0)) return [];
  const leaving = { G: front.conductanceToAmbient, T_f: t.frontIn, T_amb };
  return [
    balanceLine(
      { formula: heatEntering, x: sum },
      { formula: heatLeaving, x: leaving },
      {
        id: 'balance',
        statement: 'Where the loop settles: as much heat enters as leaves',
        why: 'Hotter liquid lets more out and takes less in, so there is one temperature at which they meet.',
        unknown: {
          tex: 'T_{f,in}',
          quantity: 'temperature',
          name: 'liquid into the front exchanger',
          value: t.frontIn,
        },
        method:
          'The temperature leaving the reservoir is sought by a bracketed root; flow, face velocity and every conductance are worked out anew at each trial.',
      },
    ),
    formulaLine(
      settlesAt,
      { T_amb, Q_in: front.heat, G: front.conductanceToAmbient },
      {
        statement: 'The same, read as ambient plus heat over conductance',
        why: 'Three ways to run cooler: cooler air, less heat in, or more heat out per degree. Volume is not among them.',
      },
    ),
  ];
}

function pumpLines({ loop, prepared }: Side, { liquid }: SteadySolution): Line[] {
  if (!prepared.ok) return [];
  return [
    formulaLine(
      pumpHeat,
      {
        x: loop.pump.heatShare,
        P: settledIn(prepared.value.hydraulics, liquid).pump.electricPower,
      },
      {
        statement: 'Heat from the pump',
        why: 'What a pump takes from the battery ends as heat, most of it in the liquid.',
      },
    ),
  ];
}

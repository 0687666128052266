/** Lines of one pull out of the settled state, and of the way back. */
import type { Side } from '$lib/job/evaluate';
import { chargeHeat } from '$lib/solver/charge/coolingFormulas';
import { formulaLine, type Line } from '$lib/solver/formula';
import { peakRise, restoringSum, timeConstantFormula } from '$lib/solver/loop/timeFormulas';
import { restoring } from '$lib/solver/loop/timeScale';
import type { SteadySolution } from '$lib/solver/loop/types';
import type { PullStart } from '$lib/solver/reservoir/pullStart';
import * as reservoir from '$lib/solver/reservoir/formulas';
import type { Capacity } from './capacity';
import { runOf, type Study } from './study';

export interface Pull {
  readonly lines: readonly Line[];
  readonly heat: number;
  readonly rise: number;
  readonly needed: number;
  readonly residence: number;
  readonly mixing: number;
  readonly turnovers: number;
  readonly timeConstant: number | null;
  /** Closed form; null where the rise stays inside the band, or nothing brings the loop back. */
  readonly recovery: number | null;
}

export function pullLines(
  side: Side,
  study: Study,
  { V_o, C_m, rho_cp, C }: Capacity,
): Pull | null {
  const { before, start } = study;
  if (!before || !start) return null;
  const t = side.values['reservoirQuestion.pullTime']!.si!;
  const dT = side.values['reservoirQuestion.allowedRise']!.si!;
  const { liquidVolume: V_t, shortCircuit: s } = side.loop.reservoir;
  const { flow } = before.operating;

  const heat = heatLines(start);
  const rise = formulaLine(
    reservoir.riseInPull,
    { Q: start.chargeHeat, t, C },
    {
      statement: 'Rise of the loop in one pull, nothing given off',
      why: 'Before the pull as much left as entered, so only the charge heat of the pull counts.',
    },
  );
  const needed = formulaLine(
    reservoir.volumeForRise,
    { Q: start.chargeHeat, t, dT, C_m, rho_cp, V_o },
    {
      statement: 'Liquid the reservoir would need for the rise allowed',
      why: 'Negative where metal, cores and hoses hold the heat by themselves.',
    },
  );
  const residence = formulaLine(
    reservoir.residenceTime,
    { V_t, Q: flow },
    {
      statement: 'Time the pump takes to move the reservoir’s liquid once',
      why: 'A pull shorter than this sees the tank’s old liquid all the way through.',
    },
  );
  const mixing = formulaLine(
    reservoir.mixingTime,
    { V_t, s, Q: flow },
    {
      statement: 'Time the reservoir takes to mix, short circuit counted',
      why: 'Liquid that goes straight from return to outlet never meets the tank’s.',
    },
  );
  const turnovers = formulaLine(
    reservoir.turnovers,
    { t, t_r: residence.value },
    {
      statement: 'Turnovers of the reservoir in one pull',
      why: 'Below one, the pull’s heat comes back only after it is over.',
    },
  );
  const back = backLines(side, before, C, rise.value);
  return {
    lines: [...heat, rise, ...followed(study), needed, residence, mixing, turnovers, ...back.lines],
    heat: start.chargeHeat,
    rise: rise.value,
    needed: needed.value,
    residence: residence.value,
    mixing: mixing.value,
    turnovers: turnovers.value,
    timeConstant: back.timeConstant,
    recovery: back.recovery,
  };
}

/** Heat stated outright is an input and needs no line. */
function heatLines({ cooler, liquidIn }: PullStart): Line[] {
  if (!cooler) return [];
  return [
    formulaLine(
      chargeHeat,
      { eps: cooler.effectiveness, C_min: cooler.C_min, T_2: cooler.airIn, T_l: liquidIn },
      {
        statement: 'Heat from the charge air as the pull begins',
        why: 'It is largest at the start; as the liquid warms, less is taken up.',
        notes: [
          {
            code: 'pull-start',
            message:
              'Effectiveness, capacity rate and compressor outlet follow the lines of sheet 1 with the pull shown, for liquid as the pull meets it.',
          },
        ],
      },
    ),
  ];
}

function followed(study: Study): Line[] {
  const present = runOf(study, 1);
  if (!present) return [];
  return [
    formulaLine(
      peakRise,
      {
        T_peak: present.pull.peakReservoir.value,
        T_before: present.pull.history.reservoir[0]!,
      },
      {
        id: 'rise-followed',
        statement: 'The same followed in time: highest less first temperature of the reservoir',
        why: 'Cores, front exchanger and falling charge heat take part here; the closed form above is the safe side.',
        notes: [
          {
            code: 'integrated',
            message:
              'Both temperatures by integration of five masses (reservoir, liquid and metal of both cores), see the plot.',
          },
        ],
      },
    ),
  ];
}

function backLines(side: Side, before: SteadySolution, C: number, rise: number) {
  const none = { lines: [] as Line[], timeConstant: null, recovery: null };
  if (!side.prepared.ok) return none;
  const G = restoring(side.prepared.value, before.duty, before.liquid.temperature);
  if (!G) return none;
  const sum = formulaLine(
    restoringSum,
    { G_f: G.front, G_c: G.charge, G_e: G.engine, G_h: G.hose, G_t: G.reservoir },
    {
      statement: 'Heat given up per degree after the pull, all ways together',
      why: 'Hotter liquid also takes up less from charge, engine and bay: all of it brings the loop back.',
    },
  );
  if (!(sum.value > 0)) return none;
  const tau = formulaLine(
    timeConstantFormula,
    { C, G: sum.value },
    {
      statement: 'Time constant: after it 63 % of a change is done',
      why: 'Volume stands above the line here. It slows the warm-up and the recovery alike.',
    },
  );
  const band = side.limits.recoveryBand;
  const recovery =
    rise > band
      ? formulaLine(
          reservoir.recovery,
          { tau: tau.value, dT: rise, dT_band: band },
          {
            statement: 'Time to recover, by the closed form',
            why: 'The wait between two pulls that makes the second as good as the first.',
          },
        )
      : null;
  return {
    lines: [sum, tau, ...(recovery ? [recovery] : [])],
    timeConstant: tau.value,
    recovery: recovery?.value ?? null,
  };
}

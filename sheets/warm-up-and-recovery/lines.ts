/** Lines of the drive: what is stored, how fast it moves, how the integration is checked. */
import type { Side } from '$lib/job/evaluate';
import { intakeAboveLiquid } from '$lib/solver/charge/coolingFormulas';
import type { Note } from '$lib/solver/errors';
import { balanceLine, formulaLine, type Line } from '$lib/solver/formula';
import type { ClosedForm } from '$lib/solver/loop/closedForm';
import { storedByPart, type PartStored } from '$lib/solver/loop/drive';
import { readAt } from '$lib/solver/loop/history';
import type { PreparedLoop } from '$lib/solver/loop/prepare';
import * as time from '$lib/solver/loop/timeFormulas';
import type { WarmUpSolution } from '$lib/solver/loop/types';
import { capacityLines } from '../reservoir/capacity';
import type { Drive } from './study';

const INTEGRATED: Note = {
  code: 'integrated',
  message: 'Temperatures and heats of the drive by integration of five masses, see the plots.',
};

export function driveLines(
  side: Side,
  prepared: PreparedLoop,
  drive: Drive,
  form: ClosedForm | null,
): Line[] {
  const capacity = capacityLines(side, prepared, drive.request.start.reservoir, 'at the start');
  return [
    ...capacity.lines,
    ...(form ? closedFormLines(form, capacity.C) : []),
    ...peakLines(side, drive.run),
    ...energyLines(prepared, drive),
  ];
}

function closedFormLines(f: ClosedForm, C: number): Line[] {
  const sum = formulaLine(
    time.restoringSum,
    { G_f: f.G.front, G_c: f.G.charge, G_e: f.G.engine, G_h: f.G.hose, G_t: f.G.reservoir },
    {
      statement: 'Heat given up per degree in the duty shown, all ways together',
      why: 'Hotter liquid loses more and takes up less; together they pull the loop to where it settles.',
    },
  );
  const tau = formulaLine(
    time.timeConstantFormula,
    { C, G: sum.value },
    {
      statement: 'Time constant',
      why: 'After it 63 % of any change is done, after three of them 95 %. More liquid makes it longer and changes nothing else.',
    },
  );
  const closed = formulaLine(
    time.approachInTime,
    { T_end: f.T_end, T_0: f.T_0, t: tau.value, tau: tau.value },
    {
      statement:
        'Reservoir after one time constant of the duty shown, as if the loop were one mass',
      why: 'A line a pocket calculator can follow, to check the integration by.',
      notes: [{ code: 'settled', message: 'Where it settles is found on sheet 1, loop balance.' }],
    },
  );
  return [
    sum,
    tau,
    closed,
    formulaLine(
      time.integrationGap,
      { T_int: f.T_integrated, T_closed: closed.value },
      {
        id: 'closed-form-check',
        statement: 'The integration at that time, less the closed form',
        why: 'What is left is real: parts lag each other, and flow and conductances move with temperature.',
        notes: [INTEGRATED],
      },
    ),
  ];
}

function peakLines(
  { limits }: Side,
  { peakCharge, peakReservoir, history, hardest }: WarmUpSolution,
) {
  const lines: Line[] = [];
  if (peakCharge) {
    lines.push(
      formulaLine(
        intakeAboveLiquid,
        { T_3: peakCharge.value, T_l: readAt(history, 'chargeLiquid', peakCharge.t) },
        {
          id: 'peak-above-liquid',
          statement: 'Highest charge air above the liquid leaving its cooler just then',
          why: 'This part belongs to the charge cooler; the rest belongs to the liquid, and so to tank and front exchanger.',
          notes: [INTEGRATED],
        },
      ),
      formulaLine(
        time.belowLimit,
        { T_max: limits.charge, T_peak: peakCharge.value },
        {
          id: 'charge-below-limit',
          statement: 'Charge air below its limit at the peak',
          why: 'Below zero the engine pulls timing or knocks: this is the margin to defend.',
        },
      ),
    );
  }
  lines.push(
    formulaLine(
      time.belowLimit,
      { T_max: limits.reservoir, T_peak: peakReservoir.value },
      {
        id: 'reservoir-below-limit',
        statement: 'Reservoir below its limit at the peak',
        why: 'Near zero here and far from it in the charge air: then the tank is the bottleneck.',
      },
    ),
  );
  if (hardest) {
    lines.push(
      formulaLine(
        time.peakRise,
        { T_peak: hardest.peak, T_before: hardest.before },
        {
          id: 'hardest-rise',
          statement: 'Rise of the reservoir in and after the hardest segment',
          why: 'Recovery counts from here: back within the band of where it was before.',
        },
      ),
    );
  }
  return lines;
}

const PART: Readonly<Record<PartStored['node'], [words: string, key: string]>> = {
  reservoir: ['in the reservoir', 'E_t'],
  chargeLiquid: ['in the liquid of the charge cooler and the hoses to it', 'E_cl'],
  chargeMetal: ['in the metal of the charge cooler', 'E_cm'],
  frontLiquid: ['in the liquid of the front exchanger and the hose to it', 'E_fl'],
  frontMetal: ['in the metal of the front exchanger', 'E_fm'],
};

function energyLines(prepared: PreparedLoop, { run, request }: Drive): Line[] {
  if (!(run.endTime > 0)) return [];
  const parts = storedByPart(prepared, request.start, run.end);
  const lines = parts.map(({ node, C, T_0, T_1 }) =>
    formulaLine(
      time.heatStoredFormula,
      { C, T_0, T_1 },
      {
        id: `stored-${node}`,
        statement: `Heat stored ${PART[node][0]}`,
        why: 'What is stored here must be given off again before the next pull starts cold.',
        ...(node === 'reservoir' && {
          notes: [
            {
              code: 'capacity-by-part',
              message:
                'The liquid of a hose counts with the part it leads to; the five capacities add up to that of the whole loop above.',
            },
          ],
        }),
      },
    ),
  );
  const stored = Object.fromEntries(parts.map(({ node, heat }) => [PART[node][1], heat]));
  return [
    ...lines,
    balanceLine(
      { formula: time.heatKept, x: { E_in: run.heatIn, E_out: run.heatOut } },
      { formula: time.heatStoredSum, x: stored },
      {
        id: 'energy-closure',
        statement: 'Heat in less heat out is heat stored',
        why: 'No heat may appear or vanish on the way: this is how far the integration can be believed.',
        unknown: {
          tex: '\\delta_E',
          quantity: 'ratio',
          name: 'gap between both sides, over the larger heat',
          value: run.energyError,
        },
        method:
          'Heat in and heat out are gathered along with the temperatures by an error-controlled integrator (Rosenbrock, order 4).',
        notes: [INTEGRATED],
      },
    ),
  ];
}

/** The reservoir as data. */
import type { Side } from '$lib/job/evaluate';
import { formulaLine, type Line } from '$lib/solver/formula';
import { settlesAt } from '$lib/solver/loop/balanceFormulas';
import type { SteadySolution } from '$lib/solver/loop/types';
import { say, type ContentOf } from '../types';
import { airFindings } from './airFindings';
import { airSpaceLines } from './airSpace';
import { capacityLines } from './capacity';
import {
  buysFindings,
  endFindings,
  flowFindings,
  mixtureFindings,
  statusFindings,
} from './findings';
import { pullLines } from './pull';
import { holdingResults, pullResults, settledResults } from './results';
import { studyOf } from './study';

export const content: ContentOf = (side) => {
  const study = studyOf(side);
  const { prepared } = side;
  const around = side.steady[study.around];
  if (!prepared.ok || !around.ok) {
    const problem = prepared.ok
      ? (around as { problem: { message: string } }).problem
      : prepared.problem;
    return {
      results: [],
      lines: [],
      findings: [
        {
          code: 'unsolved',
          level: 'act',
          sentence: say`The loop cannot be solved: ${problem.message}`,
        },
      ],
    };
  }
  const shown = side.steady[study.duty];
  const settled = shown.ok && shown.value.status === 'balanced' ? shown.value : null;
  const { liquid } = around.value;
  const capacity = capacityLines(
    side,
    prepared.value,
    liquid.temperature,
    'as it leaves the reservoir',
  );
  const pull = pullLines(side, study, capacity);
  const air = airSpaceLines(
    side,
    prepared.value,
    capacity.V_o,
    settled?.temperatures.reservoir ?? null,
  );
  return {
    results: [
      ...pullResults(side, study, pull),
      ...settledResults(side, study),
      ...holdingResults(capacity, air),
    ],
    lines: [
      ...capacity.lines,
      ...(pull?.lines ?? []),
      ...(settled ? endLine(side, settled) : []),
      ...air.lines,
    ],
    findings: [
      ...statusFindings(around.value, side),
      ...(pull ? buysFindings(side, study, pull) : []),
      ...endFindings(side, study),
      ...(pull ? flowFindings(side, pull) : []),
      ...airFindings(side, air),
      ...mixtureFindings(side, capacity.share),
    ],
  };
};

function endLine({ loop }: Side, { front }: SteadySolution): Line[] {
  // Without air through the front exchanger nothing leaves there and the line has nothing to divide by.
  if (!(front.conductanceToAmbient > 0)) return [];
  const line = formulaLine(
    settlesAt,
    {
      T_amb: loop.site.ambientTemperature,
      Q_in: front.heat,
      G: front.conductanceToAmbient,
    },
    {
      statement: 'Where the loop settles in the duty shown',
      why: 'No volume stands in this line, so none can change it.',
      notes: [
        {
          code: 'from-balance',
          message: 'Heat and conductance from sheet 1, loop balance.',
        },
      ],
    },
  );
  return [line];
}

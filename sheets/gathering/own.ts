/** Results of the reader's own calculations, SI, by sheet: only sheets that have some are worked out. */
import { evaluate, type Side } from '$lib/job/evaluate';
import { ownCalculations, type OwnCalculated } from '$lib/job/own/ownCalculation';
import type { Job } from '$lib/job/types';
import { siUnitOf } from '$lib/units/expression';
import { CONTENTS } from '../contents';

export function ownReport(job: Job, side: Side) {
  return Object.fromEntries(
    Object.entries(job.own).flatMap(([sheet, own]) => {
      const content = Object.hasOwn(CONTENTS, sheet) ? CONTENTS[sheet] : undefined;
      if (!content || !own.some(({ kind }) => kind === 'calculation')) return [];
      const { lines } = content(side, evaluate(job));
      return [[sheet, ownCalculations(own, lines, side.values).map(rowOf)] as const];
    }),
  );
}

function rowOf({ line, outcome }: OwnCalculated) {
  const { id, statement, symbol, expression } = line;
  const head = { id, statement, symbol, expression };
  return outcome.ok
    ? { ...head, value: outcome.value, unit: siUnitOf(outcome.amount) }
    : { ...head, value: null, absent: outcome.message };
}

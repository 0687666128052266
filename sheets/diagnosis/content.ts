/** The diagnosis as data. */
import { say, type ContentOf, type Finding, type SheetContent } from '../types';
import { findings } from './findings';
import { bayesLines, exchangerLines, readingLines } from './lines';
import { noResults, results } from './results';
import { studyOf } from './study';

const NOT_MEASURED: Finding = {
  code: 'no-readings',
  level: 'info',
  sentence: say`Nothing has been entered below. The cheapest readings first: probes after a night’s soak, tank against intake, volts at the pump’s plug when hot, amps, flow, air at the core’s face, paper at the grille, drop across the exchanger (common practice).`,
};

const NOT_BUILT: Finding = {
  code: 'candidate-not-measured',
  level: 'info',
  sentence: say`A candidate has not been built, so nothing was read on it: this sheet is about the loop as found.`,
};

/** While the faults are being solved; the page alone shows this. */
export const UNDER_WAY: SheetContent = {
  results: noResults('being worked out'),
  lines: [],
  findings: [
    {
      code: 'under-way',
      level: 'info',
      sentence: say`The loop has changed. Every fault is being solved for it, at every severity, in traffic and at cruise; this takes a moment and holds nothing else up.`,
    },
  ],
};

export const content: ContentOf = (side) => {
  const study = studyOf(side);
  if (!study) {
    return side.id === 'asFound'
      ? { results: noResults('nothing was read'), lines: [], findings: [NOT_MEASURED] }
      : { results: noResults('not built, so not read'), lines: [], findings: [NOT_BUILT] };
  }
  if (!study.ok) {
    return {
      results: noResults('the loop as described cannot be solved'),
      lines: [],
      findings: [
        { code: study.problem.code, level: 'act', sentence: say`${study.problem.message}` },
      ],
    };
  }
  const found = study.value;
  return {
    results: results(found),
    lines: [...readingLines(found), ...bayesLines(found), ...exchangerLines(found)],
    findings: findings(found),
  };
};

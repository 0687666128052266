/** The loop balance as data: results, lines, findings of the duty shown. */
import { say, type ContentOf } from '../types';
import { dutyOf } from '../wiring/duty';
import { airLines } from './airLines';
import { balanceLines } from './balanceLines';
import { coolerLines, liquidRate } from './coolerLines';
import { approachFinding, orderFinding } from './approachFindings';
import {
  cruiseFinding,
  limitFinding,
  marginFindings,
  sourceFinding,
  statusFindings,
  volumeFinding,
} from './findings';
import { dutyResults, mainResults } from './results';

export const content: ContentOf = (side) => {
  const id = dutyOf(side);
  const outcome = side.steady[id];
  if (!outcome.ok) {
    return {
      results: dutyResults(side),
      lines: [],
      findings: [
        {
          code: 'unsolved',
          level: 'act',
          sentence: say`This duty cannot be solved: ${outcome.problem.message}`,
        },
      ],
    };
  }
  const s = outcome.value;
  const { loop } = side;
  const flows = s.status !== 'no-flow';
  return {
    results: [...mainResults(s, side), ...dutyResults(side)],
    lines: [
      ...(s.charge ? airLines(side, loop.duties[id], s, s.charge) : []),
      ...(flows ? [liquidRate(s)] : []),
      ...(flows && s.chargeCooler
        ? coolerLines(loop.chargeCooler.arrangement, s, s.chargeCooler)
        : []),
      ...(flows ? balanceLines(side, loop.duties[id], s) : []),
    ],
    findings: [
      ...statusFindings(s),
      ...cruiseFinding(side),
      ...approachFinding(s, side),
      ...orderFinding(s, side),
      ...sourceFinding(s),
      ...limitFinding(s),
      ...marginFindings(s, side.loop),
      volumeFinding(s, side),
    ],
  };
};

/** The exchangers as data: results, lines, findings of the duty shown. */
import type { DutyId } from '$lib/solver/loop/types';
import { say, type ContentOf } from '../types';
import { CHARGE, chargeLines, liquidRateLine } from './chargeLines';
import { chargeFindings, ratingFindings, statusFindings } from './findings';
import {
  airFinding,
  fouledFinding,
  lookAlikeFinding,
  sideFinding,
  unsureFinding,
} from './frontFindings';
import { FRONT, frontLines } from './frontLines';
import { ratingLines } from './ratingLines';
import { dutyResults, mainResults } from './results';

export const content: ContentOf = (side) => {
  const outcome = side.steady[side.values['view.duty']!.choice as DutyId];
  const { prepared } = side;
  const problem = prepared.ok ? (outcome.ok ? null : outcome.problem) : prepared.problem;
  const cores = prepared.ok
    ? {
        charge: ratingLines(CHARGE, side.loop.chargeCooler, prepared.value.chargeCore),
        front: ratingLines(FRONT, side.loop.frontExchanger, prepared.value.frontCore),
      }
    : { charge: [], front: [] };
  if (!prepared.ok || !outcome.ok) {
    return {
      results: dutyResults(side),
      lines: [...cores.charge, ...cores.front],
      findings: [
        {
          code: 'unsolved',
          level: 'act',
          sentence: say`This duty cannot be solved: ${problem!.message}`,
        },
      ],
    };
  }

  const s = outcome.value;
  const ready = prepared.value;
  const flows = s.status !== 'no-flow';
  const chargeHere = () =>
    s.charge && s.chargeCooler && s.chargeCooler.C_air > 0
      ? chargeLines(side.loop, ready.chargeCore, s, s.charge, s.chargeCooler)
      : [liquidRateLine(s)];
  return {
    results: [...mainResults(ready, s), ...dutyResults(side)],
    lines: [
      ...cores.charge,
      ...(flows ? chargeHere() : []),
      ...cores.front,
      ...(flows ? frontLines(ready, s) : []),
    ],
    findings: [
      ...statusFindings(s),
      ...chargeFindings(side, s),
      ...(flows
        ? [
            ...fouledFinding(ready, s),
            ...airFinding(ready, s),
            ...sideFinding(ready, s),
            ...lookAlikeFinding(ready, s),
            ...ratingFindings(s),
            ...unsureFinding(ready, s),
          ]
        : []),
    ],
  };
};

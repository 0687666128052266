/** Suction margin as data: results, lines, findings of the duty shown. */
import { say, type ContentOf } from '../types';
import { dutyOf } from '../wiring/duty';
import { capFindings, countedFinding, lossFinding, stateFinding, verdict } from './findings';
import { inletLines, pressureLines } from './inletLines';
import { lossLines, marginLines } from './marginLines';
import { results } from './results';
import { studyOf } from './study';
import { helpFinding, lookAlikes, mountingFindings, onsetFinding } from './teaching';

export const content: ContentOf = (side) => {
  const study = studyOf(side);
  if (!study) {
    const outcome = side.steady[dutyOf(side)];
    const message = outcome.ok ? side.problem!.message : outcome.problem.message;
    const sentence = say`This duty cannot be solved: ${message}`;
    return { results: [], lines: [], findings: [{ code: 'unsolved', level: 'act', sentence }] };
  }
  const { loop } = side;
  const { s, flows } = study;
  const { air, vapour, lines } = pressureLines(loop, s);
  if (!flows) {
    return {
      results: results(study),
      lines,
      findings: [...stateFinding(study), ...capFindings(side, study)],
    };
  }
  const { level, lines: toInlet } = inletLines(loop, s, air.value);
  const inlet = { p_ambient: air.value, p_vapour: vapour.value, z: level.value };
  return {
    results: results(study),
    lines: [
      ...lines,
      ...toInlet,
      ...marginLines(loop, study, inlet),
      ...lossLines(loop, study, inlet),
    ],
    findings: [
      ...stateFinding(study),
      // At its boiling point the liquid has other troubles than the pump's inlet.
      ...(s.status === 'boils' && s.margins.suction >= 0 ? [] : [verdict(study)]),
      ...capFindings(side, study),
      ...countedFinding(side, study),
      ...lossFinding(study),
      ...mountingFindings(side, study),
      ...onsetFinding(side, study),
      lookAlikes(study),
      ...helpFinding(study),
    ],
  };
};

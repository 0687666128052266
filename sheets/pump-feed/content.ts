/** The feed of the pump as data. */
import type { ContentOf } from '../types';
import { findings } from './findings';
import { adviceLines, heatLines } from './heatLines';
import { ampacityLines, breakerLines } from './protectionLines';
import { results } from './results';
import { studyOf } from './study';
import { flowLines, voltsLines } from './voltsLines';
import { copperLines, jointLines } from './wireLines';

export const content: ContentOf = (side) => {
  const study = studyOf(side);
  const { running } = study;
  const copper = copperLines(study);
  // A joint without a number stops here; wire, ampacity and breaker can still be said.
  const joints = study.supplied.ok ? jointLines(side, study, copper.wire) : null;
  return {
    results: results(side, study),
    lines: [
      ...copper.lines,
      ...(joints?.lines ?? []),
      ...(running && joints ? voltsLines(side, study, running, joints.whole) : []),
      ...(running ? flowLines(side, study, running) : []),
      ...(running ? heatLines(side, study, running, copper.wire20) : []),
      ...ampacityLines(side, study),
      ...breakerLines(side, study, running),
      ...(joints ? adviceLines(side, study, joints.joints) : []),
    ],
    findings: findings(side, study),
  };
};

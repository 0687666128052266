/** Warm-up and recovery as data. */
import { say, type ContentOf } from '../types';
import {
  delayFinding,
  endedFindings,
  limitFindings,
  peakFinding,
  recoveryFinding,
  shortFinding,
  standingFinding,
} from './findings';
import { driveLines } from './lines';
import { driveResults } from './results';
import { closedFormOf, driveOf } from './study';

export const content: ContentOf = (side) => {
  const drive = driveOf(side);
  const { prepared, warmUp } = side;
  if (!drive || !prepared.ok) {
    const why = warmUp.ok ? '' : warmUp.problem.message;
    return {
      results: [],
      lines: [],
      findings: [
        { code: 'unsolved', level: 'act', sentence: say`The drive cannot be followed: ${why}` },
      ],
    };
  }
  const form = closedFormOf(side);
  return {
    results: driveResults(side, drive, form),
    lines: driveLines(side, prepared.value, drive, form),
    findings: [
      ...endedFindings(drive, side),
      ...standingFinding(drive),
      ...limitFindings(side, drive),
      ...recoveryFinding(side, drive),
      ...peakFinding(drive),
      ...shortFinding(side, drive, form),
      ...delayFinding(drive, form),
    ],
  };
};

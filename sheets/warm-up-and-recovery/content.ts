/** Warm-up and recovery as data. */
import type { Side } from '$lib/job/evaluate';
import { say, type ContentOf, type Finding, type SheetContent } from '../types';
import { eventFindings } from './eventFindings';
import { eventLines } from './eventLines';
import { eventResults } from './eventResults';
import { eventsOf } from './eventStudy';
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

/** While what may happen on the way is being worked out; the page alone shows this. */
const UNDER_WAY: Finding = {
  code: 'events-under-way',
  level: 'info',
  sentence: say`What happens on the way is being worked out: breaker, fans, ice, boiling, air in the pump.`,
};

/** The plain drive, and with it what happens on the way once that is there. */
function contentOf(side: Side, withEvents: boolean): SheetContent {
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
  const lines = driveLines(side, prepared.value, drive, form);
  const results = driveResults(side, drive, form);
  const findings = [
    ...endedFindings(drive, side),
    ...standingFinding(drive),
    ...limitFindings(side, drive),
    ...recoveryFinding(side, drive),
    ...peakFinding(drive),
    ...shortFinding(side, drive, form),
    ...delayFinding(drive, form),
  ];
  if (!withEvents) return { results, lines, findings: [...findings, UNDER_WAY] };
  const outcome = eventsOf(side);
  const hoses = lines.find(({ id }) => id === 'reservoir.hose-liquid');
  const hoseLiquid = hoses?.kind === 'formula' ? hoses.value : null;
  return {
    results: [...results, ...eventResults(side, outcome)],
    lines: [
      ...lines,
      ...(outcome.ok ? eventLines(side, prepared.value, drive, outcome.value, hoseLiquid) : []),
    ],
    findings: [...findings, ...eventFindings(side, drive, outcome)],
  };
}

export const content: ContentOf = (side) => contentOf(side, true);

/** Without what happens on the way. */
export const plainContent: ContentOf = (side) => contentOf(side, false);

/** Fans and face airflow as data: results, lines, findings of the duty shown. */
import { say, type ContentOf } from '../types';
import { dutyOf } from '../wiring/duty';
import { capacityFinding, orderFinding, overlapFinding, warmFaceFinding } from './airFindings';
import { givenLines, wholeFaceLines } from './airLines';
import { fanLimitLines, fanLines } from './fanLines';
import {
  coverageFinding,
  fanVoltsFinding,
  handoverFinding,
  slowFaceFinding,
  standingFinding,
  stillFinding,
} from './findings';
import { results } from './results';
import { zoneLines } from './zoneLines';

export const content: ContentOf = (side) => {
  const id = dutyOf(side);
  const outcome = side.steady[id];
  if (!outcome.ok) {
    return {
      results: [],
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
  const { air } = s;
  const given = givenLines(loop, loop.duties[id].vehicleSpeed);
  const area = given.find((line) => line.id === 'face-area')!;
  const A = area.kind === 'formula' ? area.value : NaN;
  const moving = air.zones.filter(({ faceVelocity }) => faceVelocity > 0);
  return {
    results: results(loop, s),
    lines: [
      ...given,
      ...(air.zones[0]!.faceVelocity > 0 ? fanLines(loop, air, A) : []),
      ...moving.flatMap((zone) => zoneLines(loop, air, zone)),
      ...(moving.length > 0 ? wholeFaceLines(loop, s, A) : []),
      ...fanLimitLines(loop, air, A),
    ],
    findings: [
      ...stillFinding(loop, s),
      ...standingFinding(loop),
      ...slowFaceFinding(loop),
      ...fanVoltsFinding(loop, s),
      ...coverageFinding(s),
      ...handoverFinding(loop, s),
      ...warmFaceFinding(loop, s),
      ...overlapFinding(loop, s),
      ...orderFinding(loop, s),
      ...capacityFinding(s),
    ],
  };
};

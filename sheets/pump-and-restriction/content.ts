/** Pump and restriction as data: results, lines, findings of the duty shown. */
import type { Side } from '$lib/job/evaluate';
import { toMeter } from '$lib/job/models/toMeter';
import { modelIn } from '$lib/solver/hydraulics/pumpInLoop';
import { meterK } from '$lib/solver/instruments/meter/meterInLoop';
import { say, type ContentOf } from '../types';
import { dutyOf } from '../wiring/duty';
import {
  curveFinding,
  dashFinding,
  secondPumpFinding,
  soldFlowFinding,
  stateFinding,
  suctionFinding,
  voltsFinding,
} from './findings';
import { coreLines, operatingLine } from './headLines';
import { hoseLines, type MeterLoss } from './hoseLines';
import { powerLines, riseLine, secondPumpLines, speedLines } from './pumpLines';
import {
  fittingFinding,
  largestFinding,
  laminarFinding,
  velocityFindings,
} from './restrictionFindings';
import { results } from './results';
import { suctionLines } from './suctionLines';

function meterOf({ values, loop }: Side): MeterLoss | null {
  const { fitted, run, loss } = toMeter(values);
  return fitted ? { run, k: meterK(loss, loop.hoses[run].bore) } : null;
}

export const content: ContentOf = (side) => {
  const outcome = side.steady[dutyOf(side)];
  const { prepared, loop } = side;
  if (!outcome.ok || !prepared.ok) {
    const message = !outcome.ok ? outcome.problem.message : side.problem!.message;
    return {
      results: [],
      lines: [],
      findings: [
        {
          code: 'unsolved',
          level: 'act',
          sentence: say`This duty cannot be solved: ${message}`,
        },
      ],
    };
  }
  const s = outcome.value;
  const model = modelIn(prepared.value.hydraulics, s.liquid);
  if (s.status === 'no-flow') {
    return {
      results: results(side, model, s),
      lines: speedLines(loop, model),
      findings: stateFinding(s, side),
    };
  }
  return {
    results: results(side, model, s),
    lines: [
      ...speedLines(loop, model),
      ...hoseLines(loop, s, meterOf(side)),
      ...coreLines(loop, s),
      operatingLine(loop, model, s),
      ...powerLines(loop, model, s),
      ...(s.status === 'balanced' ? [riseLine(s)] : []),
      ...suctionLines(loop, s),
      ...secondPumpLines(loop, model, s),
    ],
    findings: [
      ...stateFinding(s, side),
      ...voltsFinding(side, model, s),
      ...curveFinding(s),
      largestFinding(s),
      ...fittingFinding(side, s),
      ...velocityFindings(s),
      ...laminarFinding(s),
      ...suctionFinding(side, model, s),
      soldFlowFinding(model, s),
      ...secondPumpFinding(side, s),
      dashFinding(side, s),
    ],
  };
};

/** Lines of the pump on its feed: volts, current, speed, flow. */
import type { Side } from '$lib/job/evaluate';
import {
  currentAsked,
  drawLaw,
  dropAsked,
  flowLost,
  loadShareFormula,
  voltsToSpare,
} from '$lib/solver/feed/circuitFormulas';
import { dropFormula, flowRatio } from '$lib/solver/feed/formulas';
import { pumpCount } from '$lib/solver/feed/supply';
import { balanceLine, formulaLine, type Line } from '$lib/solver/formula';
import { pumpSetHead, systemHeadAt } from '$lib/solver/hydraulics/formulas';
import { speedRatio } from '$lib/solver/hydraulics/pump';
import type { Running, Study } from './study';

const WHY = {
  'speed-cubed':
    'A brushed pump that gets fewer volts turns slower and draws less: part of the loss heals itself, at the cost of flow.',
  'one-current': 'One torque asks one current, so the drop does not shrink as the pump slows.',
  'one-power':
    'A pump that holds its power draws more as volts fall, and loses still more in the feed.',
  measured: 'Volts and current from the table, the feed in series with them.',
} as const;

/** Where source, feed and pump agree. */
export function voltsLines(side: Side, study: Study, s: Running, R: number): Line[] {
  const { pump } = side.loop;
  const { draw, shutOffShare: k } = study.supply;
  const law = drawLaw(draw, pump.motor);
  const x = {
    R,
    n: pumpCount(pump),
    f: s.loadShare,
    P_r: pump.electricPower,
    V_r: pump.ratedVolts,
    V_p: s.volts,
  };
  const { inLoop } = study;
  return [
    ...(inLoop && k < 1 && draw.kind !== 'table'
      ? [
          formulaLine(
            loadShareFormula,
            { k, Q: inLoop.flow, Q_0: inLoop.pump.runOut },
            {
              id: 'load-share',
              statement: 'Load of the pump at its flow, against free flow',
              why: 'Flow, load and volts hang on each other and are found together; each line holds at the answer.',
            },
          ),
        ]
      : []),
    balanceLine(
      { formula: voltsToSpare, x: { V_s: s.source, V_p: s.volts } },
      { formula: dropAsked(draw, law), x },
      {
        id: 'volts',
        statement: 'Volts at the pump: what the battery has over them is what the feed loses',
        why: WHY[law],
        unknown: { tex: 'V_p', quantity: 'voltage', name: 'volts at the pump', value: s.volts },
        method: 'Upper, stable crossing, by bracketed root finding (Brent).',
      },
    ),
    formulaLine(currentAsked(draw, law), x, {
      id: 'current',
      statement: 'Current of the pump at those volts: the same at every point of the circuit',
      why: 'One clamp anywhere reads it, and fuse, wire and contacts must all carry it.',
    }),
    formulaLine(
      dropFormula,
      { I: s.current, R },
      {
        id: 'drop',
        statement: 'Drop from battery to pump, both sides together',
        why: 'More than about half a volt is worth mending before a pump is bought.',
      },
    ),
    ...(pump.motor === 'brushed'
      ? [
          formulaLine(
            flowRatio,
            { V_p: s.volts, V_r: pump.ratedVolts },
            {
              id: 'speed',
              statement: 'Speed of the pump over its rated speed',
              why: 'Flow follows it nearly in step, head with its square.',
            },
          ),
        ]
      : []),
  ];
}

/** Flow behind the feed, flow without it. */
export function flowLines({ loop }: Side, study: Study, s: Running): Line[] {
  const { inLoop, liquid } = study;
  if (!inLoop || !liquid) return [];
  const { pump } = loop;
  const atFlow = systemHeadAt((flow) => inLoop.model.systemHead(flow, liquid));
  const settled = (id: string, statement: string, flow: number, ratio: number): Line =>
    balanceLine(
      {
        formula: pumpSetHead(inLoop.pump),
        x: { n_s: inLoop.pump.inSeries, n_p: inLoop.pump.inParallel, Q: flow, s: ratio },
      },
      { formula: atFlow, x: { Q: flow } },
      {
        id,
        statement,
        why: 'Volts count only as flow: this is what the pump makes of them in this loop.',
        unknown: { tex: 'Q', quantity: 'volumeFlow', name: 'flow', value: flow },
        method: 'Flow found by bracketed root finding (Brent).',
      },
    );
  const lines: Line[] = [
    settled(
      'flow',
      'Flow behind this feed: pump and loop agree',
      inLoop.flow,
      inLoop.pump.speedRatio,
    ),
  ];
  if (pump.motor === 'held-speed') {
    // The controller holds the speed: the same flow with and without the loss, and no lines to show it.
    return lines;
  }
  lines.push(
    formulaLine(
      flowRatio,
      { V_p: s.source, V_r: pump.ratedVolts },
      {
        id: 'speed-at-battery',
        statement: 'Speed with the battery’s volts on the plug',
        why: 'The best that any wiring could do.',
      },
    ),
    settled(
      'flow-at-battery',
      'Flow with the battery’s volts on the plug',
      inLoop.flowAtSource,
      speedRatio({ ...pump, volts: s.source }),
    ),
    formulaLine(
      flowLost,
      { Q_s: inLoop.flowAtSource, Q: inLoop.flow },
      {
        id: 'flow-lost',
        statement: 'Flow lost to the wiring',
        why: 'What better wire would give back, before any pump is bought.',
      },
    ),
  );
  return lines;
}

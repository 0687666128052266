/** How the pump answers to its feed: speed against flow, the other kind of motor, the engine off. */
import type { Side } from '$lib/job/evaluate';
import { flowRatioOf } from '$lib/solver/hydraulics/feedInLoop';
import { q, say, type Finding } from '../types';
import type { Running, Study } from './study';

export function pumpFindings(side: Side, study: Study): Finding[] {
  const { running } = study;
  if (!running) return [];
  return [
    ...flowFinding(side, study),
    ...motorFinding(side, study, running),
    ...engineFinding(study),
    ...cavitationFinding(side),
  ];
}

/** The ratio of flows is not the ratio of volts: which is shown. */
function flowFinding({ loop }: Side, { inLoop }: Study): Finding[] {
  if (!inLoop) return [];
  const { pump } = loop;
  const ratio = flowRatioOf(inLoop);
  if (pump.motor !== 'brushed' || ratio === null) return [];
  return [
    {
      code: 'flow-and-volts',
      level: 'info',
      sentence: say`The pump turns at ${q(inLoop.pump.speedRatio, 'percent')} of the speed it has at ${q(pump.ratedVolts, 'voltage')}, and the flow of ${q(inLoop.flow, 'volumeFlow')} is ${q(ratio, 'percent')} of what this loop would flow then: worked out where pump and loop meet, not from volts alone.`,
    },
  ];
}

function motorFinding({ loop }: Side, { otherMotor }: Study, s: Running): Finding[] {
  if (!otherMotor) return [];
  const brushed = loop.pump.motor === 'brushed';
  if (otherMotor.status === 'stopped') {
    return [
      {
        code: 'motors-opposite',
        level: 'info',
        sentence: say`An electronic pump of the same rating holds its power: fewer volts, more current, still fewer volts. This feed could not run one at all.`,
      },
    ];
  }
  const [has, other] = [q(s.current, 'current'), q(otherMotor.current, 'current')];
  return [
    {
      code: 'motors-opposite',
      level: 'info',
      sentence: brushed
        ? say`On lost volts the two kinds of pump act oppositely. This brushed one draws ${has} and gives up flow; an electronic one of the same rating would hold its flow, draw ${other} and lose ${q(otherMotor.drop, 'voltage')} in the same feed.`
        : say`On lost volts the two kinds of pump act oppositely. This electronic one holds its flow and draws ${has}; a brushed one of the same rating would draw ${other}, lose ${q(otherMotor.drop, 'voltage')} in the same feed and give up flow.`,
    },
  ];
}

function engineFinding({ otherEngine, supply }: Study): Finding[] {
  if (!otherEngine) return [];
  const running = supply.circuit.source.running;
  if (otherEngine.status === 'stopped') {
    return running
      ? [
          {
            code: 'engine-off',
            level: 'watch',
            sentence: say`With the engine off the battery’s ${q(otherEngine.source, 'voltage')} do not run the pump through this feed.`,
          },
        ]
      : [];
  }
  return [
    {
      code: running ? 'engine-off' : 'engine-running',
      level: 'info',
      sentence: running
        ? say`With the engine off, ${q(otherEngine.source, 'voltage')} at the battery leave ${q(otherEngine.volts, 'voltage')} at the pump. Compare readings only in the same state.`
        : say`Shown with the engine off. With it running, ${q(otherEngine.source, 'voltage')} at the battery leave ${q(otherEngine.volts, 'voltage')} at the pump. Compare readings only in the same state.`,
    },
  ];
}

/** This sheet takes the pump as giving its curve. */
function cavitationFinding({ loop, steady, values }: Side): Finding[] {
  const outcome = steady[values['view.duty']!.choice as keyof typeof steady];
  if (loop.pump.cavitation !== 'counted' || !outcome.ok) return [];
  const { headLeft } = outcome.value.operating;
  if (!(headLeft < 0.99)) return [];
  return [
    {
      code: 'cavitation-besides',
      level: 'watch',
      sentence: say`Flows here leave cavitation out: in this duty ${q(headLeft, 'percent')} of the pump’s head is left by its suction side. See the sheet of the suction margin.`,
    },
  ];
}

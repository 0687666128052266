/** What the feed's numbers mean: does the pump run, what the drop is made of, which wire would do. */
import type { Side } from '$lib/job/evaluate';
import {
  dropsAboveAdvice,
  groundDrop,
  stateWithin,
  unexplainedDrop,
  UNEXPLAINED,
} from '$lib/solver/feed/dropAdvice';
import { gaugeName } from '$lib/solver/feed/gauge';
import { STOPPED_WORDS } from '$lib/solver/feed/supply';
import type { WireFor } from '$lib/solver/feed/wireFor';
import { q, say, type Finding, type Sentence } from '../types';
import { pumpFindings } from './pumpFindings';
import { protectionFindings } from './protectionFindings';
import type { Running, Study } from './study';

export function findings(side: Side, study: Study): Finding[] {
  const { supplied, running } = study;
  if (!supplied.ok) {
    return [
      {
        code: 'unsolved',
        level: 'act',
        sentence: say`The feed cannot be worked out: ${supplied.problem.message}`,
      },
      ...protectionFindings(side, study),
    ];
  }
  return [
    ...stoppedFinding(side, study),
    ...(running ? limitFinding(side, study, running) : []),
    ...(running ? statedFinding(side, running) : []),
    ...jointFindings(study),
    ...(running ? groundFinding(study, running) : []),
    ...protectionFindings(side, study),
    ...pumpFindings(side, study),
  ];
}

/** Sizes in words. */
function sizeWords(wire: WireFor): Sentence {
  if (!wire.gauge && !wire.metric) return ['no wire sold'];
  return [
    ...(wire.gauge ? [`${gaugeName(wire.gauge.awg)} AWG`] : []),
    ...(wire.gauge && wire.metric ? [' or '] : []),
    ...(wire.metric ? [q(wire.metric.area, 'wireArea')] : []),
  ];
}

/** The wire that keeps the limit, or why none does. */
function wireWords(side: Side, { wire }: Study): Sentence {
  const limit = q(side.values['feed.dropLimit']!.si!, 'voltage');
  if (!wire) return say` With ${limit} lost the pump would not run either.`;
  if (wire.leastArea === null) {
    return say` No wire keeps ${limit}: the joints alone lose more. Renew them first.`;
  }
  return [...say` To keep ${limit} over the whole feed take `, ...sizeWords(wire), '.'];
}

function stoppedFinding(side: Side, study: Study): Finding[] {
  if (!study.supplied.ok || study.supplied.value.status === 'runs') return [];
  const { reason, source, resistance } = study.supplied.value;
  return [
    {
      code: 'no-electrical-point',
      level: 'act',
      sentence: [
        ...say`The pump does not run: ${STOPPED_WORDS[reason]}. The feed has ${q(resistance, 'resistance')} at ${q(source, 'voltage')}. A meter without load still shows nearly the battery’s volts at the plug, so measure with the pump connected.`,
        ...wireWords(side, study),
      ],
    },
  ];
}

function limitFinding(side: Side, study: Study, s: Running): Finding[] {
  const limit = side.values['feed.dropLimit']!.si!;
  const state = stateWithin(s.drop, limit);
  const begins = say`Of ${q(s.source, 'voltage')} at the battery ${q(s.volts, 'voltage')} reach the pump; ${q(s.drop, 'voltage')} stay in the feed, with ${q(limit, 'voltage')} allowed.`;
  if (state !== 'over') {
    return [{ code: 'drop-allowed', level: 'good', sentence: begins }];
  }
  return [
    {
      code: 'drop-over-limit',
      level: 'watch',
      sentence: [...begins, ...wireWords(side, study)],
    },
  ];
}

/** The loop runs on volts measured at the plug; the feed described should explain them. */
function statedFinding({ values, loop }: Side, s: Running): Finding[] {
  if (values['pump.voltsFrom']!.choice === 'feed') return [];
  if (values['pump.volts']!.assumed) {
    return [
      {
        code: 'volts-assumed',
        level: 'info',
        sentence: say`The loop is worked out with ${q(loop.pump.volts, 'voltage')} at the plug, which is only assumed; this feed would leave ${q(s.volts, 'voltage')}. Measure at the plug with the pump running to see whether the feed explains it.`,
      },
    ];
  }
  const missing = unexplainedDrop(s.volts, loop.pump.volts);
  const both = say`The loop is worked out with ${q(loop.pump.volts, 'voltage')} at the plug, as stated; this feed would leave ${q(s.volts, 'voltage')}.`;
  if (missing > UNEXPLAINED) {
    return [
      {
        code: 'volts-unexplained',
        level: 'watch',
        sentence: [
          ...both,
          ...say` ${q(missing, 'voltage')} are lost at a joint not in the table: go along the circuit until a reading falls.`,
        ],
      },
    ];
  }
  return [
    {
      code: 'volts-stated',
      level: 'info',
      sentence: [
        ...both,
        ' To plan a change of the feed choose “worked out from its feed”; the other sheets then follow.',
      ],
    },
  ];
}

/** Joints and wire runs that lose more than advised, worst first. */
function jointFindings({ walk }: Study): Finding[] {
  if (!walk) return [];
  return dropsAboveAdvice(walk)
    .slice(0, 3)
    .map(({ part, advised }, i) => ({
      code: `above-advice-${i + 1}`,
      level: part.kind === 'wire' ? 'info' : 'watch',
      sentence: say`${capital(part.name)} loses ${q(part.drop, 'voltage')} under load and makes ${q(part.heat, 'electricPower')} of heat; common advice is ${q(advised, 'voltage')} at most for such a part.`,
    }));
}

const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);

function groundFinding({ walk }: Study, s: Running): Finding[] {
  if (!walk) return [];
  const ground = groundDrop(walk);
  return [
    {
      code: 'ground-side',
      level: 'info',
      sentence: say`${q(ground, 'voltage')} of the ${q(s.drop, 'voltage')} are lost on the way back. A meter with its black lead on the engine or body misses them; put it on the battery’s negative post, then on the pump’s ground pin.`,
    },
  ];
}

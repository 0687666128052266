/** Two explanations left: which they are, and the reading that decides between them. */
import { CHANNELS } from '$lib/solver/diagnosis/channels';
import type { Cause } from '$lib/solver/diagnosis/rank';
import type { FaultId } from '$lib/solver/diagnosis/types';
import { q, say, type Finding, type Sentence } from '../types';
import type { Study } from './study';
import { causeName, readingName } from './words';

/** Faults that a technician puts into one drawer, in the words of an either-or. */
const DRAWERS: readonly { readonly of: readonly FaultId[]; readonly says: string }[] = [
  { of: ['supply-drop', 'breaker-cycling', 'no-supply'], says: 'the pump lost its supply' },
  { of: ['cavitation'], says: 'it cavitates' },
  { of: ['air-bound'], says: 'it draws air' },
  { of: ['pump-rubbing'], says: 'the pump rubs' },
  { of: ['hose-collapsed', 'core-blocked-inside'], says: 'the liquid’s way is blocked' },
  { of: ['fan-dead', 'fan-reversed', 'fan-misplaced'], says: 'the fan does not do its work' },
  {
    of: ['core-blocked-outside', 'exchanger-small'],
    says: 'the front exchanger is too small or blocked',
  },
  { of: ['hot-face-air'], says: 'hot air comes round to its face' },
  { of: ['hot-intake'], says: 'the compressor breathes hot air' },
];
/** Together they must hold this share of the belief, and the lesser of the two this much. */
const NEARLY_ALL = 0.9;
const WORTH_NAMING = 0.1;
/** A reading that removes less of the doubt decides nothing. */
const DECIDES = 0.5;

interface Drawer {
  readonly says: string;
  readonly belief: number;
}

function drawersOf(causes: readonly Cause[]): Drawer[] {
  const drawers = DRAWERS.map(({ of, says }) => ({
    says,
    belief: causes.reduce(
      (sum, { fault, probability }) => sum + (fault && of.includes(fault.id) ? probability : 0),
      0,
    ),
  }));
  return drawers.sort((a, b) => b.belief - a.belief);
}

/** How the reading answers, for the pair that is mistaken for each other most. */
function answers(pair: readonly string[]): Sentence {
  const [supply, cavitates] = [DRAWERS[0]!.says, DRAWERS[1]!.says];
  if (!pair.includes(supply) || !pair.includes(cavitates)) return [];
  return say` Full volts while the flow is gone: it cavitates. Low, or coming and going (enter the mean the meter shows): the supply.`;
}

/** Said where two drawers hold nearly all belief and one reading can be expected to decide. */
export function eitherOr({ diagnosis, next }: Study): Finding[] {
  const [first, second] = drawersOf(diagnosis.causes);
  const best = next[0];
  if (!first || !second || !best || best.doubt < DECIDES) return [];
  if (second.belief < WORTH_NAMING || first.belief + second.belief < NEARLY_ALL) return [];
  // Named in the order of the list, so that a small change of belief does not turn the sentence round.
  const pair = DRAWERS.map(({ says }) => says).filter((s) => s === first.says || s === second.says);
  const what: Sentence =
    best.channel === 'volts'
      ? ['read the volts at the pump during the event.']
      : say`read “${readingName(best)}” next.`;
  return [
    {
      code: 'either-or',
      level: 'act',
      sentence: [
        `Either ${pair[0]!} or ${pair[1]!}; `,
        ...what,
        ...(best.channel === 'volts' ? answers(pair) : []),
        ...best.expects.flatMap(
          ({ cause, value }): Sentence =>
            say` With “${causeName(cause)}” it should read about ${q(value, CHANNELS[best.channel].quantity)}.`,
        ),
      ],
    },
  ];
}

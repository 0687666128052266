/** What happens on a drive, one sentence for each; the longest lists cut short. */
import type { EventDrive } from '$lib/job/models/toDrive';
import { happenings } from '$lib/solver/loop/events/plots';
import type { EventKind, LiquidPart, LoopEvent } from '$lib/solver/loop/events/types';
import { q, say, type FindingLevel, type Sentence } from '../types';

export interface Told {
  /** Number at the line in the plot; none where it stands for several. */
  readonly number: number | null;
  readonly t: number;
  readonly level: FindingLevel;
  readonly sentence: Sentence;
}

/** Kinds told this often; then only how often more. */
const TOLD_AT_MOST = 3;

const IN: Readonly<Record<LiquidPart, string>> = {
  reservoir: 'in the reservoir',
  chargeLiquid: 'in the charge cooler',
  frontLiquid: 'in the front exchanger',
};

type Happening = Exclude<EventKind, 'segment'>;

const LEVEL: Readonly<Record<Happening, FindingLevel>> = {
  'breaker-trips': 'act',
  'breaker-closes': 'info',
  'breaker-push-refused': 'watch',
  'pump-switched-off': 'info',
  'pump-switched-on': 'info',
  'prime-lost': 'act',
  'pump-primed': 'good',
  'fans-on': 'info',
  'fans-off': 'info',
  'ice-gone': 'info',
  'ice-forms': 'watch',
  'boiling-begins': 'act',
  'boiling-ends': 'good',
  'cap-lifts': 'watch',
};

/** The same kind, told shortly, for what is repeated. */
const AGAIN: Readonly<Record<Happening, string>> = {
  'breaker-trips': 'the breaker opens',
  'breaker-closes': 'the breaker closes',
  'breaker-push-refused': 'the breaker refuses to be pushed',
  'pump-switched-off': 'the pump is switched off',
  'pump-switched-on': 'the pump is switched on',
  'prime-lost': 'the pump loses its prime',
  'pump-primed': 'the pump has its prime again',
  'fans-on': 'the fans come on',
  'fans-off': 'the fans go off',
  'ice-gone': 'the ice is gone',
  'ice-forms': 'ice forms',
  'boiling-begins': 'boiling begins',
  'boiling-ends': 'boiling ends',
  'cap-lifts': 'the cap lifts',
};

function sentenceOf({ kind, value, part }: LoopEvent): Sentence {
  const T = q(value, 'temperature');
  const where = part ? IN[part] : 'in the loop';
  switch (kind as Happening) {
    case 'breaker-trips':
      return say`The breaker opens at ${q(value, 'current')}: its heat has reached the mark, the pump stops and nothing circulates.`;
    case 'breaker-closes':
      return say`The breaker has cooled to ${q(value, 'percent')} of that heat and closes: the pump turns again.`;
    case 'breaker-push-refused':
      return say`The breaker is pushed and does not hold: it is still at ${q(value, 'percent')} of the heat that opens it.`;
    case 'pump-switched-off':
      return say`The pump is switched off, with the reservoir at ${T}.`;
    case 'pump-switched-on':
      return say`The pump is switched on, with the reservoir at ${T}.`;
    case 'prime-lost':
      return say`The pump loses its prime: it turns in air and moves nothing, with the reservoir at ${T}. The volts stay, the amps fall.`;
    case 'pump-primed':
      return say`The pump has stood long enough for the air to rise out of it; it moves liquid as soon as it turns.`;
    case 'fans-on':
      return say`The fans come on: their sensor has reached ${T}.`;
    case 'fans-off':
      return say`The fans go off: their sensor is down to ${T}.`;
    case 'ice-gone':
      return say`The last ice is gone; from here on the reservoir warms.`;
    case 'ice-forms':
      return say`Ice forms in the reservoir again.`;
    case 'boiling-begins':
      return say`The liquid ${where} boils at ${T}; it gets no hotter there, its heat leaves as steam.`;
    case 'boiling-ends':
      return say`The liquid ${where} stops boiling.`;
    case 'cap-lifts':
      return say`The air over the liquid has reached ${q(value, 'gaugePressure')}: the cap lifts, and from here on the tank loses liquid or air.`;
  }
}

/** Everything that happens, with repeats of one kind told once more at the end. */
export function told({ run }: EventDrive): Told[] {
  const all = happenings(run);
  const counts = new Map<EventKind, number>();
  const list: Told[] = [];
  const more = new Map<Happening, { count: number; last: number }>();
  for (const event of all) {
    const kind = event.kind as Happening;
    const count = (counts.get(kind) ?? 0) + 1;
    counts.set(kind, count);
    if (count <= TOLD_AT_MOST) {
      list.push({
        number: list.length + 1,
        t: event.t,
        level: LEVEL[kind],
        sentence: sentenceOf(event),
      });
    } else {
      more.set(kind, { count: (more.get(kind)?.count ?? 0) + 1, last: event.t });
    }
  }
  for (const [kind, { count, last }] of more) {
    list.push({
      number: null,
      t: last,
      level: LEVEL[kind],
      sentence: say`So it goes on: ${AGAIN[kind]} ${q(count, 'count')} times more, the last time here.`,
    });
  }
  return list;
}

/** The answer of a side, kept by what it depends on, and what is read off it. */
import { invert, invertKey, trialAt } from '$lib/job/invert/invert';
import type { Inversion } from '$lib/job/invert/inversion';
import { triedInput, type TriedInput } from '$lib/job/invert/invertInputs';
import { RESULT_KINDS, type ResultKind } from '$lib/job/invert/invertQuestion';
import type { Trial } from '$lib/job/invert/invertResults';
import type { Side } from '$lib/job/evaluate';
import { Keep } from '$lib/keep';
import { once } from '$lib/once';

const answers = new Keep<Inversion>(8);

export const isKnown = (side: Side): boolean => answers.has(invertKey(side));
export const keep = (key: string, answer: Inversion): void => answers.set(key, answer);

/** One side's answer with what it is about. */
export interface Study {
  readonly side: Side;
  readonly answer: Inversion;
  readonly input: TriedInput;
  readonly kind: ResultKind;
  /** The loop with the input as it is, and with the value told; null where there is none. */
  readonly now: () => Trial | null;
  readonly told: () => Trial | null;
}

const studies = new WeakMap<Side, Study>();

/** The answer of a side; worked out here where it is not known yet. */
export function studyOf(side: Side): Study {
  let study = studies.get(side);
  if (!study) studies.set(side, (study = freshStudy(side)));
  return study;
}

function freshStudy(side: Side): Study {
  const answer = answers.of(invertKey(side), () => invert(side));
  const { question, present, at } = answer;
  const input = triedInput(question.input, side.values);
  const trial = (x: number) => trialAt(side.values, question, input, x);
  return {
    side,
    answer,
    input,
    kind: RESULT_KINDS[question.result],
    now: once(() => (present.tried.y === null ? null : trial(present.x))),
    told: once(() => at && trial(at.x)),
  };
}

/** Name of the size at `x`, where the input comes in sizes that have names of their own. */
export const sizeName = ({ input, answer }: Study, x: number): string | null =>
  answer.question.input === 'part.gauge'
    ? (input.only?.find((entry) => entry.x === x)?.name ?? null)
    : null;

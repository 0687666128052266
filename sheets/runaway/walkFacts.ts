/** What a step of the walk is, and what its words are told from. */
import type { Crossing, Knobs } from '$lib/solver/loop/runaway/types';
import { say, type Sentence } from '../types';

export type Answer = 'a' | 'b' | 'c';

export interface WalkStep {
  readonly title: string;
  readonly situation: Sentence;
  readonly question: string;
  readonly choices: Readonly<Record<Answer, Sentence>>;
  readonly right: Answer;
  /** What the loop does, told after the prediction. */
  readonly see: Sentence;
  /** Knobs and switches that "see" sets. */
  readonly set: {
    readonly knobs: Partial<Knobs>;
    readonly underhood: boolean;
    readonly open: boolean;
  };
}

/** What the steps are told from. */
export interface WalkFacts {
  readonly base: Crossing;
  readonly settle: (
    knobs: Partial<Knobs>,
    other?: { underhood?: boolean; open?: boolean },
  ) => Crossing | null;
  /** Ambient shift at which the balance is lost with cap open and feedbacks on. */
  readonly edge: { readonly knob: number; readonly why: 'fold' | 'boils' | 'end' } | null;
}

export const HOTTER_DAY = 10;
export const NOTHING = { underhood: false, open: false } as const;

/** No balance is left: said in every step in the same words. */
export const LOST = say`In this loop no balance is left then: the liquid goes on to boil.`;

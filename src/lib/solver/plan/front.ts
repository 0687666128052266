/** Which of several choices are worth their money. */

/** A choice by what it costs and what it leads to; of both, less is better. */
export interface Worth {
  readonly cost: number;
  readonly result: number;
}

/**
 * The choices that no other beats: nothing else costs no more and leads to no more, and is better in one
 * of the two. In order of cost. Of choices alike in both all stay.
 * @source Pareto order of two objectives, any text of optimisation
 */
export function nonDominated<T extends Worth>(choices: readonly T[]): T[] {
  const sorted = [...choices].sort((a, b) => a.cost - b.cost || a.result - b.result);
  const front: T[] = [];
  for (const choice of sorted) {
    const last = front.at(-1);
    const alike = last && last.cost === choice.cost && last.result === choice.result;
    if (!last || choice.result < last.result || alike) front.push(choice);
  }
  return front;
}

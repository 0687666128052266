/** What it takes: the result over the range of the one input that may change, all else as unsure as it is. */
import { spaced } from '$lib/solver/numerics/spaced';
import { thinned } from '$lib/solver/numerics/polyline';
import type { Side } from '../../evaluate';
import { invert, invertKey, trialAt } from '../../invert/invert';
import { triedInput } from '../../invert/invertInputs';
import type { Inversion } from '../../invert/inversion';
import { questionOf, RESULT_KINDS } from '../../invert/invertQuestion';
import { tried, type Trial } from '../../invert/invertResults';
import { bottlenecks, ladder } from '../../invert/invertWhy';
import { windowOf } from '../../invert/invertWindow';
import { withDrawn } from '../drawnLoop';
import { uncertainOf } from '../surenessInputs';
import { heldWithin } from '../surenessModel';
import { bandsRound, type Bands, type BandSource, type Curves } from './bandSource';

/** Values of the input tried, and loops drawn; fewer where each is followed in time. */
const EFFORT = { quick: { places: 13, draws: 96 }, slow: { places: 9, draws: 48 } } as const;

/** Steps up to the result, and what else would move it, with the value told. */
const whyOf = ({ rungs, rivals }: Pick<Inversion, 'rungs' | 'rivals'>): Curves => ({
  ...Object.fromEntries(rungs.map(({ id, by }) => [`rung ${id}`, Math.max(0, by)])),
  ...Object.fromEntries(rivals.map(({ id, gain }) => [`rival ${id}`, gain])),
});

function inversionBands(side: Side, sides: readonly Side[]): Bands | null {
  const question = questionOf(side.values);
  const inputOf = ({ values }: Pick<Side, 'values'>) => triedInput(question.input, values);
  // The input that is tried is what it is set to, whatever its own ±.
  const moved = inputOf(side).paths;
  const inputs = uncertainOf(side.values).filter(({ path }) => !moved.includes(path));
  if (inputs.length === 0) return null;
  const slow = RESULT_KINDS[question.result].followed === true;
  const { places, draws } = EFFORT[slow ? 'slow' : 'quick'];
  const answers = sides.map((one) => ({ of: one, answer: invert(one), input: inputOf(one) }));
  const { answer } = answers.find(({ of }) => of === side)!;
  const [from, to] = windowOf(answers);
  const { only } = inputOf(side);
  const xs = only
    ? thinned(
        only.map(({ x }) => x).filter((x) => x >= from && x <= to),
        places,
      )
    : spaced(from, to, places);
  const paths = inputs.map(({ path }) => path);
  const held = heldWithin(inputs);
  return bandsRound(
    { result: xs.map((x) => [x, 0] as const), ...whyOf(answer) },
    inputs,
    (drawn) => {
      // In one layer: settings are laid over it by copying what is its own.
      const values = { ...side.values, ...withDrawn(side.values, paths, held(drawn)) };
      const input = inputOf({ values });
      const trial = (x: number) => trialAt(values, question, input, x);
      const resultOf = (of: Trial) => tried(of, question).y ?? NaN;
      const told = answer.at && trial(answer.at.x);
      const better = told && !slow ? bottlenecks(told, question, input, resultOf(told)) : [];
      return {
        result: xs.map((x) => [x, resultOf(trial(x))] as const),
        ...(told && whyOf({ rungs: ladder(told, question), rivals: better })),
      };
    },
    { draws, places },
  );
}

export const INVERSION: BandSource = {
  name: 'inversion',
  keyOf: (side, sides) => JSON.stringify([uncertainOf(side.values), sides.map(invertKey), side.id]),
  bands: inversionBands,
};

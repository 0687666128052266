/**
 * Which value of one input brings a result to its target, all else as described. The input's whole range
 * is looked at, so that every value is found, turns and places without a solution included.
 */
import { NoRootError } from '$lib/solver/errors';
import { crossings, stretches, survey, type Look, type Survey } from '$lib/solver/numerics/survey';
import type { Side } from '../evaluate';
import type { Inversion } from './inversion';
import { answerOf, gapsOf } from './invertAnswer';
import { triedInput, withSettings, type TriedInput } from './invertInputs';
import { placesOf } from './invertPlaces';
import { questionOf, RESULT_KINDS, type Question } from './invertQuestion';
import { tried, trialOf, type Trial, type Tried } from './invertResults';
import { bottlenecks, ladder } from './invertWhy';
import type { Values } from '../values';

/** Looks over the whole range, and close to the present value; fewer where each takes long. */
const LOOKS = { quick: [44, 20], slow: [20, 10] } as const;
/** Share of the result's size below which a change is none. */
const NOISE = { quick: 1e-8, slow: 1e-6 } as const;
/** Input without effect: its whole range moves the result by less than this share. */
const FLAT = 2e-6;
/** Halvings and turns are placed to this share of a step. */
const SHARP = { quick: 1e-5, slow: 1e-2 } as const;
/** Looks expected beyond the places themselves: edges, crossings, the reasons. */
const BEYOND = 60;

/** What an answer depends on, as text. */
export const invertKey = ({ values, problem }: Side): string =>
  JSON.stringify([
    problem?.code ?? null,
    Object.entries(values).map(([path, { si, choice, rows }]) =>
      OF_OTHER_SHEETS.test(path) ? 0 : (si ?? choice ?? rows ?? 0),
    ),
  ]);

/** Fields no result here depends on. */
const OF_OTHER_SHEETS = /^(view|title|probe|meter|measured|instruments?|log|runaway|events)\./;

/** Where a value of the input leads. */
export function trialAt(values: Values, question: Question, input: TriedInput, x: number): Trial {
  return trialOf(withSettings(values, [...assumed(question), ...input.settings(x)]), question);
}

/** What the question itself puts into the loop. */
const assumed = ({ ambient, result }: Question) => [
  ...(ambient === null ? [] : [{ path: 'site.ambient', si: ambient }]),
  ...(result === 'drop' ? [{ path: 'pump.voltsFrom', choice: 'feed' }] : []),
];

/** @param onLook - told after every loop solved: how many, and about how many in all */
export function invert(
  { values }: Side,
  onLook: (done: number, about: number) => void = () => {},
): Inversion {
  const question = questionOf(values);
  const input = triedInput(question.input, values);
  const kind = RESULT_KINDS[question.result];
  const pace = kind.followed ? 'slow' : 'quick';
  const places = placesOf(input, LOOKS[pace]);

  const known = new Map<number, Tried>();
  const at = (x: number): Tried => {
    let result = known.get(x);
    if (!result) {
      known.set(x, (result = tried(trialAt(values, question, input, x), question)));
      onLook(known.size, Math.max(known.size, places.length + BEYOND));
    }
    return result;
  };
  const f = (x: number) => at(x).y ?? NaN;

  const size = Math.max(...places.map((x) => Math.abs(f(x))).filter(Number.isFinite), 1e-9);
  const noise = NOISE[pace] * size;
  const stepped = kind.stepped ?? false;
  const between = input.only ? 'nothing' : stepped ? 'steps' : 'curve';
  const lower = kind.better === 'lower';
  const wanted = wantedOf(question, lower, input.only !== undefined);
  const { seen, best, worst, level, cut, found } = withHoles(f, (holes) => {
    const all = [...places, ...holes].toSorted((a, b) => a - b);
    const seen = survey(f, { places: all, noise, sharp: SHARP[pace], between });
    const [best, worst] = lower ? [seen.least, seen.greatest] : [seen.greatest, seen.least];
    const level = best && levelOf(question, best.y, lower);
    // A count is passed half-way to the next.
    const cut = level === null || !stepped ? level : level + (wanted === 'above' ? -0.5 : 0.5);
    const found =
      cut === null || input.only ? [] : crossings(f, seen, cut, { stepped, noise: size * FLAT });
    return { seen, best, worst, level, cut, found };
  });
  const meets = cut === null || wanted === 'on' ? [] : stretches(seen, found, cut, wanted, noise);
  const flat = best !== null && worst !== null && Math.abs(best.y - worst.y) <= FLAT * size;
  const answer = flat
    ? { verdict: 'flat' as const, value: null, end: null }
    : answerOf(input, at(input.present).y, seen, found, meets, wanted);

  const x = answer.value ?? best?.x;
  const y = x === undefined ? null : at(x).y;
  const told = x === undefined || y === null ? null : { x, y };
  const trial = told && trialAt(values, question, input, told.x);
  const meetsIt = (y: number | null) =>
    y !== null && cut !== null && (wanted === 'above' ? y >= cut - noise : y <= cut + noise);
  return {
    question,
    present: { x: input.present, tried: at(input.present) },
    looks: seen.looks,
    gaps: gapsOf(seen, at),
    shape: seen.shape,
    overdone: overdone(seen, best, worst),
    level,
    wanted,
    best,
    worst,
    crossings: found,
    meets,
    ...answer,
    sold: (input.sold ?? []).map((size) => {
      const { y } = at(size.x);
      return { ...size, y, meets: wanted !== 'on' && meetsIt(y) };
    }),
    at: told,
    rungs: trial ? ladder(trial, question) : [],
    rivals: trial && told ? bottlenecks(trial, question, input, told.y) : [],
  };
}

/** Share of the whole effect below which a turn is not worth a word. */
const LITTLE = 0.03;

function overdone({ looks, shape }: Survey, best: Look | null, worst: Look | null): boolean {
  if (shape !== 'turns' || !best || !worst) return false;
  const there = looks.filter(({ y }) => !Number.isNaN(y));
  const enough = LITTLE * Math.abs(worst.y - best.y);
  return [there[0]!, there.at(-1)!].every(({ y }) => Math.abs(y - best.y) > enough);
}

/** Holes looked for between two looks that both have a result. */
const MOST_HOLES = 12;

/** Search again with a place known where, between two looks, there turned out to be no result. */
function withHoles<T>(f: (x: number) => number, search: (holes: readonly number[]) => T): T {
  const holes: number[] = [];
  for (;;) {
    try {
      return search(holes);
    } catch (thrown) {
      const hole = thrown instanceof NoRootError ? thrown.facts.value : undefined;
      if (hole === undefined || !Number.isNaN(f(hole)) || holes.length >= MOST_HOLES) throw thrown;
      holes.push(hole);
    }
  }
}

function levelOf({ kind, result, target, within }: Question, best: number, lower: boolean): number {
  if (kind !== 'within') return target;
  const { within: by } = RESULT_KINDS[result];
  const cost = by === 'withinDegrees' ? within : within * Math.abs(best);
  return lower ? best + cost : best - cost;
}

function wantedOf({ kind }: Question, lower: boolean, entries: boolean): Inversion['wanted'] {
  if (kind === 'at-most') return 'below';
  if (kind === 'at-least') return 'above';
  // Sizes seldom hit a target; the one that is at least as good is meant.
  if (kind === 'exactly' && !entries) return 'on';
  return lower ? 'below' : 'above';
}

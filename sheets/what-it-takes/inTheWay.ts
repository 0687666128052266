/** Why the answer is no better, and which part holds the loop next. */
import type { Rival, Rung } from '$lib/job/invert/invertWhy';
import { residenceTime } from '$lib/solver/reservoir/pullFormulas';
import { q, say, type Finding } from '../types';
import type { Study } from './study';
import { lower, RUNG } from './words';

export function inTheWay(study: Study): Finding[] {
  const { verdict } = study.answer;
  if (verdict === 'flat' || verdict === 'unsolved') return [];
  return [
    ...belowAir(study),
    ...largestStep(study),
    ...tankAndPull(study),
    ...wireOrJoints(study),
    ...soldSize(study),
    ...next(study),
  ];
}

/** Air cools nothing below itself. */
function belowAir({ answer, side, kind }: Study): Finding[] {
  const ambient = answer.question.ambient ?? side.values['site.ambient']!.si!;
  const { level } = answer;
  if (answer.verdict !== 'none' || kind.quantity !== 'temperature' || level === null) return [];
  if (level > ambient || answer.question.input === 'site.ambient') return [];
  return [
    {
      code: 'below-ambient',
      level: 'act',
      sentence: say`The target lies at or below the day’s ${q(ambient, 'temperature')}: a core cooled by air never brings the liquid below its air. Only ice or a chiller does.`,
    },
  ];
}

/** Of the steps from ambient to the result the largest is what stands in the way. */
function largestStep({ answer, kind }: Study): Finding[] {
  if (answer.verdict !== 'none' || answer.at === null) return [];
  const top = answer.rungs.reduce<Rung | null>(
    (best, rung) => (!best || rung.by > best.by ? rung : best),
    null,
  );
  if (!top) return [];
  return [
    {
      code: 'largest-step',
      level: 'watch',
      sentence: say`What stands in the way: even at its best, ${q(top.by, 'temperatureDifference')} of the way from the day’s air up to the ${q(answer.at.y, kind.quantity)} is one step: ${RUNG[top.id].tells}.`,
    },
  ];
}

/** Volume takes away the rise and nothing else; a short pull is over before the tank comes round. */
function tankAndPull(study: Study): Finding[] {
  const { answer, side } = study;
  const { input, result, pullTime } = answer.question;
  if (input !== 'part.reservoir' || (result !== 'pull-end' && result !== 'pulls')) return [];
  const all: Finding[] = [];
  const rise = answer.rungs.find(({ id }) => id === 'rise');
  if (answer.verdict === 'none' && rise) {
    all.push({
      code: 'only-the-rise',
      level: 'info',
      sentence: say`Volume can take away the rise of the liquid over the pulls, ${q(rise.by, 'temperatureDifference')} with the largest tank, and nothing else: it sets the delay, never where the loop settles or how hot the charge leaves its cooler.`,
    });
  }
  const outcome = side.steady.pull;
  const flow = outcome.ok ? outcome.value.operating.flow : 0;
  if (!(flow > 0)) return all;
  const round = residenceTime.value({ V_t: answer.at?.x ?? answer.present.x, Q: flow });
  if (pullTime < round) {
    all.push({
      code: 'pull-shorter',
      level: 'info',
      sentence: say`One pull of ${q(pullTime, 'time')} is shorter than the ${q(round, 'time')} in which the pump moves that much liquid once: its heat comes back to the charge cooler only in the next one.`,
    });
  }
  return all;
}

/** No wire takes away what the joints lose. */
function wireOrJoints({ answer }: Study): Finding[] {
  const { input, result } = answer.question;
  if (answer.verdict !== 'none' || input !== 'part.gauge' || result !== 'drop' || !answer.best)
    return [];
  return [
    {
      code: 'joints',
      level: 'watch',
      sentence: say`With the thickest wire ${q(answer.best.y, 'voltage')} is still lost: joints, relay and protection take it, and no wire gives that back. Mend the worst joint first.`,
    },
  ];
}

/** Of the sizes sold that meet the target the one nearest to the value. */
function soldSize({ answer, input, kind }: Study): Finding[] {
  const { value, sold, verdict } = answer;
  if (value === null || sold.length === 0) return [];
  const meeting = sold.filter(({ meets }) => meets);
  const size = meeting.toSorted((a, b) => Math.abs(a.x - value) - Math.abs(b.x - value))[0];
  if (!size || size.y === null) {
    return [
      {
        code: 'no-size',
        level: 'watch',
        sentence: say`None of the dash sizes listed meets it.`,
      },
    ];
  }
  return [
    {
      code: 'size',
      level: 'info',
      sentence: say`Nearest size sold that ${verdict === 'already' ? 'still meets' : 'meets'} it: ${size.name} by hose bore, ${q(size.x, input.quantity)}, with ${q(size.y, kind.quantity)}. A dash size may also name the tube replaced, and is then narrower: measure.`,
    },
  ];
}

/** What holds the loop once this input has had its say. */
function next(study: Study): Finding[] {
  const { answer, kind, input } = study;
  const [first, second] = answer.rivals;
  if (!first || study.told() === null) return [];
  const gain = (rival: Rival) => q(rival.gain, kind.difference);
  const words = (rival: Rival) => `a tenth ${rival.change} of “${lower(rival.name)}”`;
  const where =
    answer.value === null ? `With “${lower(input.name)}” at its best` : 'With that value in';
  return [
    {
      code: 'next',
      level: 'info',
      sentence: [
        ...say`${where}, the next to limit is another part: ${words(first)} is worth ${gain(first)}`,
        ...(second ? say`, ${words(second)} ${gain(second)}.` : ['.']),
      ],
    },
  ];
}

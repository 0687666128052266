/** The answer in plain words, why it is so, and what stands in the way next. */
import { whyFlat } from '$lib/job/invert/invertWhy';
import { q, say, type Finding, type Sentence } from '../types';
import { inTheWay } from './inTheWay';
import type { Study } from './study';
import { goneWords, lower, put, targetWords, valueWords } from './words';

export function findings(study: Study): Finding[] {
  return [verdict(study), ...inTheWay(study), ...shape(study), ...limits(study)];
}

const QUIET = { level: 'info' } as const;

function verdict(study: Study): Finding {
  const { answer, input, kind, side } = study;
  const { present, value, best, worst, at, question } = answer;
  const name = `“${lower(input.name)}”`;
  const target = targetWords(study);
  const subject = lower(kind.name);
  const told = (x: number) => valueWords(study, x);
  const now =
    present.tried.y === null
      ? put(`As it is, ${goneWords(present.tried.gone)}.`)
      : put('As it is: ', q(present.tried.y, kind.quantity), ' with ', told(present.x), '.');
  switch (answer.verdict) {
    case 'found':
      return {
        code: 'found',
        level: 'good',
        sentence: put(
          ...[`For ${subject} `, target, `: ${name} must be `, told(value!), '. ', now],
        ),
      };
    case 'already':
      return {
        code: 'already',
        level: 'good',
        sentence: put(
          ...[`The loop meets it: ${subject} `, target, '. '],
          ...(value === present.x
            ? [`Of ${name} the present one is the last that does. `]
            : [`${name} may go as far as `, told(value!), '. ']),
          now,
        ),
      };
    case 'any':
      return {
        code: 'any',
        level: 'good',
        sentence: put(
          ...[
            `Any value does for ${subject} `,
            target,
            `: over the range of ${name} the worst is `,
          ],
          ...[q(worst!.y, kind.quantity), '. ', now],
        ),
      };
    case 'none':
      return {
        code: 'none',
        level: 'act',
        sentence: put(
          ...[`No value of ${name} can do it: ${subject} `, target, ' is out of its reach. '],
          ...['The best it does is ', q(best!.y, kind.quantity), ', at '],
          ...[told(at?.x ?? best!.x), '. ', now],
        ),
      };
    case 'flat':
      return {
        code: 'flat',
        level: 'watch',
        sentence: say`“${input.name}” does nothing for ${subject}: ${whyFlat(side.values, question)}. It stays at ${q(best!.y, kind.quantity)}.`,
      };
    case 'unsolved':
      return {
        code: 'unsolved',
        level: 'act',
        sentence: say`Nowhere in the range of ${name} can ${subject} be found: ${answer.gaps[0] ? goneWords(answer.gaps[0].gone) : 'nothing was solved'}.`,
      };
  }
}

/** Several values, turns, jumps. */
function shape(study: Study): Finding[] {
  const { answer, input, kind } = study;
  const smooth = answer.crossings.filter(({ jump }) => !jump);
  const all: Finding[] = [];
  if (smooth.length > 1 && answer.verdict !== 'flat') {
    const list = smooth
      .slice(0, 4)
      .flatMap(({ x }, i): Sentence => [...(i ? [', '] : []), q(x, input.quantity)]);
    all.push({
      code: 'several',
      level: 'watch',
      sentence: [
        ...say`${q(smooth.length, 'count')} values of “${lower(input.name)}” give just the target: `,
        ...list,
        '. The one told is nearest to the present value.',
      ],
    });
  }
  if (answer.overdone && answer.best && answer.verdict !== 'flat') {
    all.push({
      ...QUIET,
      code: 'turns',
      sentence: say`More is not always better here: ${lower(kind.name)} is best, ${q(answer.best.y, kind.quantity)}, at ${q(answer.best.x, input.quantity)}, and worse on both sides of it.`,
    });
  }
  if (answer.end === 'jump' && answer.verdict !== 'flat') {
    all.push({
      code: 'jump',
      level: 'watch',
      sentence: say`${kind.name} jumps over the target there: just short of it and just past it are two different states.`,
    });
  }
  return all;
}

/** Where nothing can be solved, what is taken along, how sure a core is. */
function limits(study: Study): Finding[] {
  const { answer, input, side } = study;
  const all: Finding[] = answer.gaps.slice(0, 2).map((gap, i) => ({
    ...QUIET,
    code: `gap-${i + 1}`,
    sentence: say`From ${q(gap.from, input.quantity)} to ${q(gap.to, input.quantity)} there is no answer: ${goneWords(gap.gone)}.`,
  }));
  if (input.with) {
    all.push({ ...QUIET, code: 'with', sentence: say`“${input.name}”: ${input.with}.` });
  }
  const { ambient } = answer.question;
  if (ambient !== null) {
    all.push({
      ...QUIET,
      code: 'ambient',
      sentence: say`All this for a day of ${q(ambient, 'temperature')}; the other sheets keep the ${q(side.values['site.ambient']!.si!, 'temperature')} described.`,
    });
  }
  if (/^(part\.front|frontExchanger\.|chargeCooler\.)/.test(input.id) && answer.value !== null) {
    all.push({
      ...QUIET,
      code: 'core-unsure',
      sentence: say`A core known by one catalogue point is good to about ±20 %: order with that in hand, not to the last inch.`,
    });
  }
  return all;
}

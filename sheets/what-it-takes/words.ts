/** Words for what an answer holds: targets, steps, reasons. */
import { fieldAt } from '$lib/job/fields';
import type { Gone } from '$lib/job/invert/invertResults';
import type { Rung } from '$lib/job/invert/invertWhy';
import { q, say, type Said, type Sentence } from '../types';
import { sizeName, type Study } from './study';

export const lower = (text: string) =>
  /^[A-Z][a-z]/.test(text) ? text.charAt(0).toLowerCase() + text.slice(1) : text;

/** A sentence put together from words, numbers and other sentences. */
export const put = (...parts: readonly (string | Said | Sentence)[]): Sentence =>
  parts.flatMap((part): Sentence => (Array.isArray(part) ? part : [part as string | Said]));

/** A value of the input. */
export function valueWords(study: Study, x: number): Sentence {
  const name = sizeName(study, x);
  const told = say`${q(x, study.input.quantity)}`;
  return name === null ? told : [`${name} AWG (`, ...told, ')'];
}

/** The target: at most 140 °F. */
export function targetWords({ answer, kind }: Study): Sentence {
  const { question, level } = answer;
  if (question.kind === 'within') {
    const by =
      kind.within === 'withinDegrees'
        ? q(question.within, 'temperatureDifference')
        : q(question.within, 'percent');
    return say`no worse than ${by} off the best it can do`;
  }
  const word = { 'at-most': 'at most', 'at-least': 'at least', exactly: 'just' }[question.kind];
  return say`${word} ${q(level ?? question.target, kind.quantity)}`;
}

export function goneWords({ code, path, words }: Gone): string {
  switch (code) {
    case 'boils':
      return 'the liquid boils';
    case 'freezes':
      return 'the liquid freezes';
    case 'no-flow':
      return 'the pump moves nothing';
    case 'no-air':
      return 'heat is stated outright, so the charge air is not known';
    case 'pump-stopped':
      return 'the pump does not run on this feed';
    case 'not-back':
      return 'the loop is not back within two hours';
    case 'refused':
      return refusedWords(path, words);
  }
}

function refusedWords(path?: string, words?: string): string {
  if (path?.endsWith('.rating.heat'))
    return 'no core carries that much at these rated flows and inlet temperatures, however large';
  if (path === undefined) return words ?? 'a law leaves the range in which it holds';
  const { label } = fieldAt(path);
  return words === undefined
    ? `“${lower(label)}” leaves the range in which its law holds`
    : `${words} (“${lower(label)}”)`;
}

/** One step of the way up from ambient: its name, and what it tells when it is the largest. */
export const RUNG: Readonly<Record<Rung['id'], { readonly name: string; readonly tells: string }>> =
  {
    face: {
      name: 'Air at the face above ambient',
      tells:
        'the air that meets the core is already that hot: hot air comes round again, or what stands in front warms it. No core behind it does better than its air',
    },
    front: {
      name: 'Liquid leaving the front exchanger above that air',
      tells:
        'the front exchanger leaves the liquid that far above its air: core, air or flow are short',
    },
    between: {
      name: 'Liquid on its way to the charge cooler',
      tells: 'the liquid takes up heat on its way: soak of the bay and the pump',
    },
    taken: {
      name: 'Rise of the liquid over the charge cooler',
      tells:
        'the charge cooler comes after the front exchanger, so the reservoir holds its heat: the charge itself does not feel that',
    },
    tank: {
      name: 'Reservoir above the liquid that arrives',
      tells: 'the reservoir takes up heat from the bay',
    },
    cooler: {
      name: 'Charge air above the liquid that cools it',
      tells: 'the charge cooler leaves the charge that far above its liquid',
    },
    settled: {
      name: 'Reservoir above ambient before the pulls',
      tells: 'the loop is already that hot before the first pull: the front exchanger decides it',
    },
    rise: {
      name: 'Rise of the reservoir over the pulls',
      tells: 'the liquid gains that much over the pulls: here volume counts',
    },
    above: {
      name: 'Charge air above the reservoir at the end',
      tells:
        'at full power the charge leaves the charge cooler that far above the liquid, whatever the reservoir holds',
    },
  };

/** Which of all that could be done to do first, in plain words. */
import { judged, type Judge } from '$lib/job/upgrades/assess';
import type { Move } from '$lib/job/upgrades/moves';
import type { UpgradeStudy } from '$lib/job/upgrades/upgrades';
import * as plan from '$lib/solver/plan/formulas';
import { q, say, type Finding } from '../types';
import { costOf, gainOf, takesOff, type Choice } from './choice';
import { JUDGED, short } from './words';

/** Something that could be done alone: a candidate, or one kind of change in it. */
interface Alone {
  readonly name: string;
  readonly cost: number | null;
  readonly gain: number | null;
}

/** The candidates as they stand, and single moves out of them that were tried. */
function alone(choices: readonly Choice[], study: UpgradeStudy, moves: readonly Move[]): Alone[] {
  const { judge, tried } = study;
  const T_now = judged(judge, study.found);
  const wholes = choices.map((choice) => ({
    name: choice.name,
    cost: costOf(choice),
    gain: gainOf(choice, judge),
  }));
  const names = new Set(wholes.map(({ name }) => name));
  const singles = tried.flatMap(({ moves: [first, ...more], cost, T }): Alone[] => {
    const name = first === undefined || more.length > 0 ? null : moves[first]!.name;
    if (name === null || names.has(name) || T_now === null) return [];
    return [{ name, cost, gain: plan.gainFormula.value({ T_now, T_with: T }) }];
  });
  return [...wholes, ...singles];
}

/** Which to do first, of all that one could do. */
export function firstFindings(
  choices: readonly Choice[],
  study: UpgradeStudy,
  moves: readonly Move[],
): Finding[] {
  const { judge } = study;
  const candidates = choices.filter(({ parts }) => parts !== null);
  if (candidates.length === 0) {
    return [
      {
        code: 'no-candidates',
        level: 'info',
        sentence: say`Nothing is planned yet. Plan a change beside the loop as found, put it aside, and plan another: every one is then compared here.`,
      },
    ];
  }
  const options = alone(candidates, study, moves);
  const [first, second] = options
    .flatMap((option) => {
      const { cost: C, gain: dT } = option;
      return C === null || !takesOff(dT)
        ? []
        : [{ ...option, C, dT, per: plan.costPerDegreeFormula.value({ C, dT }) }];
    })
    .sort((a, b) => a.per - b.per);
  const found: Finding[] = [];
  if (first) {
    found.push({
      code: 'first',
      level: 'good',
      sentence: [
        ...say`For the money do “${short(first.name, 60)}” first: ${q(first.C, 'money')} take off ${q(first.dT, 'temperatureDifference')} ${JUDGED[judge]}, ${q(first.per, 'costPerDegree')}`,
        ...(second
          ? say`; then “${short(second.name, 60)}” at ${q(second.per, 'costPerDegree')}.`
          : ['.']),
      ],
    });
  }
  const [most] = options
    .flatMap(({ name, gain }) => (takesOff(gain) ? [{ name, gain }] : []))
    .sort((a, b) => b.gain - a.gain);
  if (most && most.name !== first?.name) {
    found.push({
      code: 'most',
      level: 'info',
      sentence: say`Money aside “${short(most.name, 60)}” takes most off: ${q(most.gain, 'temperatureDifference')}.`,
    });
  }
  return [...found, ...idleFinding(options, judge)];
}

/** What takes nothing off, named. */
function idleFinding(options: readonly Alone[], judge: Judge): Finding[] {
  const idle = options.filter(({ gain }) => gain !== null && !takesOff(gain));
  if (idle.length === 0) return [];
  const one = idle.length === 1;
  return [
    {
      code: 'no-help',
      level: 'watch',
      sentence: [
        idle.map(({ name }) => `“${short(name, 60)}”`).join(', '),
        ` ${one ? 'takes' : 'take'} nothing off ${JUDGED[judge]}: what ${one ? 'it mends' : 'they mend'} does not limit there.`,
        judge === 'cruise' ? ' Judge by the pull as well before saying no.' : '',
      ].filter(Boolean),
    },
  ];
}

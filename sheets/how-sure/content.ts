/** How sure, as data: results, lines, findings. */
import { fieldAt } from '$lib/job/fields';
import { STUDIED, type Sureness } from '$lib/job/sureness';
import type { Side } from '$lib/job/evaluate';
import { formulaLine, type Line } from '$lib/solver/formula';
import { chanceError, chanceFormula, uncertaintyLeft } from '$lib/solver/uncertainty/formulas';
import { q, say, type ContentOf, type Finding, type Result } from '../types';
import { meetsLimit, spreadOf, studyOf, SUBJECT } from './study';

/** A chance above this is as good as sure, below its opposite as good as hopeless. */
const SURE = 0.95;
/** Shares below this are not worth a measurement. */
const WORTH = 0.05;

export const content: ContentOf = (side) => {
  const study = studyOf(side);
  if (!study) return { results: [], lines: [], findings: [nothing(side)] };
  return {
    results: results(side, study),
    lines: lines(side, study),
    findings: [...verdicts(side, study), ...measureFirst(study), ...lost(study)],
  };
};

/** While the draws are worked out on another thread. */
export const UNDER_WAY: ContentOf = () => ({ results: [], lines: [], findings: [] });

function nothing(side: Side): Finding {
  return side.problem
    ? {
        code: 'unsolved',
        level: 'act',
        sentence: say`This loop cannot be solved: ${side.problem.message}`,
      }
    : {
        code: 'no-plus-minus',
        level: 'watch',
        sentence: say`No input of this loop has a ±, so nothing can be said about how sure the answer is. Press ± beside an input and say how far off it may be.`,
      };
}

function results(side: Side, study: Sureness): Result[] {
  return STUDIED.flatMap((id): Result[] => {
    const { name, symbol, quantity, difference, better } = SUBJECT[id];
    const s = spreadOf(study, id);
    const absent = 'no draw gave an answer';
    const of = (part: string, says: string, value: number | null | undefined): Result => ({
      id: `${id}-${part}`,
      name: `${name}, ${says}`,
      symbol,
      value: value ?? null,
      absent,
      quantity,
      differenceQuantity: difference,
      better,
    });
    const met = meetsLimit(side, study, id);
    return [
      of('middle', 'middle of all draws', s?.median),
      of('low', '95 % lie above', s && s.low),
      of('high', '95 % lie below', s && s.high),
      ...(met === null
        ? []
        : [
            {
              id: `${id}-meets`,
              name: `${name}, chance of meeting its limit`,
              symbol: 'p',
              value: met,
              quantity: 'percent' as const,
              better: 'higher' as const,
            },
          ]),
    ];
  });
}

function lines(side: Side, study: Sureness): Line[] {
  const all: Line[] = [];
  for (const id of STUDIED) {
    const met = meetsLimit(side, study, id);
    const s = spreadOf(study, id);
    if (met === null || !s) continue;
    const { name } = SUBJECT[id];
    const N = s.count;
    all.push(
      formulaLine(
        chanceFormula,
        { n: Math.round(met * N), N },
        {
          id: `${id}.chance`,
          statement: `${name}: chance of meeting its limit`,
          why: 'Every draw is a loop that the inputs’ ± allow, solved like the loop itself.',
        },
      ),
      // All or none: that law of errors says nothing there.
      ...(met > 0 && met < 1
        ? [
            formulaLine(
              chanceError,
              { p: met, N },
              {
                id: `${id}.chance-error`,
                statement: `${name}: how far that chance can be trusted`,
              },
            ),
          ]
        : []),
    );
  }
  const s = spreadOf(study, 'charge-cruise');
  for (const { path, share } of (study.doubts ?? []).slice(0, 3)) {
    if (!s || !(share > WORTH) || !(share < 1)) continue;
    all.push(
      formulaLine(
        uncertaintyLeft,
        { u: s.sd, S: share },
        {
          id: `left.${path}`,
          statement: `Charge air at cruise, if “${nameOf(path)}” were known exactly`,
          why: 'The input that takes most of the uncertainty away is the one to measure first.',
        },
      ),
    );
  }
  return all;
}

function nameOf(path: string): string {
  const { label } = fieldAt(path);
  return label.charAt(0).toLowerCase() + label.slice(1);
}

function verdicts(side: Side, study: Sureness): Finding[] {
  return STUDIED.flatMap((id): Finding[] => {
    const met = meetsLimit(side, study, id);
    const s = spreadOf(study, id);
    if (met === null || !s) return [];
    const { name, quantity } = SUBJECT[id];
    const range = say`${name}: between ${q(s.low, quantity)} and ${q(s.high, quantity)} in 95 of 100 loops that these ± allow. `;
    if (met >= SURE)
      return [
        {
          code: `${id}-sure`,
          level: 'good',
          sentence: [...range, ...say`It meets its limit in ${q(met, 'percent')} of them.`],
        },
      ];
    if (met <= 1 - SURE)
      return [
        {
          code: `${id}-hopeless`,
          level: 'act',
          sentence: [
            ...range,
            ...say`It meets its limit in only ${q(met, 'percent')} of them: no better measurement will save it, a change must.`,
          ],
        },
      ];
    return [
      {
        code: `${id}-open`,
        level: 'watch',
        sentence: [
          ...range,
          ...say`It meets its limit in ${q(met, 'percent')} of them: measure better before deciding.`,
        ],
      },
    ];
  });
}

function measureFirst(study: Sureness): Finding[] {
  const worth = (study.doubts ?? []).filter(({ share }) => share > WORTH).slice(0, 3);
  const [first, second] = worth;
  if (!first) return [];
  return [
    {
      code: 'measure-first',
      level: 'info',
      sentence: [
        ...say`Measure “${nameOf(first.path)}” better first: it makes ${q(first.share, 'percent')} of what is unsure about the charge air at cruise`,
        ...(second
          ? say`, then “${nameOf(second.path)}” with ${q(second.share, 'percent')}.`
          : ['.']),
      ],
    },
  ];
}

function lost(study: Sureness): Finding[] {
  if (study.failed === 0) return [];
  return [
    {
      code: 'draws-lost',
      level: 'watch',
      sentence: say`${q(study.failed, 'count')} draws made no loop that can be solved; they are left out. A ± is too wide for the part it stands at.`,
    },
  ];
}

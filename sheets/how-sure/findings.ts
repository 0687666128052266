/** What the draws mean, in plain words. */
import type { Side } from '$lib/job/evaluate';
import { FULL, STUDIED, type Doubts, type Sureness } from '$lib/job/sure/sureness';
import { q, say, type Finding } from '../types';
import { meetsLimit, spreadOf, SUBJECT } from './study';
import { nameOf, WORTH } from './words';

/** A chance above this is as good as sure, below its opposite as good as hopeless. */
const SURE = 0.95;
/** Total over first-order share from which an input is said to work together with others. */
const TOGETHER = 1.5;

export const findings = (side: Side, study: Sureness, doubts: Doubts | null): Finding[] => [
  ...verdicts(side, study),
  ...(doubts ? measureFirst(doubts) : []),
  ...lost(study),
  ...few(study),
];

export function nothing(side: Side): Finding {
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

function measureFirst({ of, shares }: Doubts): Finding[] {
  const subject = SUBJECT[of].name.charAt(0).toLowerCase() + SUBJECT[of].name.slice(1);
  if (!shares)
    return [
      {
        code: 'no-shares',
        level: 'info',
        sentence: say`What makes the ${subject} unsure cannot be told apart: some draws make no loop, or nothing varies. Narrow the ± that makes none.`,
      },
    ];
  const worth = shares.filter(({ total }) => total > WORTH);
  const [first, second] = worth;
  if (!first) return [];
  const together = worth.find((d) => d.total > TOGETHER * Math.max(d.first, d.firstError));
  return [
    {
      code: 'measure-first',
      level: 'info',
      sentence: [
        ...say`Measure “${nameOf(first.path)}” better first: it makes ${q(first.total, 'percent', 2 * first.totalError)} of what is unsure about the ${subject}`,
        ...(second
          ? say`, then “${nameOf(second.path)}” with ${q(second.total, 'percent', 2 * second.totalError)}.`
          : ['.']),
      ],
    },
    ...(together
      ? [
          {
            code: 'works-together',
            level: 'info' as const,
            sentence: say`“${nameOf(together.path)}” counts for ${q(Math.max(0, together.first), 'percent')} by itself and for ${q(together.total, 'percent')} with what it does together with others: how much it matters depends on the rest.`,
          },
        ]
      : []),
  ];
}

/** Paper from the browser's own menu cannot wait for all of them. */
function few(study: Sureness): Finding[] {
  const count = study.draws[STUDIED[0]].length;
  if (count >= FULL.draws) return [];
  return [
    {
      code: 'few-draws',
      level: 'watch',
      sentence: say`Worked out at once from ${q(count, 'count')} draws a side, and fewer for the shares, where the full study takes ${q(FULL.draws, 'count')}: a chance may be off by a few per cent. The print button of the page waits for all of them.`,
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

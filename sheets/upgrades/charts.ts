/** Plots of the choices: one small panel a result, and what is best for the money. */
import type { Judge } from '$lib/job/upgrades/assess';
import { judged } from '$lib/job/upgrades/assess';
import type { Limits } from '$lib/job/models/toLoop';
import type { UpgradeStudy } from '$lib/job/upgrades/upgrades';
import type { Chart } from '$lib/kit';
import type { Curve, Limit } from '$lib/kit/plot/chart';
import type { Result } from '../types';
import { costOf, type Choice } from './choice';
import { judgedDraws } from './draws';
import type { FrontRow } from './front';
import { halfWidth } from './plusMinus';
import { resultsOf } from './results';
import { JUDGED, short } from './words';

export interface Panel {
  readonly id: string;
  readonly title: string;
  readonly chart: Chart;
  /** Choices that have no value there, and why. */
  readonly missing: readonly string[];
}

/** Results drawn, and the limit each has. */
const DRAWN: Readonly<Record<string, 'charge' | 'reservoir' | 'zero' | null>> = {
  'charge-cruise': 'charge',
  'charge-pull': 'charge',
  'charge-after': 'charge',
  'recovery-time': null,
  'tank-peak': 'reservoir',
  'suction-margin': 'zero',
  'boiling-margin': 'zero',
  'freezing-margin': 'zero',
  'feed-margin': 'zero',
  current: null,
  'mass-added': null,
  cost: null,
  'per-degree-cruise': null,
  'per-degree-pull': null,
};

/** Letters of a label inside the plot. */
const LABEL = 34;

/** Amounts: drawn from nothing, so that their lengths can be compared. */
const FROM_NOTHING: readonly string[] = [
  'recovery-time',
  'current',
  'mass-added',
  'cost',
  'per-degree-cruise',
  'per-degree-pull',
];

/** Names this long still leave room for the plot. */
const TICK = 44;

/** A panel a result: every choice a place, its mark tied to the loop as found. */
export function panels(choices: readonly Choice[], limits: Limits): Panel[] {
  const results = choices.map((choice) => resultsOf(choice, limits));
  return Object.entries(DRAWN).flatMap(([id, limit]): Panel[] => {
    const own = results.map((list) => list.find((result) => result.id === id)!);
    if (own.every(({ value }) => value === null)) return [];
    return [
      {
        id,
        title: own[0]!.name,
        chart: panel(choices, own, limitsAt(limit, limits)),
        missing: own.flatMap(({ value, absent }, i) =>
          value === null ? [`${short(choices[i]!.name, TICK)}: ${absent}`] : [],
        ),
      },
    ];
  });
}

function limitsAt(limit: (typeof DRAWN)[string], limits: Limits): Limit[] {
  if (limit === null || limit === undefined) return [];
  const at = limit === 'zero' ? 0 : limits[limit];
  return [{ axis: 'x', at, label: 'limit', level: 'act' }];
}

const placeOf = (i: number) => i + 1;

function panel(choices: readonly Choice[], own: readonly Result[], limits: Limit[]): Chart {
  const { quantity } = own[0]!;
  const from = own[0]!.value;
  const marked = choices.flatMap((choice, i) => {
    const { value, plusMinus } = own[i]!;
    return value === null ? [] : [{ choice, value, plusMinus, place: placeOf(i) }];
  });
  return {
    x: { name: own[0]!.name, quantity, zero: FROM_NOTHING.includes(own[0]!.id) },
    y: { name: '', quantity: 'count', names: choices.map(({ name }) => short(name, TICK)) },
    curves: marked.flatMap(({ choice, value, plusMinus: pm, place }) => [
      ...(from === null || choice.parts === null
        ? []
        : [level(choice.id, choice.name, place, from, value, { tone: 'soft', thin: true })]),
      ...(pm === undefined
        ? []
        : [level(`${choice.id} ±`, `${choice.name}, ±`, place, value - pm, value + pm, WHISKER)]),
    ]),
    dots: marked.map(({ choice, value, place }) => ({
      label: short(choice.name, TICK),
      ...sideOf(choice),
      points: [[value, place] as const],
    })),
    limits,
  };
}

/** Between the tie and the mark: seen on both papers. */
const WHISKER = { tone: 'ink' } as const;

/** A level stroke at one place. */
const level = (
  id: string,
  label: string,
  place: number,
  from: number,
  to: number,
  mark: Pick<Curve, 'tone' | 'thin'>,
): Curve => ({
  id,
  label,
  quiet: true,
  ...mark,
  points: [
    [from, place],
    [to, place],
  ],
});

const sideOf = ({ id }: Choice) =>
  id === 'found'
    ? { side: 'found' as const }
    : id === 'hand'
      ? { side: 'candidate' as const }
      : { side: 'found' as const, tone: 'ink' as const };

/** Cost against what it leads to: the best for the money joined, everything tried faint behind it. */
export function frontChart(
  choices: readonly Choice[],
  study: UpgradeStudy,
  front: readonly FrontRow[],
  limits: Limits,
): Chart {
  const { judge, tried, budget } = study;
  const isAt = (choice: Choice, { cost, T }: { cost: number; T: number }) =>
    costOf(choice) === cost && judged(judge, choice.is) === T;
  const onFront = (cost: number, T: number) =>
    front.some((one) => one.cost === cost && one.T === T);
  const spots = [
    ...choices.flatMap((choice) => {
      const cost = choice.parts === null ? 0 : costOf(choice);
      const T = judged(judge, choice.is);
      if (cost === null || T === null) return [];
      const faint = choice.parts !== null && !onFront(cost, T);
      return [
        {
          label: short(choice.name, LABEL),
          x: cost,
          y: T,
          plusMinus: halfWidth(judgedDraws(judge, choice.draws)),
          ...sideOf(choice),
          ...(faint && { tone: 'soft' as const }),
        },
      ];
    }),
    ...front
      .filter((one) => one.moves.length > 0 && !choices.some((choice) => isAt(choice, one)))
      .map((one) => ({
        label: short(one.name, LABEL),
        x: one.cost,
        y: one.T,
        plusMinus: one.plusMinus,
        tone: 'accent' as const,
      })),
  ];
  return {
    x: { name: 'Cost of the parts', quantity: 'money', zero: true },
    y: { name: titleOf(judge), quantity: 'temperature' },
    curves: [
      {
        id: 'front',
        label: 'best for the money',
        tone: 'accent',
        points: front.map(({ cost, T }) => [cost, T] as const),
      },
    ],
    dots: [
      {
        label: 'combination tried',
        tone: 'soft',
        points: tried
          .filter(
            (one) => !onFront(one.cost, one.T) && !choices.some((choice) => isAt(choice, one)),
          )
          .map(({ cost, T }) => [cost, T]),
      },
    ],
    spots,
    limits: [
      { axis: 'y', at: limits.charge, label: 'limit of the charge air', level: 'act' },
      ...(budget === null
        ? []
        : [{ axis: 'x', at: budget, label: 'budget', level: 'watch' } as const]),
    ],
  };
}

export const titleOf = (judge: Judge): string => `Charge air, ${JUDGED[judge]}`;

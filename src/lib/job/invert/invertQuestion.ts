/** The question as asked on one side of a job: input, result, target. */
import type { Quantity } from '$lib/solver/quantity';
import type { DutyId } from '$lib/solver/loop/types';
import type { ResultId, TargetKind } from '../fields/whatItTakes';
import type { Values } from '../values';

export interface Question {
  readonly input: string;
  readonly result: ResultId;
  readonly duty: DutyId;
  readonly kind: TargetKind;
  /** SI; not used where the target is to stay within a little of the best. */
  readonly target: number;
  /** SI, or a share of the best. */
  readonly within: number;
  /** Assumed instead of the one described; null: as described. */
  readonly ambient: number | null;
  readonly pulls: number;
  readonly rest: number;
  readonly pullTime: number;
}

/** What is known of a result before it is worked out. */
export interface ResultKind {
  readonly name: string;
  readonly symbol: string;
  readonly quantity: Quantity;
  readonly difference: Quantity;
  readonly better: 'lower' | 'higher';
  /** Field of its target, and of what it may cost. */
  readonly target: string;
  readonly within: 'withinDegrees' | 'withinShare';
  /** Does not depend on the duty chosen. */
  readonly anyDuty?: true;
  /** Several pulls are driven for it. */
  readonly pulls?: true;
  /** Goes by steps. */
  readonly stepped?: true;
  /** Followed in time: slow. */
  readonly followed?: true;
}

const temperature = {
  quantity: 'temperature',
  difference: 'temperatureDifference',
  better: 'lower',
  target: 'temperature',
  within: 'withinDegrees',
} as const;

const same = (quantity: Quantity, target: string) =>
  ({ quantity, difference: quantity, target, within: 'withinShare' }) as const;

export const RESULT_KINDS: Readonly<Record<ResultId, ResultKind>> = {
  charge: { ...temperature, name: 'Charge air to the engine', symbol: 'T_3' },
  reservoir: { ...temperature, name: 'Reservoir', symbol: 'T_t' },
  'pull-end': {
    ...temperature,
    name: 'Charge air at the end of the last pull',
    symbol: 'T_{3,end}',
    pulls: true,
    followed: true,
  },
  pulls: {
    ...same('count', 'count'),
    name: 'Pulls until the charge is past its limit',
    symbol: 'N',
    better: 'higher',
    pulls: true,
    stepped: true,
    followed: true,
  },
  peak: {
    ...temperature,
    name: 'Charge air, hottest of the drive schedule',
    symbol: 'T_{3,max}',
    anyDuty: true,
    followed: true,
  },
  recovery: {
    ...same('time', 'time'),
    name: 'Time to recover from one pull',
    symbol: 't_{rec}',
    better: 'lower',
    followed: true,
  },
  flow: { ...same('volumeFlow', 'flow'), name: 'Liquid flow', symbol: 'Q', better: 'higher' },
  air: {
    ...same('airFlow', 'air'),
    name: 'Air through the front exchanger',
    symbol: 'Q_a',
    better: 'higher',
  },
  drop: {
    ...same('voltage', 'drop'),
    name: 'Volts lost from battery to pump',
    symbol: 'U',
    better: 'lower',
  },
  suction: {
    ...same('head', 'head'),
    name: 'Suction head to spare',
    symbol: 'm_s',
    better: 'higher',
  },
  boiling: {
    ...same('temperatureDifference', 'difference'),
    name: 'Hottest liquid below boiling',
    symbol: '\\Delta T_{boil}',
    better: 'higher',
    within: 'withinDegrees',
  },
};

export function questionOf(values: Values): Question {
  const at = (key: string) => values[`whatItTakes.${key}`]!;
  const result = at('result').choice as ResultId;
  const { target, within, stepped } = RESULT_KINDS[result];
  const kind = at('kind').choice as TargetKind;
  const input = at('input').choice!;
  return {
    input,
    result,
    duty: at('duty').choice as DutyId,
    // A count is reached or passed, never hit between two of its steps.
    kind: stepped && kind === 'exactly' ? 'at-least' : kind,
    target: at(target).si!,
    within: at(within).si!,
    ambient: input === 'site.ambient' ? null : (at('ambient').si ?? null),
    pulls: at('pulls').si!,
    rest: at('rest').si!,
    pullTime: values['reservoirQuestion.pullTime']!.si!,
  };
}

/** Driven before and between pulls. */
export const aroundPulls = ({ duty }: Question): DutyId => (duty === 'pull' ? 'cruise' : duty);

/** Fields the question needs, in the order they are asked. */
export function questionPaths(values: Values): string[] {
  const { result, kind, input, pulls: inARow } = questionOf(values);
  const { target, within, anyDuty, pulls, followed } = RESULT_KINDS[result];
  const keys = [
    'input',
    'result',
    ...(anyDuty ? [] : ['duty']),
    'kind',
    kind === 'within' ? within : target,
    ...(input === 'site.ambient' ? [] : ['ambient']),
    ...(pulls && result === 'pull-end' ? ['pulls'] : []),
    ...(pulls && (result === 'pulls' || inARow > 1) ? ['rest'] : []),
  ].map((key) => `whatItTakes.${key}`);
  return [
    ...keys,
    ...(followed && !anyDuty ? ['reservoirQuestion.pullTime'] : []),
    ...(result === 'pulls' ? ['limits.charge'] : []),
    ...(result === 'recovery' ? ['limits.recoveryBand'] : []),
  ];
}

/** Results of the log: what the fit found, what the event took. */
import type { LogFit } from '$lib/job/log/logRecord';
import { PARAMETERS, type ParameterName } from '$lib/solver/loop/identify/types';
import type { Result } from '../types';
import type { Study } from './study';
import { leastOf } from './least';
import { inSentence } from './words';

const NO_LOG = 'no log was opened';
const NO_FIT = 'no fit was made';
const REFUSED = 'no fit; why is told below';

const FITTED: readonly (readonly [id: string, name: ParameterName])[] = [
  ['front-ua', 'frontUA'],
  ['charge-ua', 'chargeUA'],
  ['capacity-rate', 'capacityRate'],
  ['heat-scale', 'heatScale'],
  ['soak-heat', 'soakHeat'],
  ['reservoir-mass', 'reservoirCapacity'],
];

export function results(study: Study): Result[] {
  const { record, flowFell, looked } = study;
  const fit = record?.fit ?? null;
  const absent = record ? (record.refused ? REFUSED : NO_FIT) : NO_LOG;
  return [
    ...(fit ? [] : atLeast(study)),
    ...FITTED.flatMap(([id, name]) =>
      !fit && name === 'frontUA' && looked ? [] : estimated(fit, absent, id, name),
    ),
    {
      id: 'flow',
      name: 'Flow over the spans',
      symbol: '\\dot V',
      value: fit?.at.flow ?? looked?.flow ?? null,
      absent,
      quantity: 'volumeFlow',
    },
    {
      id: 'flow-lost',
      name: 'Flow lost in the event',
      symbol: 'x',
      value: flowFell ? 1 - flowFell.change.after / flowFell.change.before : null,
      absent: record ? 'no fall of the flow was found in this log' : NO_LOG,
      quantity: 'percent',
    },
  ];
}

/** Without a fit the front exchanger is told from below, under the same names. */
function atLeast(study: Study): Result[] {
  const least = leastOf(study);
  if (!least) return [];
  const { tex, quantity, name } = PARAMETERS.frontUA;
  return [
    { id: 'front-ua', name: `${name}, at least`, symbol: tex, value: least.UA, quantity },
    {
      id: 'front-ua-plus-minus',
      name: `±, ${inSentence(name)}, at least`,
      symbol: `u_{${tex}}`,
      value: least.plusMinus,
      quantity,
      better: 'lower',
    },
  ];
}

/** A ± of more than so many times the value is none. */
const NO_HOLD = 3;

function estimated(fit: LogFit | null, absent: string, id: string, name: ParameterName): Result[] {
  const found = fit?.estimates.find((e) => e.name === name);
  // UA is asked for in every fit; of the others only those sought are shown.
  if (!found && name !== 'frontUA') return [];
  const { tex, quantity } = PARAMETERS[name];
  const width =
    found && found.low !== null && found.high !== null ? 0.5 * (found.high - found.low) : null;
  const signed = name === 'soakHeat';
  const held = found && width !== null && (signed || width < NO_HOLD * Math.abs(found.value));
  const half = held ? width : null;
  return [
    { id, name: PARAMETERS[name].name, symbol: tex, value: found?.value ?? null, absent, quantity },
    {
      id: `${id}-plus-minus`,
      name: `±, ${inSentence(PARAMETERS[name].name)}`,
      symbol: `u_{${tex}}`,
      value: half,
      absent: found ? 'this log does not hold it' : absent,
      quantity,
      better: 'lower',
    },
  ];
}

export const HEADLINE = ['front-ua', 'front-ua-plus-minus', 'flow', 'flow-lost'] as const;

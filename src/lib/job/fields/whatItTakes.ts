/** The question asked backwards: which value must one input have for the loop to reach a target. */
import { airPath } from './airPath';
import { chargeCooler } from './chargeCooler';
import { coolant } from './coolant';
import { cruise, DUTIES, pull, traffic } from './duties';
import { engine } from './engine';
import { fans } from './fans';
import { feed } from './feed';
import { feedWire } from './feedWire';
import { frontExchanger } from './frontExchanger';
import { hoses } from './hoses';
import { pump } from './pump';
import { reservoir } from './reservoir';
import { site } from './site';
import { soak } from './soak';
import type { Choice, FieldGroup, QuantityField } from './types';

/** Inputs that are more than one field, or more than its text. */
export const WHOLE_PARTS = [
  { value: 'part.frontSameBuild', label: 'Front exchanger of the same build: height of its face' },
  { value: 'part.hoses', label: 'All hoses: bore, fittings in proportion' },
  { value: 'part.reservoir', label: 'Reservoir: liquid in it, air space kept' },
  { value: 'part.gauge', label: 'Wire of the feed: gauge' },
] as const satisfies readonly Choice[];
export type WholePart = (typeof WHOLE_PARTS)[number]['value'];

/** Single fields people ask about most, in this order; every other one follows by its group. */
const FIRST = [
  'frontExchanger.rating.heat',
  'frontExchanger.cleanliness',
  'pump.volts',
  'fans.count',
  'fans.volts',
  'fans.coverage',
  'airPath.recirculation',
  'airPath.ramRecovery',
  'site.ambient',
  'duty.traffic.power',
  'duty.cruise.power',
  'duty.pull.power',
  'duty.cruise.speed',
  'coolant.share',
  'chargeCooler.rating.heat',
];

/** What a whole part takes the place of. */
const COVERED = new Set(['reservoir.volume', 'feed.wire.area']);

const GROUPS: readonly FieldGroup[] = [
  frontExchanger,
  chargeCooler,
  hoses,
  pump,
  feed,
  feedWire,
  reservoir,
  fans,
  airPath,
  site,
  coolant,
  engine,
  traffic,
  cruise,
  pull,
  soak,
];

const named = ({ title, fields }: FieldGroup): Choice[] =>
  fields
    .filter((field): field is QuantityField => field.kind === 'quantity')
    .filter(({ path }) => !COVERED.has(path))
    .map(({ path, label }) => ({
      value: path,
      label: path.startsWith('hose.') ? label : `${title}: ${lower(label)}`,
    }));

const lower = (text: string) =>
  /^[A-Z][a-z]/.test(text) ? text.charAt(0).toLowerCase() + text.slice(1) : text;

const SINGLE = GROUPS.flatMap(named);

export const INPUTS: readonly Choice[] = [
  ...WHOLE_PARTS,
  ...FIRST.map((path) => SINGLE.find(({ value }) => value === path)!),
  ...SINGLE.filter(({ value }) => !FIRST.includes(value)),
];

export const RESULTS = [
  { value: 'charge', label: 'Charge air to the engine, settled' },
  { value: 'reservoir', label: 'Reservoir, settled' },
  { value: 'pull-end', label: 'Charge air at the end of the last pull' },
  { value: 'pulls', label: 'Pulls in a row until the charge is past its limit' },
  { value: 'peak', label: 'Charge air, hottest of the drive schedule' },
  { value: 'recovery', label: 'Time to recover from one pull' },
  { value: 'flow', label: 'Liquid flow' },
  { value: 'air', label: 'Air through the front exchanger' },
  { value: 'drop', label: 'Volts lost from battery to pump' },
  { value: 'suction', label: 'Suction head to spare' },
  { value: 'boiling', label: 'Hottest liquid below boiling' },
] as const satisfies readonly Choice[];
export type ResultId = (typeof RESULTS)[number]['value'];

export const KINDS = [
  { value: 'at-most', label: 'at most' },
  { value: 'at-least', label: 'at least' },
  { value: 'exactly', label: 'exactly' },
  { value: 'within', label: 'within a little of the best this input can do' },
] as const satisfies readonly Choice[];
export type TargetKind = (typeof KINDS)[number]['value'];

const at = (key: string) => `whatItTakes.${key}`;

const target = (
  key: string,
  rest: Pick<QuantityField, 'label' | 'quantity' | 'default' | 'min' | 'max' | 'ask'> &
    Partial<QuantityField>,
): QuantityField => ({ kind: 'quantity', path: at(key), standing: 'common practice', ...rest });

export const whatItTakes: FieldGroup = {
  id: 'whatItTakes',
  title: 'What it would take',
  fields: [
    {
      kind: 'choice',
      path: at('input'),
      label: 'Which input',
      choices: INPUTS,
      default: 'frontExchanger.rating.heat',
      standing: 'common practice',
      ask: 'The one thing that may change; all else stays as described.',
    },
    {
      kind: 'choice',
      path: at('result'),
      label: 'For which result',
      choices: RESULTS,
      default: 'charge',
      standing: 'common practice',
      ask: 'Settled results are those of the duty chosen, held for good.',
    },
    {
      kind: 'choice',
      path: at('duty'),
      label: 'In which duty',
      choices: DUTIES,
      default: 'cruise',
      standing: 'common practice',
      ask: 'For pulls: what is driven before and between them; a pull itself counts as cruise there.',
    },
    {
      kind: 'choice',
      path: at('kind'),
      label: 'It must be',
      choices: KINDS,
      default: 'at-most',
      standing: 'common practice',
      ask: 'The last asks what may be given up: how small before it costs more than a little.',
    },
    target('temperature', {
      label: 'Target temperature',
      quantity: 'temperature',
      default: '140 °F',
      min: 233.15,
      max: 573.15,
      ask: 'What the job is to reach.',
    }),
    target('difference', {
      label: 'Target difference',
      quantity: 'temperatureDifference',
      default: '18 °F',
      min: -100,
      max: 200,
      ask: 'Degrees below boiling, at the hottest place of the loop.',
    }),
    target('flow', {
      label: 'Target flow',
      quantity: 'volumeFlow',
      default: '8 gpm',
      min: 0,
      max: 0.02,
      ask: 'What the job is to reach.',
    }),
    target('air', {
      label: 'Target air flow',
      quantity: 'airFlow',
      default: '900 cfm',
      min: 0,
      max: 50,
      ask: 'Through the whole face, as it meets the face.',
    }),
    target('head', {
      label: 'Target head',
      quantity: 'head',
      default: '6 ft',
      min: -50,
      max: 100,
      ask: 'Head available less head required.',
    }),
    target('drop', {
      label: 'Target drop',
      quantity: 'voltage',
      default: '0.5 V',
      min: 0.001,
      max: 20,
      ask: 'Out and back together: wire, joints, relay and fuse.',
    }),
    target('time', {
      label: 'Target time',
      quantity: 'time',
      default: '2 min',
      min: 0.1,
      max: 7200,
      ask: 'From the end of the pull.',
    }),
    target('count', {
      label: 'Target number of pulls',
      quantity: 'count',
      default: '3',
      min: 1,
      max: 12,
      integer: true,
      ask: 'Each within the limit on the charge air.',
    }),
    target('withinDegrees', {
      label: 'It may cost',
      quantity: 'temperatureDifference',
      default: '5 °F',
      min: 0.01,
      max: 100,
      ask: 'Against the best that this input can do.',
    }),
    target('withinShare', {
      label: 'It may cost',
      quantity: 'percent',
      default: '5 %',
      min: 0.001,
      max: 1,
      ask: 'Against the best that this input can do.',
    }),
    target('ambient', {
      label: 'On a day of',
      quantity: 'temperature',
      default: '',
      optional: true,
      example: '100 °F',
      min: 233.15,
      max: 333.15,
      ask: 'Empty: ambient as described. Only this sheet takes it.',
    }),
    target('pulls', {
      label: 'Pulls in a row',
      quantity: 'count',
      default: '3',
      min: 1,
      max: 12,
      integer: true,
      ask: 'One: a single pull out of the settled loop.',
    }),
    target('rest', {
      label: 'Between two pulls',
      quantity: 'time',
      default: '60 s',
      min: 0.1,
      max: 7200,
      ask: 'Driven in the duty chosen.',
    }),
  ],
};

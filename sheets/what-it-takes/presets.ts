/** Questions asked often, ready to press: texts for the fields, in the reader's units. */
import type { UnitSystem } from '$lib/units';

export interface Preset {
  readonly id: string;
  readonly label: Readonly<Record<UnitSystem, string>>;
  /** By the last word of the field's path. */
  readonly texts: Readonly<Record<string, string | Readonly<Record<UnitSystem, string>>>>;
}

const both = (US: string, SI: string) => ({ US, SI });

export const PRESETS: readonly Preset[] = [
  {
    id: 'core',
    label: both(
      'Front exchanger for 140 °F at cruise on a 100 °F day',
      'Front exchanger for 60 °C at cruise on a 38 °C day',
    ),
    texts: {
      input: 'frontExchanger.rating.heat',
      result: 'charge',
      duty: 'cruise',
      kind: 'at-most',
      temperature: both('140 °F', '60 °C'),
      ambient: both('100 °F', '38 °C'),
    },
  },
  {
    id: 'tank',
    label: both(
      'Reservoir that costs under 2 °F over three pulls',
      'Reservoir that costs under 1 °C over three pulls',
    ),
    texts: {
      input: 'part.reservoir',
      result: 'pull-end',
      duty: 'cruise',
      kind: 'within',
      withinDegrees: both('2 °F', '1 K'),
      pulls: '3',
      ambient: '',
    },
  },
  {
    id: 'hose',
    label: both('Smallest hose that costs under 5 °F', 'Smallest hose that costs under 3 °C'),
    texts: {
      input: 'part.hoses',
      result: 'pull-end',
      duty: 'cruise',
      kind: 'within',
      withinDegrees: both('5 °F', '3 K'),
      pulls: '1',
      ambient: '',
    },
  },
  {
    id: 'wire',
    label: both('Wire that keeps the drop to 0.5 V', 'Wire that keeps the drop to 0.5 V'),
    texts: {
      input: 'part.gauge',
      result: 'drop',
      duty: 'cruise',
      kind: 'at-most',
      drop: '0.5 V',
      ambient: '',
    },
  },
  {
    id: 'day',
    label: both(
      'Hottest day with 150 °F in the reservoir in traffic',
      'Hottest day with 65 °C in the reservoir in traffic',
    ),
    texts: {
      input: 'site.ambient',
      result: 'reservoir',
      duty: 'traffic',
      kind: 'at-most',
      temperature: both('150 °F', '65 °C'),
    },
  },
  {
    id: 'load',
    label: both(
      'Heaviest load held with 150 °F in the reservoir',
      'Heaviest load held with 65 °C in the reservoir',
    ),
    texts: {
      input: 'duty.cruise.power',
      result: 'reservoir',
      duty: 'cruise',
      kind: 'at-most',
      temperature: both('150 °F', '65 °C'),
      ambient: '',
    },
  },
];

export const textsOf = ({ texts }: Preset, units: UnitSystem): Record<string, string> =>
  Object.fromEntries(
    Object.entries(texts).map(([key, text]) => [
      key,
      typeof text === 'string' ? text : text[units],
    ]),
  );

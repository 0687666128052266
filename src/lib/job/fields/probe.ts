/** Ice and boil: what the reader showed, and how the pressure of the air is known. */
import type { FieldGroup, QuantityField } from './types';

const shown = (path: string, label: string, example: string, ask: string): QuantityField => ({
  kind: 'quantity',
  path,
  label,
  quantity: 'temperature',
  default: '',
  optional: true,
  standing: 'common practice',
  min: 200,
  max: 520,
  example,
  ask,
});

const ohms = (path: string, label: string, example: string): QuantityField => ({
  kind: 'quantity',
  path,
  label,
  quantity: 'resistance',
  default: '',
  optional: true,
  standing: 'common practice',
  min: 1,
  max: 1e7,
  example,
  ask: 'Probe unplugged, in that bath, ohm-meter on its two pins; it tells a wrong probe from a wrong bias.',
});

export const probeBaths: FieldGroup = {
  id: 'probeBaths',
  title: 'Ice and boil',
  fields: [
    shown(
      'probe.ice',
      'Reader shows in ice water',
      '36 °F',
      'Crushed ice with water, stirred; wait until it stands still.',
    ),
    shown(
      'probe.boil',
      'Reader shows in boiling water',
      '216 °F',
      'Open pot at a rolling boil, probe off the bottom, no glycol.',
    ),
    ohms('probe.iceOhms', 'Probe itself in the ice, if measured', '6.6 kohm'),
    ohms('probe.boilOhms', 'Probe itself at the boil, if measured', '200 ohm'),
    {
      kind: 'quantity',
      path: 'probe.readPlusMinus',
      label: 'A reading can be trusted to ±',
      symbol: 'u',
      quantity: 'temperatureDifference',
      default: '1 °F',
      standing: 'common practice',
      min: 0.02,
      max: 10,
      ask: 'Last digit of the reader and how well the bath was stirred, together.',
    },
    {
      kind: 'choice',
      path: 'probe.airBy',
      label: 'Pressure of the air is known by',
      choices: [
        { value: 'altitude', label: 'altitude alone' },
        { value: 'report', label: 'weather report and altitude' },
        { value: 'station', label: 'barometer in the shop' },
      ],
      default: 'altitude',
      standing: 'common practice',
      ask: 'Water boils at 212 °F only at sea level; a report is reduced to sea level and has to be taken back up.',
    },
    {
      kind: 'quantity',
      path: 'probe.barometer',
      label: 'Barometer',
      symbol: 'p_r',
      quantity: 'pressure',
      default: '29.92 inHg',
      standing: 'common practice',
      min: 45000,
      max: 110000,
      ask: 'Used where a report or a barometer is chosen.',
    },
  ],
};

/** The divider round the probe, and what its reader believes. */
import { number } from './probeNumber';
import type { FieldGroup } from './types';

export const probeCircuit: FieldGroup = {
  id: 'probeCircuit',
  title: 'Bias and reader',
  fields: [
    number(
      'probe.bias',
      'Bias resistor fitted',
      'resistance',
      '1.5 kohm',
      [1, 1e7],
      'Measured with an ohm-meter before it was soldered, or with the reader unplugged.',
      { symbol: 'R_f' },
    ),
    number(
      'probe.biasTolerance',
      'Bias resistor is good to ±',
      'percent',
      '1 %',
      [0, 0.3],
      'Of the meter that measured it, or printed on it.',
    ),
    {
      ...number(
        'probe.readerBias',
        'Bias for which the reader’s table was made',
        'resistance',
        '',
        [1, 1e7],
        'From the reader’s maker; left empty, the two baths find it.',
        { symbol: 'R_{ba}' },
      ),
      optional: true,
      example: '1.2 kohm',
    },
    {
      kind: 'choice',
      path: 'probe.readerTable',
      label: 'The reader’s table is for',
      choices: [
        { value: 'same', label: 'this probe' },
        { value: 'other', label: 'another probe, by its Beta' },
      ],
      default: 'same',
      standing: 'common practice',
      ask: 'As set in the reader.',
    },
    number(
      'probe.readerR25',
      'The reader’s probe at 25 °C',
      'resistance',
      '2.2 kohm',
      [10, 1e7],
      'Used where the table is for another probe.',
    ),
    number(
      'probe.readerBeta',
      'The reader’s probe, Beta',
      'beta',
      '3575 K',
      [1500, 6500],
      'Used where the table is for another probe.',
    ),
    number(
      'probe.supply',
      'Supply of the divider',
      'voltage',
      '5 V',
      [0.5, 60],
      'Meter on the bias resistor’s supply end.',
      { symbol: 'V_s' },
    ),
    {
      ...number(
        'probe.input',
        'Input of the reader to ground',
        'resistance',
        '',
        [100, 1e9],
        'From the maker, or ohm-meter on the bare input; empty: so high that it does not count.',
        { symbol: 'R_i' },
      ),
      optional: true,
      example: '1 megohm',
    },
    number(
      'probe.bits',
      'Bits of the converter',
      'count',
      '10',
      [6, 24],
      'Ten bits count to 1023.',
      {
        integer: true,
      },
    ),
    number(
      'probe.counts',
      'Converter is good to ± counts',
      'ratio',
      '2',
      [0, 64],
      'Its own rounding is half a count.',
    ),
  ],
};

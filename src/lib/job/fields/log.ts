/** What the reading of a log asks: which stretches count, how sure the instruments are. */
import type { FieldGroup } from './types';

/** A day of logging. */
const LONGEST = 86_400;

export const log: FieldGroup = {
  id: 'log',
  title: 'Spans of the log',
  fields: [
    {
      kind: 'table',
      path: 'log.spans',
      label: 'Spans',
      columns: [
        { key: 'from', label: 'From', kind: 'quantity', quantity: 'time', min: 0, max: LONGEST },
        { key: 'to', label: 'To', kind: 'quantity', quantity: 'time', min: 0, max: LONGEST },
        {
          key: 'use',
          label: 'Use',
          kind: 'choice',
          choices: [
            { value: 'fit', label: 'for the fit' },
            { value: 'hold-out', label: 'held out' },
          ],
        },
      ],
      default: [],
      standing: 'definition',
      minRows: 0,
      maxRows: 20,
      ask: 'Time from the start of the log. Hold one stretch out: a fit that foretells what it has not seen can be believed.',
    },
    {
      kind: 'choice',
      path: 'log.marked',
      label: 'Marked readings',
      choices: [
        { value: 'leave-out', label: 'left out of the fit' },
        { value: 'use', label: 'used like the others' },
      ],
      default: 'leave-out',
      standing: 'definition',
      ask: 'Outliers and stretches that stand still stay in the plots either way.',
    },
    {
      kind: 'choice',
      path: 'log.masses',
      label: 'Thermal masses sought',
      choices: [
        { value: 'reservoir', label: 'the reservoir’s' },
        { value: 'all', label: 'reservoir and both cores' },
        { value: 'none', label: 'none: as entered' },
      ],
      default: 'reservoir',
      standing: 'common practice',
      ask: 'A core holds little against a tank; its mass shows only in fast pulls read at its own outlet.',
    },
    {
      kind: 'quantity',
      path: 'log.temperatureError',
      label: '± of each temperature',
      symbol: 'u_T',
      quantity: 'temperatureDifference',
      default: '1 °F',
      standing: 'common practice',
      min: 0,
      max: 20,
      ask: 'Of probe and reader together; two probes of one lot disagree by less.',
      typical: { text: '1 to 3 °F', standing: 'common practice' },
    },
    {
      kind: 'quantity',
      path: 'log.flowError',
      label: '± of the flow, of its reading',
      symbol: 'u_V',
      quantity: 'percent',
      default: '10 %',
      standing: 'common practice',
      min: 0,
      max: 1,
      ask: 'By bucket and watch it comes to a few per cent; a meter with its stated K-factor is worse.',
    },
  ],
};

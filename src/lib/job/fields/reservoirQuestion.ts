import type { FieldGroup } from './types';

/** What is asked of the reservoir, apart from what it is. */
export const reservoirQuestion: FieldGroup = {
  id: 'reservoirQuestion',
  title: 'What it must do',
  fields: [
    {
      kind: 'quantity',
      path: 'reservoirQuestion.pullTime',
      label: 'One pull lasts',
      symbol: 't_p',
      quantity: 'time',
      default: '10 s',
      standing: 'common practice',
      min: 0.5,
      max: 3600,
      ask: 'Time at full power, from the log.',
      typical: { text: '6 to 12 s on a drag strip', standing: 'common practice' },
    },
    {
      kind: 'quantity',
      path: 'reservoirQuestion.allowedRise',
      label: 'Rise allowed in it',
      symbol: '\\Delta T_{all}',
      quantity: 'temperatureDifference',
      default: '10 °F',
      standing: 'common practice',
      min: 0.2,
      max: 80,
      ask: 'What the liquid may gain in one pull, as you see fit.',
    },
    {
      kind: 'quantity',
      path: 'reservoirQuestion.fillTemperature',
      label: 'Filled at',
      symbol: 'T_1',
      quantity: 'temperature',
      default: '70 °F',
      standing: 'common practice',
      min: 274.15,
      max: 333.15,
      ask: 'Thermometer in the liquid when the level was set and the cap closed.',
    },
  ],
};

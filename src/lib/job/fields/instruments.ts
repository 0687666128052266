/** Instruments of a job: how sure each is, and which checks were made before anything was concluded. */
import type { ChoiceField, FieldGroup, QuantityField } from './types';

const number = (
  path: string,
  label: string,
  quantity: QuantityField['quantity'],
  given: string,
  [min, max]: readonly [number, number],
  ask: string,
  symbol?: string,
): QuantityField => ({
  kind: 'quantity',
  path,
  label,
  quantity,
  default: given,
  standing: 'common practice',
  min,
  max,
  ask,
  ...(symbol !== undefined && { symbol }),
});

/** Empty until the check was made. */
const found = (
  path: string,
  label: string,
  quantity: QuantityField['quantity'],
  example: string,
  range: readonly [number, number],
  ask: string,
): QuantityField => ({ ...number(path, label, quantity, '', range, ask), optional: true, example });

const state = (check: string, label: string, ask: string): ChoiceField => ({
  kind: 'choice',
  path: `instruments.${check}`,
  label,
  choices: [
    { value: 'not-yet', label: 'not yet' },
    { value: 'good', label: 'done and good' },
    { value: 'off', label: 'done and off' },
    { value: 'not-fitted', label: 'not used on this job' },
  ],
  default: 'not-yet',
  standing: 'common practice',
  ask,
});

export const instruments: FieldGroup = {
  id: 'instruments',
  title: 'Instruments and their checks',
  fields: [
    number(
      'instruments.probePlusMinus',
      'Each liquid probe is good to ±',
      'temperatureDifference',
      '2 °F',
      [0.01, 20],
      'By its maker, or what ice and boil left after the trim.',
      'u_T',
    ),
    number(
      'instruments.airPlusMinus',
      'Air at the core’s face is good to ±',
      'temperatureDifference',
      '3 °F',
      [0.01, 20],
      'The probe, and how unevenly the air comes.',
      'u_a',
    ),
    {
      ...number(
        'instruments.flowPlusMinus',
        'Flow is good to ±',
        'percent',
        '',
        [0.001, 1],
        'Left empty: by the bucket test of the flow meter sheet, else ±8 % as usual.',
        'x_V',
      ),
      optional: true,
      example: '8 %',
    },
    number(
      'instruments.heatWanted',
      'Heat wanted to ±',
      'percent',
      '15 %',
      [0.005, 1],
      'A laboratory closes its balance within 3 %; in a car 15 % is accepted.',
      'x_w',
    ),
    state(
      'soak',
      'Cold soak overnight',
      'Parked in the shade with the engine cold; key on before the start.',
    ),
    state('bath', 'All probes in one bath', 'Warm water, stirred, all tips side by side.'),
    found(
      'instruments.bathSpread',
      'Highest less lowest in that bath',
      'temperatureDifference',
      '1 °F',
      [0, 60],
      'Read all of them within half a minute; who and when can stand as its origin.',
    ),
    state('ice', 'Ice bath', 'Crushed ice with water, stirred until it stands still.'),
    state('boil', 'Boiling water', 'Open pot at a rolling boil, tip off the bottom.'),
    state('leads', 'Meter’s leads held together', 'Volts range, the two tips touching.'),
    found(
      'instruments.leadsRead',
      'Volts with the leads together',
      'voltage',
      '0.01 V',
      [-1, 30],
      'What it shows is added to every reading.',
    ),
    state('clamp', 'Clamp round nothing', 'Zeroed beside the feed, jaws shut.'),
    found(
      'instruments.clampRead',
      'Amps round nothing',
      'current',
      '0.1 A',
      [-20, 100],
      'In the place and the way round in which it will be used.',
    ),
    state('gauge', 'Gauge open to the air', 'Before it is screwed in, loop cold.'),
    found(
      'instruments.gaugeRead',
      'Pressure open to the air',
      'pressureDrop',
      '0.1 psi',
      [-2e5, 1e6],
      'It must come back to nothing after the run as well.',
    ),
    state('bucket', 'Flow meter against the bucket', 'Three runs on the flow meter sheet.'),
  ],
};

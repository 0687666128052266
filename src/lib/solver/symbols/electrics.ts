/** Volts, amps, ohms. */
import { CONSTANT, type Shelf } from './book';

export const voltage: Shelf = [
  [
    [
      'voltage at the motor',
      'volts at the pump',
      'volts at the pump with that drop',
      'volts before',
      'volts after',
      'volts at a pump that holds its power',
      'volts on its plug',
    ],
    'What the motor really gets, running.',
    [9, 15],
    'A voltmeter across both pins at the back of the plug, running.',
  ],
  [
    ['volts at the battery posts'],
    'What there is to give.',
    [11.5, 15],
    'A voltmeter on the posts, engine running.',
  ],
  [
    ['rated voltage', 'volts at which the pump is rated'],
    'The volts of the maker’s curve.',
    [12, 14],
    'On the plate or the maker’s sheet.',
  ],
  [
    [
      'drop across the joint',
      'drop',
      'drop allowed',
      'left for the feed',
      'lost in the feed',
      'volts lost from battery to pump',
    ],
    'Volts that are turned into heat on the way.',
    [0, 1.5],
    'A voltmeter along the way, probe on each end, running.',
  ],
  [
    ['supply of the divider'],
    'What the reader feeds the probe’s divider with.',
    [3, 5.5],
    'A voltmeter on the reader’s supply pin.',
  ],
  [
    ['volts at the input'],
    'What the reader’s converter sees.',
    [0, 5],
    'A voltmeter at the input, probe connected.',
  ],
];

export const current: Shelf = [
  [
    [
      'current',
      'current of the pump',
      'current with that drop',
      'current of the pump at the volts then left',
      'current of pump and fans',
      'current of one fan, running',
      /^Amps of the pump/,
    ],
    'Amps drawn, running.',
    [1, 40],
    'A clamp meter round one wire.',
  ],
  [
    ['through the better contact'],
    'The part of the current that takes the better of two ways.',
    [1, 40],
    'A clamp meter round that contact’s wire.',
  ],
  [
    ['current the breaker holds', 'rating of the fuse or breaker', 'rating'],
    'What the protection carries for ever; a hot breaker carries less.',
    [3, 50],
    'Printed on the part; its maker’s derating for the heat.',
  ],
  [
    [
      'current the wire may carry',
      'table value for 105 °C insulation at 30 °C',
      'wire over fuse; below zero the wire burns',
    ],
    'What the wire stands without harm, and what is left over the fuse.',
    [5, 120],
    'By gauge and insulation, from the table named.',
  ],
  [
    [/^(error of the model’s own|standard deviation|± )/],
    'How far reading and model may part without anything being wrong.',
    [0.02, 2],
    'From the meter’s class; the model’s share is stated, not measured.',
  ],
];

const OHMS = 'Drop over current, running: too small for an ohmmeter.';
const PROBE = 'An ohmmeter on the unplugged probe, in the bath named.';

export const resistance: Shelf = [
  [
    [
      /^wire out and back/,
      'wire, hot, out and back',
      'the same at 20 °C',
      'whole feed',
      'resistance',
    ],
    'Copper on the way to the pump and back.',
    [0.005, 1],
    OHMS,
  ],
  [
    [
      /^joint \d+, in order of the current$/,
      'resistance of the joint',
      'all joints',
      'both contacts together',
      /^contact of relay \d$/,
      'joints, relay and protection',
      'protection, relay and plugs',
      'the better contact',
    ],
    'Contacts on the way: good ones a few milliohms, burnt ones a hundred.',
    [1e-3, 0.1],
    OHMS,
  ],
  [
    [/^probe\b/, 'resistance the reader believes', 'the probe’s table'],
    'Resistance of the thermistor: high when cold, low when hot.',
    [100, 30e3],
    PROBE,
  ],
  [
    [
      /^bias /,
      'by the boil',
      'by the ice',
      'first resistor',
      'second resistor',
      'third resistor',
      'network',
      'one',
      'the other',
      'side by side',
    ],
    'A fixed resistor of the divider, there or worked out.',
    [300, 50e3],
    'An ohmmeter with the circuit unpowered, or its colour bands.',
  ],
  [
    [/^one (metre of one square millimetre|ohm)/],
    'The unit or the standard wire the law is told on.',
    CONSTANT,
    'IEC 60028 for copper.',
  ],
];

/** Flows, velocities, turning and pulses. */
import { FOOT, GPM, LINE, MPH, type Shelf } from './book';

const FLOW_BY = 'A flow meter in the return, or a bucket and a watch.';
const FACE_BY = 'A vane anemometer held at a grid of places over the face, averaged.';

export const volumeFlow: Shelf = [
  [
    [
      'liquid flow',
      'liquid flow, mean',
      'flow',
      'mean flow',
      'flow before',
      'flow after',
      'flow at the start of the drive',
      'flow at which pump, loop and suction side agree',
      'flow behind this feed',
      'flow at the battery’s volts',
      'flow with it',
      'flow with the meter',
      'flow without it',
      'flow at this speed',
    ],
    'Liquid that goes round the loop; it is the same at every place of one ring.',
    [1 * GPM, 12 * GPM],
    FLOW_BY,
  ],
  [
    ['free flow at this speed', 'flow at rated speed'],
    'What the pump moves against nothing: the end of its curve.',
    [2 * GPM, 40 * GPM],
    'The pump in an open tub with short, wide hoses.',
  ],
  [
    ['rated flow', 'rated liquid flow'],
    'The flow at which the maker measured.',
    [2 * GPM, 15 * GPM],
    'On the maker’s sheet, beside the figure it belongs to.',
  ],
  [
    ['flow lost to the wiring', 'flow the meter costs', 'one pulse more or less'],
    'A difference of two flows.',
    [0, 2 * GPM],
    LINE,
  ],
  [
    ['lowest by its maker', 'highest by its maker'],
    'An end of the flows the meter is made for.',
    [0.2 * GPM, 40 * GPM],
    'The meter’s data sheet.',
  ],
  [
    ['reading holds from', 'reading holds up to'],
    'An end of the flows at which meter and input both tell the truth.',
    [0.2 * GPM, 40 * GPM],
    LINE,
  ],
  [
    [
      'flow above which K holds',
      'flow at that frequency',
      'flow at which the turbine stops, from the runs',
    ],
    'An end of what the meter can tell.',
    [0.02 * GPM, 40 * GPM],
    'The bucket, with the tap nearly shut until the pulses stop, or nearly so.',
  ],
];

export const airFlow: Shelf = [
  [
    ['air flow of one fan', 'air flow through the fans', 'air flow'],
    'Air by volume, as fans count it.',
    [0.02, 0.8],
    FACE_BY,
  ],
  [
    [
      'free air of one fan at rated speed',
      'free delivery at this speed',
      'free delivery of all fans',
    ],
    'What fans move with no core before them: the figure on the box.',
    [0.1, 1.5],
    'The maker’s sheet; on the vehicle it is never reached.',
  ],
];

export const airMassFlow: Shelf = [
  [
    ['air mass flow', 'air through the core', 'air through the covered share'],
    'Air by mass, which is what carries heat: of the engine, or of the front exchanger’s face.',
    [0.01, 2],
    'Of the engine: its air meter. Of the face: face velocity times area and density.',
  ],
  [
    ['rated air mass flow', 'air mass flow at full power'],
    'The air flow of the rating, or of the engine at its best.',
    [0.05, 1.5],
    'On the maker’s sheet, or from the engine’s air meter in a pull.',
  ],
];

export const faceVelocity: Shelf = [
  [
    [/face velocity/],
    'Air speed just ahead of the fins: flow over face, not the faster air between the fins.',
    [100 * 0.00508, 1800 * 0.00508],
    FACE_BY,
  ],
];

export const velocity: Shelf = [
  [
    ['mean velocity', 'velocity in the ports', 'velocity in the tubes'],
    'Flow over the area it passes.',
    [0.1, 3],
    'Not measured: flow and bore give it. Above 2.5 m/s (8 ft/s) hoses cost much head.',
  ],
];

export const massVelocity: Shelf = [
  [
    ['mass flow of air per free flow area'],
    'How hard the air is driven between the fins; correlations are told on it.',
    [1, 15],
    LINE,
  ],
];

export const speed: Shelf = [
  [
    ['vehicle speed'],
    'Road speed: the wind of it pushes with its square.',
    [0, 90 * MPH],
    'The speedometer or the log.',
  ],
  [
    ['speed at which it has faded out'],
    'From this speed on no hot air finds its way back to the face.',
    [10 * MPH, 80 * MPH, 'from memory'],
    'Where a thermometer at the face agrees with ambient.',
  ],
  [
    ['speed from which the fans are in the way'],
    'Faster than this, the wind alone drives more than the fans move.',
    [20 * MPH, 80 * MPH],
    'A water column across the fan changes its sign there.',
  ],
];

export const rotation: Shelf = [
  [['engine speed'], 'Turns of the crankshaft.', [10, 140], 'The tachometer or the log.'],
];

export const frequency: Shelf = [
  [
    ['slowest pulses the input takes', 'fastest pulses the input counts'],
    'An end of what the reader’s input can follow.',
    [0.1, 10_000],
    'The data sheet of the reader or the logger.',
  ],
  [
    ['frequency', 'pulses'],
    'Pulses per second from the meter.',
    [1, 1000],
    'A multimeter’s frequency range on the signal wire.',
  ],
];

export const pulsesPerVolume: Shelf = [
  [
    [/^K-factor$/, /^K of run \d+$/],
    'Pulses the meter gives per volume that has passed.',
    [1e5, 1e6, 'from memory'],
    'Count pulses while a bucket fills: pulses over volume.',
  ],
  [
    [/^± /],
    'How far the K-factor may be off.',
    [0, 5e4],
    'From the spread of several runs and the marks of the bucket.',
  ],
];

/** Length of a run of hose and such heights as are told in the same unit. */
export const length: Shelf = [
  [
    ['length', /^length of the (delivery|return|suction|transfer) hose$/],
    'Along the middle of the hose, bends and all.',
    [0.5 * FOOT, 25 * FOOT],
    'A string laid along the hose, then a tape.',
  ],
  [
    ['length one way'],
    'From battery to pump along the wire; the way back counts as long again.',
    [2 * FOOT, 30 * FOOT],
    'A string along the loom, then a tape.',
  ],
  [
    ['width of the core', 'height of the core'],
    'Fins only, without end tanks.',
    [0.1, 1.2],
    'A tape across the finned face.',
  ],
  [
    ['liquid level above the impeller’s eye', 'liquid level above the inlet port'],
    'Free height of liquid over that place.',
    [-1 * FOOT, 3 * FOOT],
    'A tape from the liquid’s surface, vehicle level.',
  ],
  [
    ['one metre'],
    'The unit, put in so that the dimensions agree.',
    'A fixed value: nothing to look for.',
    'Nothing to measure.',
  ],
];

/** Pressures, heads and altitudes. */
import { CONSTANT, FOOT, INCH_OF_WATER, LINE, PSI, type Shelf } from './book';

const MANOMETER = 'A water column or a low-range gauge across it, one leg on each side.';

export const airPressure: Shelf = [
  [
    [
      'air pressure lost in the core',
      'lost in the core',
      'lost in the other cores',
      'pressure lost in core and stack',
      'pressure lost where clear',
      'pressure lost',
      'pressure the air loses',
      'rated loss',
      'part of the loss that goes with velocity, at the rated one',
      'part that goes with velocity squared, at the rated one',
    ],
    'What it costs to push air through fins: about with velocity when slow, with its square when fast.',
    [0, 1.5 * INCH_OF_WATER],
    MANOMETER,
  ],
  [
    ['ram pressure', 'ram pressure across the stack', 'pressure that drives the air'],
    'What pushes the air: wind of the road, and the fans where they lift.',
    [0, 2 * INCH_OF_WATER],
    'A water column from the face of the core to behind it, at a steady speed.',
  ],
  [
    ['pressure of the fan', 'pressure of the fans'],
    'What the fan adds; below zero it stands in the way.',
    [-0.5 * INCH_OF_WATER, 0.8 * INCH_OF_WATER],
    'A water column from inside the shroud to the air behind the fan.',
  ],
  [
    [/^(charge-air )?pressure lost (in the charge cooler|before the compressor)/],
    'Boost or suction paid on the way; it goes about with flow squared.',
    [0, 1.5 * PSI],
    'A boost gauge on either side, at full power.',
  ],
  [
    ['rise the compressor still works against, bypass open'],
    'Even with the bypass open the compressor lifts air round a circle.',
    [0.3 * PSI, 2 * PSI, 'from memory'],
    'A gauge across the blower with the bypass open, cruising.',
  ],
  [
    [/^± /],
    'How far the barometer or altitude may be off, as pressure.',
    [50, 3000],
    'From where the reading comes: a good barometer 100 Pa, a guess by the map 2000 Pa.',
  ],
];

export const gaugePressure: Shelf = [
  [
    ['manifold pressure, gauge'],
    'Above the day’s air; below zero the throttle is partly shut.',
    [-11 * PSI, 25 * PSI],
    'The boost gauge, on a port after the charge cooler.',
  ],
  [
    ['pressure in the sealed tank, gauge', 'reservoir above that'],
    'How far the tank stands above the air around; the cap sets its upper end.',
    [0, 20 * PSI],
    'A gauge on the tank’s cap neck, warm.',
  ],
];

export const pressure: Shelf = [
  [
    [
      'ambient pressure',
      'pressure of the air at this altitude',
      'pressure of the air here',
      'pressure of the air, absolute',
      'pressure of the surrounding air',
    ],
    'The weight of the air above, not reduced to sea level.',
    [75e3, 103e3],
    'A barometer on the spot; a weather report must be brought down from sea level.',
  ],
  [
    ['pressure as reported, for sea level'],
    'What the weather report says, as if the place lay at sea level.',
    [97e3, 104e3],
    'The weather report of the nearest station.',
  ],
  [
    ['pressure at sea level', 'standard pressure at sea level'],
    'The standard atmosphere’s starting point.',
    CONSTANT,
    'ISO 2533.',
  ],
  [
    ['manifold pressure, absolute'],
    'What really fills the cylinders: gauge plus the air of the day.',
    [25e3, 280e3],
    'Boost gauge plus barometer.',
  ],
  [
    ['pressure at the pump’s inlet'],
    'Absolute pressure where the liquid enters the pump.',
    [50e3, 250e3],
    'A gauge that reads below zero too, on a tee at the pump’s inlet, plus the barometer.',
  ],
  [
    [
      'saturation pressure of water at this temperature',
      'vapour pressure at the inlet temperature',
      'vapour pressure of the coolant',
      'vapour pressure when filled',
      'vapour pressure when hot',
    ],
    'Below this pressure the liquid boils at its temperature; it doubles about every 20 °C.',
    [600, 200e3],
    'Not measured: from tables, by temperature and mixture.',
  ],
];

export const pressureDrop: Shelf = [
  [
    [
      'pressure lost in the charge cooler',
      'pressure lost in the core',
      'pressure lost in the front exchanger',
      'pressure the liquid loses',
      'pressure lost in the hose',
      'rated loss',
      'lost at the rated flow',
      'lost in the meter',
      'part of the loss that goes with flow, at the rated flow',
      'part that goes with flow squared, at the rated flow',
    ],
    'What the pump must make good: up to four times as much at twice the flow.',
    [0.05 * PSI, 5 * PSI],
    'One gauge moved between two tees, or a differential gauge, at a known flow.',
  ],
  [
    ['pressure'],
    'The pressure that the line turns into a head of liquid.',
    [0, 25 * PSI],
    'A gauge at the place the line names.',
  ],
  [
    [/, (predicted|read)$/],
    'The pump’s own rise: what the model expects, or what the gauge said.',
    [0.5 * PSI, 20 * PSI],
    'Two gauges, before and after the pump, at the same height.',
  ],
  [
    [/^(error of the model’s own|standard deviation|± )/],
    'How far reading and model may part without anything being wrong.',
    [50, 5000],
    'From the gauge’s class; the model’s share is stated, not measured.',
  ],
];

export const head: Shelf = [
  [
    ['head at rated speed', 'head at this speed', 'head of the pump', 'head the loop asks'],
    'Height to which the pump could lift its liquid: the same for water and glycol.',
    [0.5, 15],
    'Two gauges at the pump: their difference over density and gravity.',
  ],
  [
    [
      'head',
      'suction hose',
      'hose to the first core',
      'hose between the cores',
      'hose back to the reservoir',
      'head lost in the suction hose',
    ],
    'What that run takes of the pump’s head.',
    [0.05, 10],
    'A gauge at both ends of the run.',
  ],
  [
    ['liquid level above the pump'],
    'Free height of liquid over the pump: it pushes liquid in.',
    [-1 * FOOT, 3 * FOOT],
    'A tape from the liquid’s surface to the middle of the pump’s inlet.',
  ],
  [
    ['suction head available', 'suction margin'],
    'What keeps the liquid from boiling at the pump’s inlet, as height.',
    [0.5, 30],
    'A gauge at the pump’s inlet that reads below zero, with temperature and barometer.',
  ],
  [
    [
      'suction head the pump needs (NPSH3)',
      'suction head the pump needs',
      'estimate for every flow',
    ],
    'Below this the head has fallen by 3 % through vapour in the impeller (ISO 9906).',
    [0.5, 4, 'from memory'],
    'The maker’s curve; seldom printed for small pumps, so mostly an estimate.',
  ],
  [
    ['suction head that suppresses cavitation altogether'],
    'With this much no bubble forms at all; it lies far above what the pump needs to keep its head.',
    [2, 20, 'from memory'],
    LINE,
  ],
];

export const altitude: Shelf = [
  [
    ['altitude'],
    'Height above sea level: it sets air pressure and boiling points.',
    [0, 2500],
    'A map or any positioning receiver.',
  ],
  [
    [/^standard temperature over its gradient/],
    'The height at which the straight-line atmosphere would end.',
    CONSTANT,
    'ISO 2533: 288.15 K over 0.0065 K/m.',
  ],
];

/** Properties of liquids, air and metals. */
import { CONSTANT, type Shelf } from './book';

const MIXTURE =
  'Not measured on the vehicle: by kind, mixture (refractometer) and temperature, from the source named.';

export const density: Shelf = [
  [
    ['air density', 'density of the air'],
    'Mass of a cubic metre of outdoor air: less when hot or high up.',
    [0.85, 1.4],
    'From barometer and thermometer.',
  ],
  [
    ['density of standard air'],
    'Air for which fans and cores are rated.',
    CONSTANT,
    'ISO 5801: 1.2 kg/m³.',
  ],
  [[/^density/], 'Mass of a volume of liquid: glycol heavier, hot lighter.', [920, 1110], MIXTURE],
];

export const viscosity: Shelf = [
  [
    ['viscosity of standard air', 'viscosity of the air'],
    'How thick the air is: it grows with temperature.',
    [1.5e-5, 2.2e-5],
    'Not measured: by temperature, ISO 2533.',
  ],
  [
    [/viscosity/],
    'How thick the fluid is: cold glycol is many times as thick as hot water, and air far thinner.',
    [1.5e-5, 2e-2],
    MIXTURE,
  ],
];

export const conductivity: Shelf = [
  [
    ['conductivity of the fin'],
    'How well the metal passes heat along the fin.',
    [15, 240, 'from memory'],
    'By alloy: aluminium 150 to 220 W/(m K).',
  ],
  [
    [/^conductivity/],
    'How well the liquid passes heat on at rest: water best.',
    [0.3, 0.7],
    MIXTURE,
  ],
];

export const specificHeat: Shelf = [
  [
    [/^specific heat of (the )?air$/, 'specific heat'],
    'Heat that warms a kilogram of air by a degree.',
    [1000, 1040],
    'Not measured: by temperature.',
  ],
  [
    ['specific heat of aluminium, from memory'],
    'Heat that warms a kilogram of the metal by a degree.',
    CONSTANT,
    'Any handbook.',
  ],
  [
    [/^specific heat/],
    'Heat that warms a kilogram of liquid by a degree: glycol takes less than water.',
    [3000, 4250],
    MIXTURE,
  ],
];

export const volumetricHeatCapacity: Shelf = [
  [[/^heat capacity/], 'Heat that warms a volume of liquid by a degree.', [3.2e6, 4.25e6], MIXTURE],
];

export const gasConstant: Shelf = [
  [
    ['gas constant of air'],
    'Ties pressure, density and temperature of dry air.',
    CONSTANT,
    'ISO 2533: 287.05287 J/(kg K).',
  ],
];

export const beta: Shelf = [
  [
    ['Beta of the probe'],
    'How steeply a thermistor’s resistance falls.',
    [2500, 5000],
    'The data sheet, or two readings in two baths.',
  ],
];

export const perKelvin: Shelf = [
  [
    ['first coefficient', 'second coefficient', 'third coefficient'],
    'A coefficient of Steinhart and Hart’s equation, found from three points of the probe.',
    [-1e-6, 3e-3],
    'Three baths, resistance and temperature in each.',
  ],
  [
    ['one over the absolute temperature'],
    'The form in which the thermistor’s law is told.',
    [0.0024, 0.0042],
    'One over the kelvin of the thermometer.',
  ],
  [
    ['share lost per kelvin'],
    'How much of its resistance the probe loses for each degree.',
    [0.02, 0.06],
    'Two resistances a few degrees apart.',
  ],
];

/** Sizes of parts: areas, bores, dimensions, volumes, masses, numbers of things. */
import { ANY, CONSTANT, GALLON, INCH, LINE, POUND, type Shelf } from './book';

const CALIPER = 'A caliper on a piece of the core, or a loupe with a scale through the face.';

export const area: Shelf = [
  [['face of the core'], 'Finned width times height.', [0.03, 0.6], 'A tape across the fins.'],
  [
    ['swept disc of one fan'],
    'The circle the blades pass over, hub included.',
    [0.01, 0.2],
    'The diameter of the ring, measured with a tape.',
  ],
  [
    [
      'all that the air touches',
      'bare tube between the fins',
      'both faces of all fins',
      'inside of all tubes',
    ],
    'Surface that passes heat on.',
    [0.5, 30],
    'Not measured: from the counts and sizes of tubes and fins.',
  ],
  [
    ['free flow area between the fins', 'inside of the tubes of one pass', 'flow area'],
    'What is open to the stream.',
    [5e-5, 0.5],
    LINE,
  ],
  [
    ['one square metre'],
    'The unit, put in so that the dimensions agree.',
    CONSTANT,
    'Nothing to measure.',
  ],
];

export const wireArea: Shelf = [
  [
    ['area of copper', 'least area of copper'],
    'Cross-section of the strands, without insulation.',
    [0.5e-6, 25e-6],
    'Printed on the wire as gauge or mm²; else strands times the area of one, by caliper.',
  ],
  [
    ['one square millimetre'],
    'The unit, put in so that the dimensions agree.',
    CONSTANT,
    'Nothing to measure.',
  ],
];

export const bore: Shelf = [
  [
    [
      'bore',
      /^bore of the (delivery|return|suction|transfer) hose$/,
      'bore at the probe',
      'bore of the meter',
    ],
    'Inside diameter the liquid really has; a dash size may name it or the tube it replaces.',
    [0.375 * INCH, 1.25 * INCH],
    'A caliper in the cut end of the hose, or a drill shank that just fits.',
  ],
  [
    ['bore of the fitting'],
    'The narrowest place of an end fitting; barbs are often 70 to 85 % of the hose.',
    [0.25 * INCH, 1.1 * INCH, 'from memory'],
    'A caliper in the barb or swivel.',
  ],
  [
    ['fin height, tube to tube'],
    'Gap between two tubes, which the fin fills.',
    [5e-3, 14e-3],
    CALIPER,
  ],
  [['fin pitch'], 'From one fin to the next.', [1e-3, 3e-3], 'Fins counted over an inch.'],
  [['tube pitch'], 'From one tube to the next.', [6e-3, 18e-3], CALIPER],
  [
    ['louver length', 'louver pitch', 'length it is told on'],
    'Size of the slits that break up the air’s skin on the fin.',
    [0.7e-3, 13e-3],
    CALIPER,
  ],
  [
    ['thickness of the fins'],
    'Sheet the fins are folded from.',
    [0.05e-3, 0.25e-3],
    'A micrometer on a loose fin.',
  ],
  [['tube height outside'], 'Small outside size of a flat tube.', [1.2e-3, 6e-3], CALIPER],
  [
    ['hydraulic diameter inside a tube', 'hydraulic diameter of the air passages'],
    'Four times area over wetted edge: the bore of a round tube that would act alike.',
    [1e-3, 8e-3],
    LINE,
  ],
];

export const dimension: Shelf = [
  [
    ['depth of the core along the air'],
    'How far the air travels between the fins.',
    [0.5 * INCH, 5 * INCH],
    'A ruler from the side.',
  ],
  [
    [
      'height of the finned face',
      'width of the finned face',
      'height of the stack',
      'length of a tube between the end tanks',
      'height found',
      'height now',
    ],
    'Fins only, without end tanks.',
    [0.1, 1.2],
    'A tape across the finned face.',
  ],
  [
    ['diameter of the swept ring'],
    'Tip to tip across the hub.',
    [6 * INCH, 20 * INCH],
    'A tape across the fan’s ring.',
  ],
  [
    ['depth of the tip in the bore', 'straight hose wanted'],
    'How a probe or meter must sit so that it reads the stream and not the wall or a swirl.',
    [2e-3, 0.5],
    'A ruler; the bore sets it.',
  ],
  [
    ['from the inlet port to the impeller’s eye'],
    'How far inside the pump the liquid is sucked.',
    [0, 4 * INCH],
    'A ruler on the pump’s body.',
  ],
  [
    ['wire over its insulation'],
    'Outside of the wire: through it the heat leaves.',
    [1e-3, 12e-3],
    'A caliper.',
  ],
  [['diameter of 36 gauge'], 'Where the gauge series begins: 0.005 inch.', CONSTANT, 'ASTM B258.'],
];

export const roughness: Shelf = [
  [
    ['roughness of the wall'],
    'Height of the bumps inside a hose; smooth rubber acts almost as glass.',
    [0, 50e-6, 'from memory'],
    'Not measured: by kind of hose, from handbooks.',
  ],
];

export const finDensity: Shelf = [
  [
    ['fins per length'],
    'How close the fins stand along a tube.',
    [8 / INCH, 25 / INCH],
    'Count fins over one inch.',
  ],
];

export const volume: Shelf = [
  [
    [
      'liquid in the reservoir',
      'full volume of the reservoir',
      'liquid needed in the reservoir',
      'liquid in the reservoir now',
      'liquid in the reservoir, by hand',
    ],
    'What the tank holds, or would have to.',
    [0.2 * GALLON, 8 * GALLON],
    'Fill it from a measuring jug.',
  ],
  [
    [
      'liquid in the charge cooler',
      'liquid in the front exchanger',
      'liquid in the hoses',
      'liquid outside the reservoir',
      'liquid in the loop as found',
      'liquid in the loop of the candidate',
    ],
    'Liquid that sits there.',
    [0.05 * GALLON, 10 * GALLON],
    'Fill the part with water and weigh or pour it out; for hoses bore and length give it.',
  ],
  [
    ['air space left when hot', 'air space when filled', 'growth of the liquid'],
    'Room the liquid needs to grow into, and how much it grows: about 3 % from cold to hot.',
    [0, 1 * GALLON],
    'From the liquid’s surface up to the neck, filled from a jug.',
  ],
  [
    ['volume in the bucket', '± of the level in the bucket'],
    'What was caught, and how well its mark can be read.',
    [0, 6 * GALLON],
    'The bucket’s marks; better, its weight over the density.',
  ],
];

export const displacement: Shelf = [
  [['displacement'], 'Swept volume of all cylinders.', [0.8e-3, 9e-3], 'The vehicle’s papers.'],
];

export const mass: Shelf = [
  [
    ['mass of the liquid', 'liquid added'],
    'What the liquid weighs.',
    [-20 * POUND, 90 * POUND],
    'Worked out from volume and density, or a scale under the drain can.',
  ],
  [
    ['metal of the charge cooler', 'metal of the front exchanger', 'metal of the reservoir'],
    'Metal that warms and cools with the liquid.',
    [0.5 * POUND, 30 * POUND],
    'A scale, the part empty.',
  ],
  [
    [
      'mass of the parts',
      'mass of these parts',
      'mass added, less what comes off',
      'mass of what comes off',
      /^mass that one in row \d+ takes off$/,
      /^mass of one in row \d+$/,
      /^sum \d+ above$/,
    ],
    'What the change weighs.',
    [0, 120 * POUND],
    'A scale, or the parts pages.',
  ],
  [
    ['ice left at its end', 'ice when the drive begins'],
    'Ice in the tank.',
    [0, 60 * POUND],
    'Weigh the bag before it goes in.',
  ],
];

export const acceleration: Shelf = [
  [
    ['standard gravity'],
    'Weight over mass: turns pressure into height.',
    CONSTANT,
    'Fixed by definition, 9.80665 m/s².',
  ],
];

export const count: Shelf = [
  [
    ['1 where the inlet faces up, 0 level, −1 where it faces down'],
    'Which way the pump’s inlet points: it adds or takes the depth to the impeller’s eye.',
    [-1, 1],
    'Look at the pump as it is mounted.',
  ],
  [
    ['bores', 'parts of the bore'],
    'A length told in bores, as makers do for straight runs.',
    [2, 20],
    'The maker’s sheet; 10 before and 5 after is common.',
  ],
  [
    ['draws for which it holds', 'draws with an answer'],
    'Loops tried with inputs drawn from their ±.',
    [0, 1e5],
    'Counted by the sheet.',
  ],
  [
    ['gauge; 1/0 to 4/0 count as 0 to -3'],
    'Wire gauge: three steps halve the copper.',
    [-3, 22],
    'Printed on the wire.',
  ],
  [
    ['highest count of the converter'],
    'Steps of the input, 1023 for ten bits.',
    [255, 65535],
    'The reader’s data sheet.',
  ],
  [
    ['number of bends'],
    'Elbows and tight turns, each counted as a right angle.',
    [0, 12],
    'Follow the hose with a finger.',
  ],
  [
    [
      'number of fans',
      'fans',
      'number of pumps',
      'pumps in parallel',
      'pumps in series',
      'pumps on this feed',
    ],
    'How many there are.',
    [0, 4],
    'Look.',
  ],
  [
    ['passes'],
    'How often the liquid crosses the core before it leaves.',
    [1, 4],
    'Both ports on one tank: an even number; on opposite tanks: odd.',
  ],
  [
    ['pulses counted'],
    'Pulses during one bucket.',
    [200, 1e6],
    'The reader’s counter, or a log of the signal.',
  ],
  [['pulls'], 'Pulls one after another.', [1, 20], 'As the day goes.'],
  [['runs less one'], 'How many runs are left to show scatter.', [1, 20], 'Counted by the sheet.'],
  [['tubes'], 'Tubes side by side in the stack.', [5, 120], 'Count them at the face.'],
];

export const money: Shelf = [
  [
    ['cost of the parts', 'cost of these parts', /^price of one in row \d+$/, /^sum \d+ above$/],
    'Price of all parts of the change, as typed in.',
    ANY,
    'Parts pages or the quote.',
  ],
];

export const costPerDegree: Shelf = [
  [['cost of each degree taken off'], 'Price over the degrees the change takes off.', ANY, LINE],
  [
    [
      'cost of a degree, upper end of 95 %',
      'cost of a degree, lower end of 95 %',
      '± of the cost of a degree',
    ],
    'What a degree costs in the loops that the ± of the inputs allow.',
    ANY,
    LINE,
  ],
];

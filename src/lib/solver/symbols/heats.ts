/** Heat, power, conductances, what stores heat. */
import { ANY, CONSTANT, LINE, type Shelf } from './book';

export const heat: Shelf = [
  [
    ['heat from the charge air', 'heat carried', 'heat into the liquid in the pull'],
    'What the charge gives to the liquid: a few hundred watts at cruise, tens of kilowatts in a pull.',
    [-2e3, 60e3],
    'Flow times the liquid’s rise through the charge cooler.',
  ],
  [
    ['heat entering the liquid'],
    'All ways in together.',
    [0, 60e3],
    'At a steady temperature it equals what the front exchanger gives off.',
  ],
  [
    [
      /^heat given off/,
      'heat leaving at the front exchanger',
      'heat the front exchanger carries now',
    ],
    'What the front exchanger puts into its air.',
    [0, 60e3],
    'Flow times density, specific heat and the drop of the liquid through the core.',
  ],
  [
    [
      'heat from the engine',
      'heat soaked in',
      'heat into the hoses',
      'heat into the reservoir',
      'heat into the reservoir from around it',
    ],
    'Heat that comes in without any boost: from the engine and its bay. Below zero it goes out.',
    [-500, 4e3, 'from memory'],
    'Pump on, engine hot, no boost: how fast the liquid warms, times the loop’s heat capacity.',
  ],
  [
    ['heat from the pump', 'heat of the pump into the liquid'],
    'Most of what the pump takes from the battery ends here.',
    [10, 400],
    'Volts times amps at the pump’s plug.',
  ],
  [
    ['heat of the other cores'],
    'What a condenser or cooler puts into air that meets this core too.',
    [0, 6e3, 'from memory'],
    'Air flow times the rise of the air between the cores; air conditioning on and off tells it.',
  ],
  [[/^± /], 'How far the heat may be off.', [50, 5e3], LINE],
];

export const conductance: Shelf = [
  [
    [
      'overall conductance',
      'conductance of the core',
      'conductance of this zone',
      'conductance at the rating',
      'conductance at its rating',
      'conductance at the rating now',
      'UA found by the fit',
      'UA as described, at the log’s means',
      'least UA that cools the liquid so',
      'low end of the interval',
      'high end of the interval',
    ],
    'Heat per degree between two streams side by side: area times how well each passes heat on.',
    [20, 2500],
    'From a steady reading of flow and four temperatures, or backed out of a rating.',
  ],
  [
    [
      'air side',
      'air side of the whole core, all of it with this air',
      'conductance of the air side',
      'liquid side',
      'liquid side of the whole core',
      'conductance of the liquid side',
    ],
    'One side alone, as if the other passed heat freely.',
    [50, 8000],
    'Not measured by itself: two ratings at different flows split it.',
  ],
  [
    [
      'capacity rate of the air of this zone',
      'capacity rate of the air',
      'capacity rate of the liquid',
      'capacity rate of the liquid of this zone',
      'capacity rate of the stream measured',
      'heat the liquid carries per degree',
      'its capacity rate',
      'larger capacity rate',
      'smaller capacity rate',
    ],
    'Heat a stream carries for each degree it changes: mass flow times specific heat.',
    [10, 2500],
    'From the stream’s flow; of the liquid about 240 W/K for each gallon a minute.',
  ],
  [
    [
      'heat per degree between its liquid inlet and ambient',
      'heat per degree between liquid inlet and ambient',
      'heat per degree between liquid inlet and fresh air',
      'heat per degree above ambient, as read',
      'heat per degree above ambient',
      'front exchanger, from its liquid inlet to the air',
      'behind the shroud',
      'open face',
    ],
    'What the front exchanger carries for each degree its liquid is above the air: the one number that sums it up.',
    [10, 1200],
    'Heat from flow and drop, over liquid inlet less ambient, at a steady temperature.',
  ],
  [
    [
      'bay to hoses',
      'bay to reservoir',
      'conductance from around the place into it',
      'conductance from the bay into the reservoir',
      'engine to charge cooler',
    ],
    'Heat per degree that leaks in from hot surroundings: the least known input.',
    [0, 60, 'from memory'],
    'A warm-up with the pump running and no boost: see the sheet of the log.',
  ],
  [
    [
      'charge cooler, to the charge air; 0 where heat is stated',
      'heat given up per degree, all ways together',
    ],
    'All that pulls the liquid back to where it settles.',
    [5, 1500],
    LINE,
  ],
  [
    [
      'rise of the heat entering per degree of liquid',
      'rise of the heat leaving per degree of liquid',
      'heat that pulls the liquid back per degree off the crossing',
    ],
    'A slope of the two curves at their crossing: it says how firmly the loop settles.',
    [-5000, 5000],
    'Read off the plot of heat in and heat out.',
  ],
  [
    ['heat the wire gives off per degree', 'of one square metre in still air, ±40 %'],
    'How well the wire sheds its heat to still air.',
    [0.2, 20, 'from memory'],
    'Not measured: surface times a film of still air.',
  ],
  [[/^± /], 'How far the conductance may be off.', [0.5, 400], LINE],
];

export const heatTransferCoefficient: Shelf = [
  [
    ['heat transfer coefficient of the air'],
    'Heat per area and degree on the fins.',
    [30, 250],
    'Not measured: from a correlation.',
  ],
  [
    ['heat transfer coefficient of the liquid'],
    'Heat per area and degree inside the tubes.',
    [300, 12000],
    'Not measured: from a correlation.',
  ],
];

export const thermalResistance: Shelf = [
  [
    ['tube walls'],
    'Degrees per watt through the metal: next to nothing in aluminium.',
    [0, 1e-4],
    LINE,
  ],
];

export const heatCapacity: Shelf = [
  [
    ['heat capacity of the metal', 'heat capacity of the part', 'heat capacity of the whole loop'],
    'Heat it takes up for each degree it warms.',
    [1e3, 200e3],
    'Mass times specific heat; a warm-up at a known heat shows that of the loop.',
  ],
];

export const energy: Shelf = [
  [
    [/.*/],
    'Heat gathered over the drive, in one part or by one way.',
    ANY,
    'Summed up by the sheet; a log of flow and temperatures gives the same by steps.',
  ],
];

export const electricPower: Shelf = [
  [
    [
      'electrical input at this speed',
      'electrical input',
      'input of one pump at rated voltage',
      'rated input of one pump',
      'power the pump holds',
    ],
    'Volts times amps at the pump’s plug.',
    [10, 500],
    'A clamp meter and a voltmeter at the plug, running.',
  ],
  [
    ['heat made in the joint'],
    'What a bad contact turns into heat: a few watts discolour a plug.',
    [0, 3],
    'Drop across the joint times the current.',
  ],
  [['heat made in the probe'], 'What the measuring current does to the probe.', [0, 0.02], LINE],
];

export const power: Shelf = [
  [
    ['power at the crankshaft'],
    'What the engine makes in this duty; a cruise takes a few per cent of the best.',
    [5e3, 800e3],
    'A dynamometer for the pull; fuel flow for the cruise.',
  ],
];

export const fuelUse: Shelf = [
  [
    ['brake specific fuel consumption'],
    'Fuel per work: it says how much air comes with each horsepower.',
    [6e-8, 1.5e-7],
    'From the tune’s log: fuel flow over power. Boosted petrol engines 0.45 to 0.65 lb/(hp h).',
  ],
];

export const dissipation: Shelf = [
  [
    ['dissipation constant'],
    'Heat that lifts the probe by one degree in its surroundings: more in liquid than in air.',
    [1e-3, 30e-3, 'from memory'],
    'The probe’s data sheet.',
  ],
];

export const latentHeat: Shelf = [
  [
    [/^heat of fusion of ice/],
    'Heat that melts a kilogram of ice without warming it.',
    CONSTANT,
    'IAPWS R10-06(2009), from memory.',
  ],
];

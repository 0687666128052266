/** Temperatures, differences of them, and temperatures that enter as ratios. */
import { ANY, celsius, CONSTANT, LINE, type Shelf } from './book';

const LIQUID_PROBE =
  'A probe in the stream, or a thermocouple under insulation on the metal fitting, read when nothing moves any more.';

export const temperature: Shelf = [
  [
    ['ambient temperature', 'ambient air', 'ambient as described', 'ambient as tried'],
    'Outdoor air before the vehicle has warmed it: no part of the loop that gives heat to it can get colder.',
    [celsius(-20), celsius(45)],
    'A shaded thermometer well ahead of the grille, away from the engine and the road.',
  ],
  [
    ['ambient at which the target is met, by hand'],
    'The hottest day on which the target would still hold, if nothing else moved.',
    [celsius(-20), celsius(50)],
    LINE,
  ],
  [
    ['air in the engine bay', 'temperature around the place', 'air round the wire'],
    'Air that surrounds the part and warms it from outside.',
    [celsius(20), celsius(110), 'from memory'],
    'A thermocouple hung in the air beside the part, shielded from the glow of the exhaust.',
  ],
  [
    ['temperature round the breaker'],
    'Air at the breaker: a thermal breaker holds less the hotter it sits.',
    [celsius(20), celsius(110), 'from memory'],
    'A thermocouple at the body of the breaker, bonnet shut, after a hot drive.',
  ],
  [
    ['fresh air at the intake'],
    'Air that the engine draws, warmed on its way to the filter.',
    [celsius(-20), celsius(75)],
    'A probe in the air box, upstream of the compressor.',
  ],
  [
    ['compressor outlet'],
    'Air as the compressor hands it over: the hot end of the charge cooler.',
    [celsius(30), celsius(200)],
    'A fast probe between compressor and cooler, where there is room for one.',
  ],
  [
    ['charge air to the engine'],
    'Air the engine gets: it decides density and knock.',
    [celsius(-20), celsius(90)],
    'The intake temperature that the engine’s own computer reads, or a probe in the manifold.',
  ],
  [
    ['air at the core’s face', 'air at the face of the core'],
    'Air as it meets the fins: ambient, what other cores add and what comes round again.',
    [celsius(-20), celsius(75)],
    'Several thermocouples stretched across the face, averaged.',
  ],
  [
    [
      'liquid into the charge cooler',
      'liquid into the front exchanger',
      'liquid into the front exchanger now',
      'liquid out of the front exchanger',
      'liquid arriving at the reservoir',
      'liquid arriving there',
      'liquid leaving the reservoir',
      'liquid in the reservoir',
      'liquid in, or out',
    ],
    'Liquid at that place of the loop, mixed over the bore.',
    [celsius(0), celsius(95)],
    LIQUID_PROBE,
  ],
  [
    ['liquid allowed into the front exchanger'],
    'The warmest liquid with which the target still holds.',
    [celsius(0), celsius(95)],
    LINE,
  ],
  [
    [
      'hottest liquid in the loop',
      'highest temperature, by integration',
      'highest of the plain drive',
    ],
    'The warmest that the drive or the balance makes it anywhere.',
    [celsius(10), celsius(110)],
    'Worked out; a probe after the charge cooler comes nearest to it.',
  ],
  [
    ['highest with what happens on the way'],
    'The same peak with breakers, fans, ice and delays counted.',
    [celsius(10), celsius(110)],
    LINE,
  ],
  [
    ['boiling point at the pressure of the reservoir', 'temperature of the first loss'],
    'From here on vapour forms: at the surface of the tank, or first at the pump’s inlet.',
    [celsius(90), celsius(135)],
    'Worked out from pressure and mixture; a cap tester gives the pressure, a refractometer the mixture.',
  ],
  [
    ['cold stream in', 'hot stream in', 'its inlet', 'outlet of the stream that cools'],
    'An end of one of the two streams of the exchanger.',
    [celsius(0), celsius(200)],
    'Of a rating: on the maker’s sheet. On the vehicle: a probe in that stream, next to the core.',
  ],
  [
    [
      'its temperature at the end',
      'its temperature at the start',
      'temperature at the start',
      'temperature before',
      'temperature by integration',
      'temperature by the closed form',
      'temperature it settles at',
      'temperature at which it settles',
      'temperature to be reached',
    ],
    'A moment of the warm-up, of the reservoir unless the line names another part.',
    [celsius(0), celsius(110)],
    'A probe in the reservoir, logged over the drive; the line itself works it out.',
  ],
  [
    ['temperature at the top of the steps'],
    'Ambient with everything added that stands between it and the result.',
    ANY,
    LINE,
  ],
  [
    ['limit', 'target', 'result now', 'as it is', 'with the change', 'highest', 'lowest'],
    'One end of a comparison: what is wanted, or what there is.',
    ANY,
    'A wish is chosen; what there is comes from the line or reading it is compared with.',
  ],
  [
    ['limit of the insulation'],
    'The hottest copper the insulation is made for.',
    [celsius(80), celsius(150), 'from memory'],
    'Printed on the wire, or in its maker’s data.',
  ],
  [
    ['temperature of the copper', 'temperature of the wire'],
    'Copper under its own current: hotter copper resists more.',
    [celsius(-20), celsius(105)],
    'A thermocouple under the insulation; worked out here from the air and the heat in the wire.',
  ],
  [
    ['air of the table', 'reference temperature', 'temperature of the rating'],
    'The temperature for which a table or rating was made.',
    CONSTANT,
    'In the heading of the table, or on the maker’s sheet.',
  ],
  [
    ['reader shows', 'temperature shown', 'temperature'],
    'What the display or log says, right or wrong.',
    [celsius(-20), celsius(120)],
    'Read it off, with the probe in the bath named.',
  ],
  [
    ['water at an open boil'],
    'Where clean water boils in an open pot at this pressure: 1 °C lower for every 300 m up.',
    [celsius(85), celsius(101)],
    'Worked out from altitude or barometer; the pot itself shows it.',
  ],
];

export const temperatureDifference: Shelf = [
  [
    [
      'rise of the bay above ambient',
      'rise stated for the duty',
      'rise of the intake air above ambient',
    ],
    'How much the vehicle has warmed that air beyond the day.',
    [0, 70, 'from memory'],
    'Thermometer there less thermometer ahead of the grille, both at the same moment.',
  ],
  [
    [
      'charge air above the liquid',
      'charge air above the liquid that cools it',
      'charge air above the reservoir as the last pull ends',
    ],
    'What is left between charge and liquid after the cooler: small at cruise, large in a pull.',
    [0, 40],
    'Intake temperature less liquid temperature at the cooler’s inlet.',
  ],
  [
    [
      'drop across the front exchanger',
      'drop of the liquid through the front exchanger, as read',
      'drop of the liquid through the front exchanger',
      'change of that stream',
    ],
    'What the liquid loses on its way through: heat over flow.',
    [0.5, 25],
    'Two probes, in and out, compared in one cup of water first: a small drop needs a good pair.',
  ],
  [
    ['air at the face above ambient'],
    'What other cores and hot air coming round add to the day’s air.',
    [0, 30],
    'Thermocouples across the face less a thermometer ahead of the grille.',
  ],
  [
    [
      'liquid from there to the charge cooler',
      'reservoir above that liquid',
      'reservoir above the liquid that arrives',
    ],
    'What tank, pump and hoses add on the way.',
    [-2, 5],
    'Probe at the charge cooler’s inlet less probe at the front exchanger’s outlet.',
  ],
  [
    [
      'rise in one pass',
      'rise of the liquid in one pass',
      'liquid leaving the charge cooler above that liquid',
    ],
    'What the liquid gains in the charge cooler each time round.',
    [0.1, 20],
    'Two probes, before and after the charge cooler.',
  ],
  [
    [
      'rise in one pull',
      'rise to the peak',
      'rise allowed',
      'rise of the reservoir allowed',
      'rise of the reservoir over the pulls now',
      'rise of the reservoir over the pulls',
    ],
    'How far one pull warms the liquid of the reservoir.',
    [0, 15],
    'A probe in the reservoir: highest reading after the pull less the one before it.',
  ],
  [
    ['counts as recovered within'],
    'How near to its old temperature counts as back.',
    [0.5, 5],
    'Chosen: the difference that no longer matters to the next pull.',
  ],
  [
    [
      'rise by the other cores',
      'rise of the air by the other cores',
      'rise of the air by other cores, all air together',
      'rise of the covered air by other cores',
    ],
    'What a condenser or cooler in the same air adds before the front exchanger gets it.',
    [0, 25, 'from memory'],
    'Thermocouples between the cores against one ahead of the grille.',
  ],
  [
    ['hottest liquid below boiling', 'liquid below the temperature of the first loss'],
    'Room that is left; below zero there is none.',
    [10, 120],
    LINE,
  ],
  [
    ['margin to the limit', 'degrees taken off', 'moved by what happens'],
    'The difference the line is about.',
    ANY,
    LINE,
  ],
  [
    [
      'degrees taken off, upper end of 95 %',
      'degrees taken off, lower end of 95 %',
      '± of the degrees taken off',
    ],
    'What a change takes off in the loops that the ± of the inputs allow.',
    ANY,
    LINE,
  ],
  [
    [
      'hotter than described',
      'ambient above described, as tried',
      'ambient above described at which the last balance is lost',
      'room to the last balance',
    ],
    'How far a day may be hotter than the one described.',
    [0, 60],
    'Tried with the knob on this sheet, not measured.',
  ],
  [
    ['integration above the closed form'],
    'What the simple formula leaves out: heat that changes on the way.',
    [-5, 5],
    LINE,
  ],
  [
    [
      'liquid above the air at the core’s face',
      'liquid in, above the air',
      'liquid out, above the air',
      'approach: liquid in the reservoir above ambient',
      'reservoir before the pulls above ambient',
      'liquid leaving the front exchanger above that air',
    ],
    'The lead of the liquid over the air: it drives all heat that leaves.',
    [3, 60],
    'Probe in the liquid less thermocouples across the face.',
  ],
  [
    ['one count'],
    'The smallest step the converter can show at this temperature.',
    [0.05, 2],
    'Worked out from the converter’s counts and the probe’s law.',
  ],
  [
    ['one kelvin'],
    'The unit, put in so that the dimensions agree.',
    CONSTANT,
    'Nothing to measure.',
  ],
  [
    ['rise of the probe'],
    'How far the probe’s own heat lifts its reading.',
    [0, 1],
    'Halve the supply, or wait with the probe unpowered: the reading falls by it.',
  ],
  [
    [/^rise that doubles the resistance/],
    'So many degrees double the resistance of copper counted from 20 °C.',
    CONSTANT,
    'A property of copper: IEC 60028.',
  ],
  [
    [/^± /, /^standard uncertainty/, 'spread of the probes'],
    'How far the true value may lie from the reading.',
    [0.05, 5],
    'Compare the probes in one bath; makers’ tolerances are the fall-back.',
  ],
];

export const absoluteTemperature: Shelf = [
  [
    ['compressor inlet after mixing', 'compressor inlet', 'fresh air at the intake'],
    'Air as the compressor gets it, counted from absolute zero because the law multiplies it.',
    [celsius(-20), celsius(100)],
    'A probe just ahead of the compressor.',
  ],
  [
    ['compressor outlet', 'manifold temperature'],
    'Air after it was compressed, counted from absolute zero.',
    [celsius(10), celsius(200)],
    'A fast probe in that duct.',
  ],
  [
    ['temperature of the air', 'temperature', 'temperature when filled', 'temperature when hot'],
    'Counted from absolute zero, as the gas law and the probe’s law need it.',
    [celsius(-30), celsius(135)],
    'The thermometer named in the line above, on the absolute scale.',
  ],
  [['25 °C'], 'Where makers state a thermistor.', CONSTANT, 'On the data sheet.'],
];

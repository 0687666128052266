/** What was read on the vehicle. Every blank may stay empty; its ± is that of the instrument. */
import type { Quantity } from '$lib/solver/quantity';
import type { FieldGroup, FieldSpec, QuantityField } from './types';

type Blank = Pick<
  QuantityField,
  'label' | 'symbol' | 'quantity' | 'min' | 'max' | 'ask' | 'example'
>;

const blank = (path: string, rest: Blank): QuantityField => ({
  kind: 'quantity',
  path,
  default: '',
  optional: true,
  standing: 'common practice',
  ...rest,
});

const temperature = (label: string, symbol: string, example: string, ask: string): Blank => ({
  label,
  symbol,
  quantity: 'temperature' satisfies Quantity,
  min: 233.15,
  max: 500,
  example,
  ask,
});

/** As far as the site's own ambient may go. */
const ambientAir = (...words: Parameters<typeof temperature>): Blank => ({
  ...temperature(...words),
  max: 333.15,
});

const flow = (label: string, symbol: string, ask: string): Blank => ({
  label,
  symbol,
  quantity: 'volumeFlow',
  min: 0,
  max: 0.0015,
  example: '5.5 gpm',
  ask,
});

/** Read in every duty that lasts long enough to settle. */
const BLANKS: Readonly<Record<string, Blank>> = {
  speed: {
    label: 'Vehicle speed then',
    symbol: 'V_v',
    quantity: 'speed',
    min: 0,
    max: 111,
    example: '40 mph',
    ask: 'Held for the reading; left empty it is the duty’s own.',
  },
  reservoir: temperature(
    'Reservoir',
    'T_t',
    '125 °F',
    'Hand-held thermometer in the tank, or its logged probe.',
  ),
  charge: temperature(
    'Charge air to the engine',
    'T_3',
    '130 °F',
    'Intake temperature from the engine’s own data; read by a passenger.',
  ),
  volts: {
    label: 'Volts at the pump’s plug',
    symbol: 'U',
    quantity: 'voltage',
    min: 0,
    max: 30,
    example: '12.8 V',
    ask: 'Meter on the two pins of the plug, pump running, hot.',
  },
  amps: {
    label: 'Amps of the pump',
    symbol: 'I',
    quantity: 'current',
    min: 0,
    max: 100,
    example: '5.2 A',
    ask: 'Clamp on the feed, zeroed beside it; all pumps together.',
  },
  flow: flow('Flow by its meter', '\\dot V', 'Mean over half a minute.'),
  frontIn: temperature(
    'Liquid into the front exchanger',
    'T_{f,in}',
    '128 °F',
    'Contact probe on the metal inlet, wrapped.',
  ),
  frontOut: temperature(
    'Liquid out of the front exchanger',
    'T_{f,out}',
    '122 °F',
    'Contact probe on the metal outlet, wrapped.',
  ),
  faceAir: temperature(
    'Air at the core’s face',
    'T_{face}',
    '105 °F',
    'Thin probe a finger ahead of the fins, shaded, at several places.',
  ),
};

/** Taken beside the vehicle only. */
const STANDING: Readonly<Record<string, Blank>> = {
  pumpRise: {
    label: 'Pressure across the pump',
    symbol: '\\Delta p_p',
    quantity: 'pressureDrop',
    min: 0,
    max: 5e5,
    example: '5 psi',
    ask: 'Gauge on a tee at the outlet, less what the tank holds.',
  },
  bucket: flow(
    'Flow by bucket and watch',
    '\\dot V_b',
    'Return hose into a measured bucket, pump running, watch in hand; liquid cool.',
  ),
};

const fields = (duty: string, blanks: Readonly<Record<string, Blank>>): FieldSpec[] =>
  Object.entries(blanks).map(([key, rest]) => blank(`measured.${duty}.${key}`, rest));

export const measuredTraffic: FieldGroup = {
  id: 'measuredTraffic',
  title: 'Read in traffic',
  fields: [...fields('traffic', BLANKS), ...fields('traffic', STANDING)],
};

export const measuredCruise: FieldGroup = {
  id: 'measuredCruise',
  title: 'Read at cruise',
  fields: fields('cruise', BLANKS),
};

export const measuredOnce: FieldGroup = {
  id: 'measuredOnce',
  title: 'Ambient and checks',
  fields: [
    blank(
      'measured.ambient',
      ambientAir(
        'Ambient air then',
        'T_a',
        '95 °F',
        'In the shade, as the readings were taken; left empty it is that of the site.',
      ),
    ),
    blank('measured.soak', {
      label: 'Widest disagreement after a night',
      symbol: '\\Delta T_{soak}',
      quantity: 'temperatureDifference',
      min: 0,
      max: 60,
      example: '2 °F',
      ask: 'Key on, engine cold: all temperatures must agree, within 2 °F or so.',
    }),
    {
      kind: 'choice',
      path: 'measured.paper',
      label: 'Paper held to the grille',
      choices: [
        { value: 'not-tried', label: 'not tried' },
        { value: 'held', label: 'is held' },
        { value: 'drops', label: 'drops' },
        { value: 'blown', label: 'is blown off' },
      ],
      default: 'not-tried',
      standing: 'common practice',
      ask: 'Vehicle standing, fans on: which way does the air go.',
    },
    blank('measured.volume', {
      label: 'Share of the tank that takes part',
      symbol: 'x_V',
      quantity: 'percent',
      min: 0,
      max: 1.2,
      example: '80 %',
      ask: 'Time a warm-up: heat over rise gives the volume that took part, over the volume filled.',
    }),
  ],
};

import type { ChoiceField, FieldGroup, QuantityField } from './types';

const choice = (
  path: string,
  label: string,
  choices: readonly (readonly [value: string, label: string])[],
  ask: string,
): ChoiceField => ({
  kind: 'choice',
  path,
  label,
  choices: choices.map(([value, words]) => ({ value, label: words })),
  default: choices[0]![0],
  standing: 'common practice',
  ask,
});

const moment = (path: string, label: string, ask: string): QuantityField => ({
  kind: 'quantity',
  path,
  label,
  quantity: 'time',
  default: '',
  standing: 'common practice',
  min: 0,
  max: 86_400,
  optional: true,
  example: '20 min',
  ask,
});

/** What may switch, melt, boil or fail on the way of a drive. */
export const events: FieldGroup = {
  id: 'events',
  title: 'What may happen on the way',
  fields: [
    choice(
      'events.breaker',
      'Breaker of the pump',
      [
        ['bay', 'counted, in the bay’s air'],
        ['outside', 'counted, in outside air'],
        ['none', 'left out'],
      ],
      'Counts where the pump’s feed is protected by a breaker; the air round it moves its rating.',
    ),
    choice(
      'events.fans',
      'Fans run',
      [
        ['always', 'all the time'],
        ['reservoir', 'when the reservoir is hot'],
        ['frontOut', 'when the exchanger’s outlet is hot'],
      ],
      'A thermostat: find where its sensor sits.',
    ),
    {
      kind: 'quantity',
      path: 'events.fansOn',
      label: 'Fans come on at',
      quantity: 'temperature',
      default: '115 °F',
      standing: 'common practice',
      min: 200,
      max: 450,
      ask: 'Heat the sensor and watch; stamped on some switches.',
    },
    {
      kind: 'quantity',
      path: 'events.fansOff',
      label: 'Fans go off at',
      quantity: 'temperature',
      default: '105 °F',
      standing: 'common practice',
      min: 200,
      max: 450,
      ask: 'Let it cool and watch; below where they come on.',
    },
    {
      kind: 'quantity',
      path: 'events.ice',
      label: 'Ice put into the tank at the start',
      symbol: 'm_i',
      quantity: 'mass',
      default: '0 lb',
      standing: 'common practice',
      min: 0,
      max: 100,
      ask: 'Weigh the bag. On top of the liquid, plain water only.',
    },
    choice(
      'events.underhood',
      'Bay and inlet follow the liquid',
      [
        ['off', 'no'],
        ['on', 'yes, by the gains stated'],
      ],
      'Hot liquid warms the bay, and the bay warms what the compressor breathes.',
    ),
    {
      kind: 'quantity',
      path: 'events.bayLag',
      label: 'Time constant of the bay',
      symbol: '\\tau_b',
      quantity: 'time',
      default: '3 min',
      standing: 'from memory',
      min: 1,
      max: 1e4,
      ask: 'From a log of bay air after stopping: 63 % of its rise.',
    },
    choice(
      'events.hoses',
      'Liquid in the hoses',
      [
        ['followed', 'followed on its way'],
        ['parts', 'counted with the parts it leads to'],
      ],
      'Followed: what leaves one part reaches the next after its time in the hose.',
    ),
    choice(
      'events.boiling',
      'At the boiling point',
      [
        ['follow', 'steam leaves by the cap, the drive goes on'],
        ['end', 'the drive ends'],
      ],
      'Boiling is followed until a tenth of the tank is left.',
    ),
    moment(
      'events.airAt',
      'Pump loses its prime after',
      'Empty: never. Air drawn in by a low tank in a hard corner, say.',
    ),
    {
      kind: 'quantity',
      path: 'events.restToPrime',
      label: 'Rest until the air has left the pump',
      quantity: 'time',
      default: '30 s',
      standing: 'from memory',
      min: 0,
      max: 3600,
      ask: 'Switch off, wait, switch on: how long before it moves liquid again.',
    },
    moment('events.pumpOffAt', 'Pump switched off after', 'Empty: never.'),
    moment(
      'events.pumpOnAt',
      'and on again after',
      'Counted from the start of the drive too; empty: not again.',
    ),
  ],
};

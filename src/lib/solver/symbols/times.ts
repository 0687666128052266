/** Times. */
import { LINE, type Shelf } from './book';

export const time: Shelf = [
  [
    ['time constant', 'time to recover', 'time until it is reached', 'time since the start'],
    'How slowly the liquid follows: after one time constant 63 % of the way is done.',
    [20, 3600],
    'A log of the reservoir after the heat has stopped.',
  ],
  [
    ['time constant of the breaker'],
    'How slowly the strip in a breaker warms.',
    [5, 300, 'from memory'],
    'From one point of the maker’s trip curve.',
  ],
  [
    ['residence time', 'time the tank takes to mix', 'time in the hoses, all four'],
    'Volume over flow: how long liquid takes to pass.',
    [1, 180],
    'Dye, or a kick of warm water, and a watch.',
  ],
  [
    ['length of the pull'],
    'How long full power lasts.',
    [3, 120],
    'The log, from throttle open to throttle shut.',
  ],
  [
    [
      'closed',
      'open',
      'from one opening to the next',
      'time to open from cold',
      'time until it closes again',
      'time until the breaker opens',
    ],
    'The rhythm of a breaker that resets itself.',
    [1, 600],
    'A test lamp across the pump and a watch.',
  ],
  [
    ['± of the watch'],
    'How well the watch was started and stopped by hand.',
    [0.1, 2],
    'Half a second at each end is common.',
  ],
  [
    ['gate of the input'],
    'How long the reader counts pulses before it shows a flow.',
    [0.1, 2],
    'The reader’s data sheet.',
  ],
  [
    ['time by the watch'],
    'How long the bucket took.',
    [20, 300],
    'A stop watch, started and stopped by the same mark.',
  ],
  [
    ['when the first began', 'when the next began', 'lead of the first'],
    'Moments in the log: what comes first may be the cause.',
    [0, 86400],
    'The log’s clock.',
  ],
  [
    ['time it runs', 'time of the drive'],
    'Of the drive, and of it with liquid moving.',
    [10, 86400],
    LINE,
  ],
];

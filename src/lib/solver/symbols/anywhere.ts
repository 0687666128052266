/** Names that a question about any input brings with it, whatever its kind of quantity. */
import { ANY, LINE, type Shelf } from './book';

export const ANYWHERE: Shelf = [
  [
    ['value found'],
    'The input as it would have to be for the target to be met.',
    ANY,
    'Worked out; the check on the same sheet solves the loop with it.',
  ],
  [
    ['present value'],
    'The input as the job has it now.',
    ANY,
    'The “?” beside the input says where it is measured.',
  ],
  [
    ['value found over the present one'],
    'How many times as much of it as there is now.',
    ANY,
    LINE,
  ],
  [
    [
      'target',
      'what the result must be',
      'best that this input can do',
      'what it may cost; negative where more is better',
      'result with the input as it is',
      'result with the value found',
      'result now above its target',
      'change of the result, by the loop solved anew',
    ],
    'The result the question is about, against what is wanted of it.',
    ANY,
    'Read as any result of the loop: see the sheet that shows it.',
  ],
  [
    [/^pieces, or lengths, in row \d+$/],
    'How many of the part the list asks for, or how much of what is sold by length.',
    ANY,
    'The parts list of the candidate.',
  ],
  [
    [/^\p{Lu}/u],
    'An input or a result by the name it has on its own sheet.',
    ANY,
    'The “?” beside the input says where it is measured.',
  ],
];

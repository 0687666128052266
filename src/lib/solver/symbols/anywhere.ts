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
    ['what the result must be', 'result with the input as it is', 'result now above its target'],
    'The result the question is about, against what is wanted of it.',
    ANY,
    'Read as any result of the loop: see the sheet that shows it.',
  ],
  [
    [/^\p{Lu}/u],
    'An input or a result by the name it has on its own sheet.',
    ANY,
    'The “?” beside the input says where it is measured.',
  ],
];

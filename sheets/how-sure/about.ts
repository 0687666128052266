import type { SheetAbout } from '../types';

export const about: SheetAbout = {
  slug: 'how-sure',
  number: 16,
  title: 'How sure',
  purpose:
    'What the ± of the inputs does to the temperatures: how wide the answer is, how likely it meets the limit and beats the loop as found, and which input to measure better first.',
  cautions: ['limits', 'engine'],
};

import type { SheetAbout } from '../types';

export const about: SheetAbout = {
  slug: 'loop-balance',
  number: 1,
  title: 'Loop balance',
  purpose:
    'Where the loop settles and why: heat in equals heat out at one liquid temperature, found here for the duty chosen. Read it first; the other sheets take its parts one by one.',
  cautions: ['scald', 'pressure', 'engine', 'limits'],
};

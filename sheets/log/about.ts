import type { SheetAbout } from '../types';

export const about: SheetAbout = {
  slug: 'log',
  number: 14,
  title: 'Log and fit',
  purpose:
    'What a log of the drive says: its channels on one time axis, its doubtful readings, what moved first when something failed. From the spans you choose it finds the loop’s own numbers and hands them to every other sheet.',
  cautions: ['engine', 'scald'],
};

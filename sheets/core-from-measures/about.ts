import type { SheetAbout } from '../types';

export const about: SheetAbout = {
  slug: 'core-from-measures',
  number: 13,
  title: 'Core from measures',
  purpose:
    'What a core can do, from what a ruler or a parts page tells of it: size, tubes, fins. For a core that is sold without a heat rating, and to doubt a rating that is too good.',
  cautions: ['limits', 'fans', 'pressure'],
};

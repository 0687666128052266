import type { SheetAbout } from '../types';

export const about: SheetAbout = {
  slug: 'warm-up-and-recovery',
  number: 6,
  title: 'Warm-up and recovery',
  purpose:
    'How the temperatures run over a drive: warm-up, pulls and the recovery after them. Each part’s share of the heat stored shows what makes the loop slow or quick.',
  cautions: ['scald', 'engine', 'limits'],
};

import type { SheetAbout } from '../types';

export const about: SheetAbout = {
  slug: 'instruments',
  number: 15,
  title: 'Instruments',
  purpose:
    'What to measure on this loop, where each probe sits, in what order to fit them and how. It lists the checks each must pass before anything is concluded, and says how sure the heat will then be.',
  cautions: ['kitchen', 'scald', 'pressure', 'wiring', 'fans', 'engine'],
};

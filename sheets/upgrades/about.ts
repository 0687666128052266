import type { SheetAbout } from '../types';

export const about: SheetAbout = {
  slug: 'upgrades',
  number: 17,
  title: 'Upgrades compared',
  purpose:
    'Every candidate beside the loop as found: what it does to the temperatures and margins, and what it adds in cost, mass and current. Combinations are tried within a budget, and after each step the sheet says what then limits.',
  cautions: ['limits', 'engine'],
};

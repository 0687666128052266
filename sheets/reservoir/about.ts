import type { SheetAbout } from '../types';

export const about: SheetAbout = {
  slug: 'reservoir',
  number: 5,
  title: 'Reservoir',
  purpose:
    'What the liquid in the tank buys: how far one pull heats it, how long it takes to come back, how much room it needs to expand. Volume sets the delay, never the end.',
  cautions: ['scald', 'pressure', 'glycol', 'freeze'],
};

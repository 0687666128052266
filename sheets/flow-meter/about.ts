import type { SheetAbout } from '../types';

export const about: SheetAbout = {
  slug: 'flow-meter',
  number: 12,
  title: 'Flow meter',
  purpose:
    'How many pulses a meter gives for its volume, by bucket and watch, and how sure that is. It tells from what flow on the reading holds, what the meter costs the loop, and where to put it.',
  cautions: ['scald', 'glycol', 'pressure', 'engine'],
};

import type { SheetAbout } from '../types';

export const about: SheetAbout = {
  slug: 'pump-and-restriction',
  number: 2,
  title: 'Pump and restriction',
  purpose:
    'What the pump really moves through this loop, and which part takes the head. Change a hose or the pump here and see the operating point move before buying.',
  cautions: ['scald', 'pressure', 'wiring', 'glycol'],
};

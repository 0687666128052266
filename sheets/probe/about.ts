import type { SheetAbout } from '../types';

export const about: SheetAbout = {
  slug: 'probe',
  number: 11,
  title: 'Probe check and trim',
  purpose:
    'Whether a temperature reading can be trusted: two baths, ice and boil, tell a wrong bias resistor from a bad pin, a wrong supply or a wrong probe. It then finds the resistors to solder.',
  ownInputs: true,
  cautions: ['kitchen', 'scald', 'wiring'],
};

import type { SheetAbout } from '../types';

export const about: SheetAbout = {
  slug: 'diagnosis',
  number: 10,
  title: 'Diagnosis',
  purpose:
    'Which fault fits what was read on the vehicle, how bad it is, and what the readings cannot tell apart. It names the next measurement that tells most for its minutes.',
  cautions: ['scald', 'pressure', 'engine', 'fans', 'stands', 'wiring'],
};

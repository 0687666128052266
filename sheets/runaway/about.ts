import type { SheetAbout } from '../types';

export const about: SheetAbout = {
  slug: 'runaway',
  number: 9,
  title: 'Why temperatures run away',
  purpose:
    'Heat entering and heat leaving against the liquid’s temperature, with knobs to move and feedbacks to switch: where they cross, whether the crossing holds, and where it is lost. For learning and teaching; nothing tried here changes the loop.',
  cautions: ['scald', 'pressure', 'engine', 'limits'],
};

import type { SheetAbout } from '../types';

export const about: SheetAbout = {
  slug: 'exchangers',
  number: 4,
  title: 'Exchangers',
  purpose:
    'Charge cooler and front exchanger taken apart: what a rating point says of a core, and what is left of it at these flows. It shows which side holds each core back before anything is bought.',
  cautions: ['scald', 'pressure', 'fans', 'limits'],
};

import type { SheetAbout } from '../types';

export const about: SheetAbout = {
  slug: 'what-it-takes',
  number: 18,
  title: 'What it would take',
  purpose:
    'The value one input must have for the loop to reach a target: the exchanger, the tank, the hose. Where no value can, the sheet says so and what stands in the way.',
  cautions: ['limits', 'engine'],
};

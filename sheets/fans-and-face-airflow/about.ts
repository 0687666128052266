import type { SheetAbout } from '../types';

export const about: SheetAbout = {
  slug: 'fans-and-face-airflow',
  number: 3,
  title: 'Fans and face airflow',
  purpose:
    'How fast air crosses the front exchanger, from the fans at a standstill to ram air at speed. It shows where a fan helps and from which speed it is in the way.',
  cautions: ['fans', 'stands', 'engine'],
};

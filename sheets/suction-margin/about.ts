import type { SheetAbout } from '../types';

export const about: SheetAbout = {
  slug: 'suction-margin',
  number: 7,
  title: 'Suction margin',
  purpose:
    'Whether this pump can cavitate, and at what temperature of the liquid it would begin to lose head. Cavitation is blamed far more often than it happens: compute the margin, then believe it.',
  cautions: ['scald', 'pressure', 'glycol'],
};

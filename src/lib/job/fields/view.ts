import { DUTIES } from './duties';
import type { FieldGroup } from './types';

/** What the sheets show; kept with the job because a printed sheet must say it. */
export const view: FieldGroup = {
  id: 'view',
  title: 'Shown',
  fields: [
    {
      kind: 'choice',
      path: 'view.duty',
      label: 'Duty held until it settles',
      choices: DUTIES,
      default: 'cruise',
      standing: 'common practice',
      ask: 'Every sheet shows where the loop settles if this duty is held for good.',
    },
  ],
};

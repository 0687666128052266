import type { FieldGroup } from './types';

/** What a plan is judged by; the fans' current belongs to it, since nothing else asks for it. */
export const upgrades: FieldGroup = {
  id: 'upgrades',
  title: 'Choosing',
  fields: [
    {
      kind: 'choice',
      path: 'plan.judge',
      label: 'Judge by the charge air',
      choices: [
        { value: 'cruise', label: 'settled at cruise' },
        { value: 'pull', label: 'as the last pull ends' },
      ],
      default: 'cruise',
      standing: 'common practice',
      ask: 'What the customer complains of: the drive home, or the end of a pull.',
    },
    {
      kind: 'quantity',
      path: 'plan.budget',
      label: 'Budget for parts',
      symbol: 'C_{max}',
      quantity: 'money',
      default: '',
      optional: true,
      example: '$600',
      standing: 'common practice',
      min: 0,
      max: 1e6,
      ask: 'Combinations that cost more are not tried; empty, all are.',
    },
    {
      kind: 'quantity',
      path: 'fans.current',
      label: 'Current of one fan',
      symbol: 'I_f',
      quantity: 'current',
      default: '',
      optional: true,
      example: '8 A',
      standing: 'from memory',
      min: 0,
      max: 100,
      ask: 'Clamp meter on one fan’s feed, running in its place.',
      typical: { text: '5 to 10 A for a 10 in fan', standing: 'from memory' },
    },
  ],
};

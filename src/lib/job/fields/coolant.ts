import type { Choice, ChoiceField, FieldGroup, QuantityField } from './types';

export const COOLANTS: readonly Choice[] = [
  { value: 'water', label: 'Water' },
  { value: 'ethylene-glycol', label: 'Ethylene glycol and water' },
  { value: 'propylene-glycol', label: 'Propylene glycol and water' },
];

const BASES: readonly Choice[] = [
  { value: 'volume', label: 'by volume' },
  { value: 'mass', label: 'by mass' },
];

/** Fields that name a liquid; a core's rating states its own. */
export function liquidFields(
  prefix: string,
  whose: string,
): [ChoiceField, QuantityField, ChoiceField] {
  return [
    {
      kind: 'choice',
      path: `${prefix}.kind`,
      label: `Liquid ${whose}`,
      choices: COOLANTS,
      default: 'ethylene-glycol',
      standing: 'common practice',
      ask: 'Read the jug or the data sheet; a refractometer scale fits one kind of glycol only.',
    },
    {
      kind: 'quantity',
      path: `${prefix}.share`,
      label: 'Share of glycol',
      symbol: '\\phi',
      quantity: 'percent',
      default: '50 %',
      standing: 'common practice',
      min: 0,
      max: 0.6,
      ask: 'By refractometer. Pure glycol counts: a jug of concentrate is nearer 95 % glycol. No effect on water.',
      typical: { text: '40 to 60 % for frost and corrosion', standing: 'standard' },
    },
    {
      kind: 'choice',
      path: `${prefix}.basis`,
      label: 'Share counted',
      choices: BASES,
      default: 'volume',
      standing: 'common practice',
      ask: 'Mixing jugs goes by volume; tables of properties go by mass.',
    },
  ];
}

export const coolant: FieldGroup = {
  id: 'coolant',
  title: 'Coolant',
  fields: liquidFields('coolant', 'in the loop'),
};

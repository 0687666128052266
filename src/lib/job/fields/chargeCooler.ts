import { coreFields } from './core';
import type { FieldGroup } from './types';

/** Defaults: the worked pull of 600 hp at 10 psi with 70 % effectiveness. */
export const chargeCooler: FieldGroup = {
  id: 'chargeCooler',
  title: 'Charge cooler',
  fields: [
    ...coreFields('chargeCooler', {
      heat: '72000 Btu/h',
      airMassFlow: '65 lb/min',
      airInlet: '225 °F',
      liquidFlow: '8 gpm',
      liquidInlet: '115 °F',
      liquidLoss: [['8 gpm', '3 psi']],
      liquidVolume: '0.3 gal',
      metal: '7 lb',
    }),
    {
      kind: 'quantity',
      path: 'chargeCooler.airLossRated',
      label: 'Charge pressure lost at the rated air flow',
      symbol: '\\Delta p_{c,r}',
      quantity: 'pressureDrop',
      default: '0.8 psi',
      standing: 'from memory',
      min: 0,
      max: 1e5,
      ask: 'Two boost readings, before and after the core, at the rated air flow.',
      typical: { text: '0.3 to 1.5 psi', standing: 'from memory' },
    },
  ],
};

import { coreFields, exponentField, lossTable } from './core';
import type { FieldGroup } from './types';

export const frontExchanger: FieldGroup = {
  id: 'frontExchanger',
  title: 'Front exchanger',
  fields: [
    {
      kind: 'quantity',
      path: 'frontExchanger.width',
      label: 'Width of the finned face',
      symbol: 'W',
      quantity: 'dimension',
      default: '24 in',
      standing: 'common practice',
      min: 0.05,
      max: 2,
      ask: 'Fins only, without the end tanks.',
    },
    {
      kind: 'quantity',
      path: 'frontExchanger.height',
      label: 'Height of the finned face',
      symbol: 'H',
      quantity: 'dimension',
      default: '12 in',
      standing: 'common practice',
      min: 0.05,
      max: 2,
      ask: 'Fins only.',
    },
    ...coreFields('frontExchanger', {
      heat: '45000 Btu/h',
      airMassFlow: '110 lb/min',
      airInlet: '95 °F',
      liquidFlow: '8 gpm',
      liquidInlet: '140 °F',
      liquidLoss: [['8 gpm', '1.5 psi']],
      liquidVolume: '0.5 gal',
      metal: '10 lb',
    }),
    lossTable('frontExchanger.airLoss', {
      label: 'Air pressure drop of the core',
      default: [
        ['450 ft/min', '0.20 inH2O'],
        ['1600 ft/min', '1.3 inH2O'],
      ],
      columns: [
        {
          key: 'velocity',
          label: 'Face velocity',
          kind: 'quantity',
          quantity: 'faceVelocity',
          min: 0.01,
          max: 50,
        },
        { key: 'loss', label: 'Drop', kind: 'quantity', quantity: 'airPressure', min: 0, max: 5e3 },
      ],
      ask: 'From the maker, or a water column across the core at a known face velocity.',
      typical: {
        text: '0.15 to 0.25 inH2O at 450 ft/min for a louvred core 2 to 2.75 in deep',
        standing: 'from memory',
      },
    }),
    exponentField('frontExchanger.airLossExponent', 'Exponent of the air drop'),
  ],
};

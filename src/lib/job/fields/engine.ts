import type { FieldGroup } from './types';

export const engine: FieldGroup = {
  id: 'engine',
  title: 'Engine',
  fields: [
    {
      kind: 'quantity',
      path: 'engine.displacement',
      label: 'Displacement',
      symbol: 'V_d',
      quantity: 'displacement',
      default: '5.0 L',
      standing: 'common practice',
      min: 1e-4,
      max: 0.03,
      ask: 'From the engine tag; used only where air is found from speed and density.',
    },
    {
      kind: 'quantity',
      path: 'engine.inletLoss',
      label: 'Inlet loss at full power',
      symbol: '\\Delta p_i',
      quantity: 'airPressure',
      default: '8 inH2O',
      standing: 'from memory',
      min: 0,
      max: 3e4,
      ask: 'Tap between filter and compressor, hose to a water column or a vacuum gauge, at full power.',
      typical: { text: '4 to 20 inH2O', standing: 'from memory' },
    },
  ],
};

import type { HoseId } from '$lib/solver/loop/types';
import type { FieldGroup, FieldSpec, QuantityField } from './types';

export const HOSE_RUNS: readonly {
  readonly id: HoseId;
  readonly label: string;
  readonly length: string;
  readonly bends: string;
}[] = [
  { id: 'suction', label: 'Reservoir to pump', length: '2 ft', bends: '1' },
  { id: 'delivery', label: 'Pump to first core', length: '6 ft', bends: '2' },
  { id: 'transfer', label: 'Between the cores', length: '7 ft', bends: '3' },
  { id: 'back', label: 'Last core to reservoir', length: '5 ft', bends: '2' },
];

function runFields({ id, label, length, bends }: (typeof HOSE_RUNS)[number]): FieldSpec[] {
  const quantity = (
    key: string,
    rest: Omit<QuantityField, 'kind' | 'path' | 'standing'> & Partial<QuantityField>,
  ): QuantityField => ({
    kind: 'quantity',
    path: `hose.${id}.${key}`,
    standing: 'common practice',
    ...rest,
    label: `${label}: ${rest.label}`,
  });
  return [
    quantity('bore', {
      label: 'bore',
      symbol: 'D',
      quantity: 'bore',
      default: '0.75 in',
      min: 0.003,
      max: 0.1,
      ask: 'Measure the inside; a dash size names two different bores.',
      typical: { text: '5/8 to 1 in', standing: 'common practice' },
    }),
    quantity('length', {
      label: 'length',
      symbol: 'L',
      quantity: 'length',
      default: length,
      min: 0,
      max: 30,
      ask: 'Along the hose, fittings included.',
    }),
    quantity('roughness', {
      label: 'roughness of the wall',
      symbol: '\\varepsilon',
      quantity: 'roughness',
      default: '1.5 um',
      standing: 'published',
      min: 0,
      max: 1e-4,
      ask: 'Smooth rubber or drawn tube 1.5 µm; a corrugated hose is far rougher.',
    }),
    quantity('bends', {
      label: 'bends of 90°',
      symbol: 'n_b',
      quantity: 'count',
      default: bends,
      min: 0,
      max: 40,
      integer: true,
      ask: 'Count fittings and tight turns of the hose.',
    }),
    quantity('bendK', {
      label: 'loss of each bend',
      symbol: 'K_b',
      quantity: 'ratio',
      default: '0.75',
      standing: 'published',
      min: 0,
      max: 10,
      ask: 'Loss coefficient on the hose bore: sharp elbow 0.75 to 1.2, long sweep 0.3.',
    }),
    quantity('otherK', {
      label: 'other losses',
      symbol: 'K_o',
      quantity: 'ratio',
      default: '1.5',
      standing: 'published',
      min: 0,
      max: 200,
      ask: 'Sum of loss coefficients on the hose bore: sharp entrance 0.5, exit 1.0, couplings and valves besides.',
    }),
    quantity('fittingBore', {
      label: 'bore of the end fittings',
      symbol: 'd_f',
      quantity: 'bore',
      default: '0 in',
      min: 0,
      max: 0.1,
      ask: 'Smallest bore of barb or fitting at the ends; 0 when they do not neck the hose.',
      typical: { text: '70 to 85 % of the hose bore', standing: 'from memory' },
    }),
  ];
}

export const hoses: FieldGroup = {
  id: 'hoses',
  title: 'Hoses',
  fields: [
    {
      kind: 'choice',
      path: 'loop.liquidOrder',
      label: 'From the pump the liquid goes first to',
      choices: [
        { value: 'cooler-first', label: 'the charge cooler' },
        { value: 'front-first', label: 'the front exchanger' },
      ],
      default: 'cooler-first',
      standing: 'common practice',
      ask: 'Follow the hose from the pump’s outlet to the first core it enters; the other core is on the way back to the reservoir.',
    },
    {
      kind: 'choice',
      path: 'hose.dashConvention',
      label: 'A dash size means',
      choices: [
        { value: 'hose-bore', label: 'sixteenths of an inch of hose bore' },
        { value: 'tube-replaced', label: 'outside diameter of the tube replaced' },
      ],
      default: 'hose-bore',
      standing: 'common practice',
      ask: 'Rubber heater and hydraulic hose counts the bore; braided hose to SAE 100R5 or R14 counts the tube.',
    },
    ...HOSE_RUNS.flatMap(runFields),
  ],
};

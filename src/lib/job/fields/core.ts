import { liquidFields } from './coolant';
import type { Choice, FieldSpec, QuantityField, TableField } from './types';

const ARRANGEMENTS: readonly Choice[] = [
  { value: 'crossflow-both-unmixed', label: 'crossflow, both unmixed' },
  { value: 'crossflow-air-mixed', label: 'crossflow, air mixed' },
  { value: 'crossflow-liquid-mixed', label: 'crossflow, liquid mixed' },
  { value: 'counterflow', label: 'counterflow' },
  { value: 'parallel', label: 'parallel flow' },
];

/** Texts of the defaults in which the two cores differ. */
export interface CoreDefaults {
  readonly heat: string;
  readonly airMassFlow: string;
  readonly airInlet: string;
  readonly liquidFlow: string;
  readonly liquidInlet: string;
  readonly liquidLoss: readonly (readonly string[])[];
  readonly liquidVolume: string;
  readonly metal: string;
}

/** Loss of a part by points; one point goes by a power of the flow, more by a line and a square. */
export function lossTable(
  path: string,
  rest: Pick<TableField, 'label' | 'ask' | 'default' | 'columns'> & Partial<TableField>,
): TableField {
  return { kind: 'table', path, standing: 'from memory', minRows: 1, maxRows: 12, ...rest };
}

export const exponentField = (path: string, label: string): QuantityField => ({
  kind: 'quantity',
  path,
  label,
  symbol: 'n',
  quantity: 'ratio',
  default: '1.8',
  standing: 'common practice',
  min: 1,
  max: 2,
  ask: 'Used when one point is given: 1 for creeping flow, 2 for fully turbulent flow.',
  typical: { text: '1.75 to 2 turbulent', standing: 'common practice' },
});

/** The rating point, its split and what the core holds: the same questions for both cores. */
export function coreFields(core: 'chargeCooler' | 'frontExchanger', d: CoreDefaults): FieldSpec[] {
  const at = (key: string) => `${core}.${key}`;
  const quantity = (
    key: string,
    rest: Omit<QuantityField, 'kind' | 'path' | 'standing'> & Partial<QuantityField>,
  ): QuantityField => ({ kind: 'quantity', path: at(key), standing: 'from memory', ...rest });
  return [
    {
      kind: 'choice',
      path: at('arrangement'),
      label: 'Arrangement of the streams',
      choices: ARRANGEMENTS,
      default: 'crossflow-both-unmixed',
      standing: 'common practice',
      ask: 'Look at fins and tubes: fins keep the air from mixing, tubes keep the liquid from mixing.',
    },
    quantity('rating.heat', {
      label: 'Rated heat',
      symbol: '\\dot Q_r',
      quantity: 'heat',
      default: d.heat,
      min: 1,
      max: 1e6,
      ask: 'Heat of one published or measured point; the four values below belong to the same point.',
    }),
    quantity('rating.airMassFlow', {
      label: 'Rated air flow',
      symbol: '\\dot m_{a,r}',
      quantity: 'airMassFlow',
      default: d.airMassFlow,
      min: 1e-3,
      max: 20,
      ask: 'By mass; a volume flow times the density of the air at that point.',
    }),
    quantity('rating.airInlet', {
      label: 'Rated air inlet',
      symbol: 'T_{a,r}',
      quantity: 'temperature',
      default: d.airInlet,
      min: 233.15,
      max: 573.15,
      ask: 'Of the same point.',
    }),
    quantity('rating.liquidFlow', {
      label: 'Rated liquid flow',
      symbol: '\\dot V_{l,r}',
      quantity: 'volumeFlow',
      default: d.liquidFlow,
      min: 1e-6,
      max: 0.02,
      ask: 'Of the same point.',
    }),
    quantity('rating.liquidInlet', {
      label: 'Rated liquid inlet',
      symbol: 'T_{l,r}',
      quantity: 'temperature',
      default: d.liquidInlet,
      min: 243.15,
      max: 393.15,
      ask: 'Of the same point.',
    }),
    ...liquidFields(at('rating.coolant'), 'of the rating'),
    quantity('airShare', {
      label: 'Share of the resistance on the air side',
      symbol: 's_a',
      quantity: 'percent',
      default: '70 %',
      min: 0.05,
      max: 0.95,
      ask: 'At the rating point; lower for narrow tubes with creeping liquid. Two ratings at different air flows would tell.',
      typical: { text: '55 to 85 %', standing: 'from memory' },
    }),
    quantity('airExponent', {
      label: 'Exponent of the air side',
      symbol: 'm_a',
      quantity: 'ratio',
      default: '0.6',
      min: 0,
      max: 1,
      ask: 'How the air-side conductance follows the air flow.',
      typical: { text: '0.5 to 0.7, louvred fins', standing: 'from memory' },
    }),
    quantity('liquidExponent', {
      label: 'Exponent of the liquid side',
      symbol: 'm_l',
      quantity: 'ratio',
      default: '0.5',
      min: 0,
      max: 1,
      ask: 'How the liquid-side conductance follows the flow: 0.8 turbulent, 0 to 0.33 laminar.',
      typical: { text: '0.3 to 0.8', standing: 'from memory' },
    }),
    lossTable(at('liquidLoss'), {
      label: 'Liquid pressure drop',
      default: d.liquidLoss,
      columns: [
        {
          key: 'flow',
          label: 'Flow',
          kind: 'quantity',
          quantity: 'volumeFlow',
          min: 1e-7,
          max: 0.02,
        },
        {
          key: 'loss',
          label: 'Drop',
          kind: 'quantity',
          quantity: 'pressureDrop',
          min: 0,
          max: 1e6,
        },
      ],
      ask: 'Gauge on both ports with a known flow through the core.',
    }),
    exponentField(at('liquidLossExponent'), 'Exponent of the drop'),
    quantity('liquidVolume', {
      label: 'Liquid held',
      symbol: 'V',
      quantity: 'volume',
      default: d.liquidVolume,
      min: 1e-6,
      max: 0.05,
      ask: 'Fill it on the bench and pour into a measuring jug.',
    }),
    quantity('metal', {
      label: 'Mass of aluminium',
      symbol: 'm',
      quantity: 'mass',
      default: d.metal,
      min: 0.05,
      max: 100,
      ask: 'Weigh it dry; brass or steel: enter 0.42 or 0.52 of its mass.',
    }),
    quantity('cleanliness', {
      label: 'Conductance left',
      symbol: 'k_f',
      quantity: 'percent',
      default: '100 %',
      standing: 'definition',
      min: 0.05,
      max: 1,
      ask: '100 % when clean; less for dirt on the fins or scale in the tubes.',
    }),
  ];
}

/** A core by ruler: what a parts page or a pair of callipers gives instead of a rating. */
import type { CoreId } from '../models/coreMeasures';
import type { FieldGroup, FieldSpec, GroupId, QuantityField } from './types';

interface MeasureDefaults {
  readonly depth: string;
  readonly tubeHeight: string;
  readonly tubeWall: string;
  readonly webs: string;
  readonly finHeight: string;
  readonly finsPerLength: string;
  readonly finThickness: string;
  readonly fin: 'louvered' | 'offset-strip' | 'plain';
  readonly portBore: string;
}

/** Whether the core is told by its rating or by its measures. */
export const byField = (core: CoreId): FieldSpec => ({
  kind: 'choice',
  path: `${core}.by`,
  label: 'Known by',
  choices: [
    { value: 'rating', label: 'a rating point' },
    { value: 'measures', label: 'its measures' },
  ],
  default: 'rating',
  standing: 'definition',
  ask: 'A measured rating is the better witness; measures stand in where a parts page gives no heat.',
});

/** The questions of one core. `extra` come first: what this core does not say elsewhere. */
export function measureGroup(
  id: GroupId,
  title: string,
  core: CoreId,
  d: MeasureDefaults,
  extra: readonly FieldSpec[],
): FieldGroup {
  const quantity = (
    key: string,
    rest: Omit<QuantityField, 'kind' | 'path' | 'standing'> & Partial<QuantityField>,
  ): QuantityField => ({
    kind: 'quantity',
    path: `${core}.measure.${key}`,
    standing: 'from memory',
    ...rest,
  });
  return {
    id,
    title,
    fields: [
      ...extra,
      quantity('depth', {
        label: 'Depth along the air',
        symbol: 'T_d',
        quantity: 'dimension',
        default: d.depth,
        min: 0.008,
        max: 0.5,
        ask: 'Of the finned block, without the end tanks.',
      }),
      quantity('tubeHeight', {
        label: 'Tube height',
        symbol: 'D_m',
        quantity: 'bore',
        default: d.tubeHeight,
        min: 0.8e-3,
        max: 0.03,
        ask: 'Callipers across one tube where the end tank meets the core.',
        typical: {
          text: '0.06 to 0.1 in folded or extruded, 0.25 to 0.4 in bar and plate',
          standing: 'from memory',
        },
      }),
      quantity('tubeWall', {
        label: 'Tube wall',
        symbol: 't_w',
        quantity: 'bore',
        default: d.tubeWall,
        min: 0.1e-3,
        max: 5e-3,
        ask: 'From the parts page; it hardly matters to the heat, but it sets the passage inside.',
        typical: { text: '0.010 to 0.020 in', standing: 'from memory' },
      }),
      quantity('webs', {
        label: 'Webs inside a tube',
        symbol: 'n_w',
        quantity: 'count',
        default: d.webs,
        min: 0,
        max: 40,
        integer: true,
        ask: 'Walls that divide a tube along its depth; look into the end tank’s opening.',
      }),
      quantity('finHeight', {
        label: 'Fin height, tube to tube',
        symbol: 'F_l',
        quantity: 'bore',
        default: d.finHeight,
        min: 1e-3,
        max: 0.03,
        ask: 'Callipers in the gap between two tubes.',
      }),
      quantity('finsPerLength', {
        label: 'Fins per length',
        symbol: 'n_f',
        quantity: 'finDensity',
        default: d.finsPerLength,
        min: 50,
        max: 3300,
        ask: 'Count both slopes of the zigzag over one inch along a tube.',
        typical: { text: '10 to 22 per inch', standing: 'from memory' },
      }),
      quantity('finThickness', {
        label: 'Fin thickness',
        symbol: '\\delta',
        quantity: 'bore',
        default: d.finThickness,
        min: 0.03e-3,
        max: 1e-3,
        ask: 'From the parts page; a micrometer on a damaged fin.',
        typical: { text: '0.003 to 0.006 in', standing: 'from memory' },
      }),
      {
        kind: 'choice',
        path: `${core}.measure.fin`,
        label: 'Fins are',
        choices: [
          { value: 'louvered', label: 'louvered' },
          { value: 'offset-strip', label: 'offset strips' },
          { value: 'plain', label: 'plain' },
        ],
        default: d.fin,
        standing: 'common practice',
        ask: 'Louvers are slanted slits in the fin; offset strips are short fins set off by half a gap.',
      },
      quantity('louverAngle', {
        label: 'Louver angle in degrees',
        symbol: '\\theta',
        quantity: 'ratio',
        default: '27',
        min: 5,
        max: 60,
        ask: 'Seldom stated; photograph a cut fin and measure. Used with louvers only.',
        typical: { text: '20 to 30', standing: 'from memory' },
      }),
      quantity('louverPitch', {
        label: 'Louver pitch',
        symbol: 'L_p',
        quantity: 'bore',
        default: '0.047 in',
        min: 0.2e-3,
        max: 6e-3,
        ask: 'From one louver to the next along the air. Used with louvers only.',
        typical: { text: '0.03 to 0.06 in', standing: 'from memory' },
      }),
      quantity('louverShare', {
        label: 'Louver length over fin height',
        symbol: 'x_l',
        quantity: 'percent',
        default: '85 %',
        min: 0.2,
        max: 1,
        ask: 'How much of the fin’s height is slit. Used with louvers only.',
        typical: { text: '80 to 90 %', standing: 'from memory' },
      }),
      quantity('stripLength', {
        label: 'Length of a strip',
        symbol: 'l_s',
        quantity: 'bore',
        default: '0.125 in',
        min: 0.3e-3,
        max: 0.05,
        ask: 'Along the air. Used with offset strips only.',
        typical: { text: '1/8 in', standing: 'from memory' },
      }),
      quantity('passes', {
        label: 'Passes of the liquid',
        symbol: 'n',
        quantity: 'count',
        default: '1',
        standing: 'common practice',
        min: 1,
        max: 6,
        integer: true,
        ask: 'How often the liquid crosses from end tank to end tank.',
      }),
      quantity('portBore', {
        label: 'Bore of the ports',
        symbol: 'D_p',
        quantity: 'bore',
        default: d.portBore,
        min: 4e-3,
        max: 0.08,
        ask: 'Drill bit or callipers inside the fitting.',
      }),
      quantity('conductivity', {
        label: 'Conductivity of fins and tubes',
        symbol: 'k',
        quantity: 'conductivity',
        default: '190 W/(m K)',
        min: 10,
        max: 430,
        ask: 'Aluminium sheet for fins 180 to 220 W/(m K), copper about 380.',
      }),
    ],
  };
}

export const frontMeasures = measureGroup(
  'frontMeasures',
  'Front exchanger by its measures',
  'frontExchanger',
  {
    depth: '2.25 in',
    tubeHeight: '0.080 in',
    tubeWall: '0.012 in',
    webs: '1',
    finHeight: '0.32 in',
    finsPerLength: '14 fpi',
    finThickness: '0.004 in',
    fin: 'louvered',
    portBore: '0.75 in',
  },
  [
    byField('frontExchanger'),
    {
      kind: 'choice',
      path: 'frontExchanger.measure.tubesRun',
      label: 'Tubes run',
      choices: [
        { value: 'across', label: 'across, end tanks at the sides' },
        { value: 'down', label: 'down, end tanks at top and bottom' },
      ],
      default: 'across',
      standing: 'common practice',
      ask: 'Look where the end tanks stand.',
    },
  ],
);

const block = (key: string, label: string, symbol: string, of: string, ask: string): FieldSpec => ({
  kind: 'quantity',
  path: `chargeCooler.measure.${key}`,
  label,
  symbol,
  quantity: 'dimension',
  default: of,
  standing: 'from memory',
  min: 0.03,
  max: 1.5,
  ask,
});

export const chargeMeasures = measureGroup(
  'chargeMeasures',
  'Charge cooler by its measures',
  'chargeCooler',
  {
    depth: '4 in',
    tubeHeight: '0.10 in',
    tubeWall: '0.016 in',
    webs: '0',
    finHeight: '0.35 in',
    finsPerLength: '15 fpi',
    finThickness: '0.004 in',
    fin: 'offset-strip',
    portBore: '0.75 in',
  },
  [
    byField('chargeCooler'),
    block('tubeRun', 'Length of a tube', 'L', '12 in', 'Between the end tanks of the liquid.'),
    block('stack', 'Height of the stack', 'H', '5 in', 'Across the tubes, all of them.'),
  ],
);

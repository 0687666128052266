import type { DutyId } from '$lib/solver/loop/types';
import type { Choice, ChoiceField, FieldGroup, FieldSpec, QuantityField } from './types';

export const DUTIES: readonly Choice[] = [
  { value: 'traffic', label: 'Traffic' },
  { value: 'cruise', label: 'Cruise' },
  { value: 'pull', label: 'Pull' },
];

const AIR_BY: readonly Choice[] = [
  { value: 'power', label: 'from power and fuel use' },
  { value: 'speed-density', label: 'from speed and density' },
  { value: 'heat', label: 'heat stated outright' },
];

const BYPASS: readonly Choice[] = [
  { value: 'open', label: 'open' },
  { value: 'closed', label: 'closed' },
];

/** What differs from duty to duty: the texts of the defaults. */
interface DutyDefaults {
  readonly speed: string;
  readonly power: string;
  readonly fuelUse: string;
  readonly airFuelRatio: string;
  readonly rotation: string;
  readonly heat: string;
  readonly manifold: string;
  readonly bypass: 'open' | 'closed';
  readonly recirculation: string;
  readonly compressorEfficiency: string;
  readonly intakeRise: string;
  readonly bayRise: string;
}

const KMH = 1 / 3.6;

function dutyGroup(id: DutyId, title: string, d: DutyDefaults): FieldGroup {
  const at = (key: string) => `duty.${id}.${key}`;
  const quantity = (
    key: keyof DutyDefaults | 'volumetricEfficiency' | 'bypassRise',
    rest: Omit<QuantityField, 'kind' | 'path' | 'standing'> & Partial<QuantityField>,
  ): QuantityField => ({ kind: 'quantity', path: at(key), standing: 'from memory', ...rest });
  const by: ChoiceField = {
    kind: 'choice',
    path: at('by'),
    label: 'Charge air found',
    choices: AIR_BY,
    default: 'power',
    standing: 'common practice',
    ask: 'Power is quickest; speed and density need the manifold gauge; heat is for a loop that was measured.',
  };
  const bypass: ChoiceField = {
    kind: 'choice',
    path: at('bypass'),
    label: 'Compressor bypass',
    choices: BYPASS,
    default: d.bypass,
    standing: 'common practice',
    ask: 'Watch the actuator of the bypass valve in this duty.',
  };
  const fields: FieldSpec[] = [
    quantity('speed', {
      label: 'Vehicle speed',
      symbol: 'V_v',
      quantity: 'speed',
      default: d.speed,
      standing: 'common practice',
      min: 0,
      max: 400 * KMH,
      ask: 'Mean over the duty, from the log or the dash.',
    }),
    by,
    quantity('power', {
      label: 'Engine power',
      symbol: 'P_e',
      quantity: 'power',
      default: d.power,
      min: 0,
      max: 3e6,
      ask: 'At the crankshaft; a wheel figure divided by about 0.85.',
      ...(id === 'cruise'
        ? { typical: { text: '25 to 60 hp on a level road', standing: 'from memory' } as const }
        : {}),
    }),
    quantity('fuelUse', {
      label: 'Brake specific fuel use',
      symbol: 'b',
      quantity: 'fuelUse',
      default: d.fuelUse,
      min: 0.15 / 3.6e6,
      max: 1.2 / 3.6e6,
      ask: 'From a dyno sheet; it matters less than the power itself.',
      typical: { text: '0.50 to 0.62 lb/(hp·h), boosted gasoline', standing: 'from memory' },
    }),
    quantity('airFuelRatio', {
      label: 'Air-fuel ratio',
      symbol: '\\mathrm{AFR}',
      quantity: 'ratio',
      default: d.airFuelRatio,
      min: 4,
      max: 60,
      ask: 'By mass, from the wideband reading.',
    }),
    quantity('rotation', {
      label: 'Engine speed',
      symbol: 'n_e',
      quantity: 'rotation',
      default: d.rotation,
      min: 0,
      max: 300,
      ask: 'From the log; used with speed and density only.',
    }),
    quantity('volumetricEfficiency', {
      label: 'Volumetric efficiency',
      symbol: '\\eta_v',
      quantity: 'percent',
      default: '90 %',
      min: 0.1,
      max: 1.6,
      ask: 'On manifold density; used with speed and density only.',
      typical: { text: '75 to 105 %', standing: 'from memory' },
    }),
    quantity('heat', {
      label: 'Charge heat, stated',
      symbol: '\\dot Q_c',
      quantity: 'heat',
      default: d.heat,
      min: 0,
      max: 5e5,
      ask: 'Flow times the rise across the charge cooler, both measured; used when heat is stated outright.',
    }),
    quantity('manifold', {
      label: 'Manifold pressure, gauge',
      symbol: 'p_m',
      quantity: 'gaugePressure',
      default: d.manifold,
      standing: 'common practice',
      min: -9e4,
      max: 5e5,
      ask: 'Boost gauge or log; negative when throttled.',
    }),
    bypass,
    quantity('bypassRise', {
      label: 'Rise across the compressor, bypass open',
      symbol: '\\Delta p_b',
      quantity: 'pressureDrop',
      default: '0.8 psi',
      min: 0,
      max: 1e5,
      ask: 'Gauge across the compressor with the bypass open: a positive-displacement machine still works against it.',
      typical: { text: '0.3 to 1.5 psi', standing: 'from memory' },
    }),
    quantity('recirculation', {
      label: 'Share going round through the bypass',
      symbol: 'r_b',
      quantity: 'percent',
      default: d.recirculation,
      min: 0,
      max: 0.9,
      ask: 'Air the compressor moves beyond what the engine takes, over all it moves; zero with the bypass closed.',
    }),
    quantity('compressorEfficiency', {
      label: 'Compressor efficiency',
      symbol: '\\eta_c',
      quantity: 'percent',
      default: d.compressorEfficiency,
      min: 0.2,
      max: 1,
      ask: 'From the maker’s map at this flow and pressure ratio.',
      typical: {
        text: 'centrifugal 65 to 78 %, twin-screw 60 to 72 %, roots 45 to 62 %',
        standing: 'from memory',
      },
    }),
    quantity('intakeRise', {
      label: 'Intake air above ambient',
      symbol: '\\Delta T_i',
      quantity: 'temperatureDifference',
      default: d.intakeRise,
      min: 0,
      max: 80,
      ask: 'Thermometer in the duct just ahead of the compressor.',
    }),
    quantity('bayRise', {
      label: 'Engine bay above ambient',
      symbol: '\\Delta T_b',
      quantity: 'temperatureDifference',
      default: d.bayRise,
      min: 0,
      max: 120,
      ask: 'Thermometer beside the reservoir, bonnet shut, in this duty.',
    }),
  ];
  return { id, title, fields };
}

export const traffic = dutyGroup('traffic', 'Duty: traffic', {
  speed: '5 mph',
  power: '10 hp',
  fuelUse: '0.80 lb/hp-h',
  airFuelRatio: '14.7',
  rotation: '900 rpm',
  heat: '0.3 kW',
  manifold: '-9 psi',
  bypass: 'open',
  recirculation: '50 %',
  compressorEfficiency: '50 %',
  intakeRise: '25 °F',
  bayRise: '70 °F',
});

export const cruise = dutyGroup('cruise', 'Duty: cruise', {
  speed: '60 mph',
  power: '30 hp',
  fuelUse: '0.60 lb/hp-h',
  airFuelRatio: '14.7',
  rotation: '2000 rpm',
  heat: '0.5 kW',
  manifold: '-6 psi',
  bypass: 'open',
  recirculation: '40 %',
  compressorEfficiency: '55 %',
  intakeRise: '10 °F',
  bayRise: '50 °F',
});

export const pull = dutyGroup('pull', 'Duty: pull', {
  speed: '80 mph',
  power: '600 hp',
  fuelUse: '0.55 lb/hp-h',
  airFuelRatio: '11.8',
  rotation: '6000 rpm',
  heat: '21 kW',
  manifold: '10 psi',
  bypass: 'closed',
  recirculation: '0 %',
  compressorEfficiency: '65 %',
  intakeRise: '5 °F',
  bayRise: '50 °F',
});

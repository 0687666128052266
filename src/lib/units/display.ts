/** How each kind of quantity is shown: unit per system, words for it, typical things to type. Data only. */
import type { Quantity } from '$lib/solver/quantity';

export type UnitSystem = 'US' | 'SI';

/** One unit as shown. */
export interface ShownUnit {
  /** mathjs spelling, minute in full (`min` is a function there); '' for a bare number, '%' for per cent. */
  readonly spelling: string;
  readonly label: string;
  readonly tex: string;
  /** Stands before the number and takes the place of `label` there: a currency sign. */
  readonly sign?: string;
}

export interface Display {
  readonly US: ShownUnit;
  readonly SI: ShownUnit;
  /** "a volume flow": what a message says was expected. */
  readonly noun: string;
  /** What a person might type, US and SI. */
  readonly example: readonly [US: string, SI: string];
  /** Most decimals worth printing. */
  readonly decimals?: number;
}

const unit = (spelling: string, label = spelling, tex = `\\mathrm{${label}}`): ShownUnit => ({
  spelling,
  label,
  tex,
});

const NONE = unit('', '', '');
const PERCENT = unit('%', '%', '\\%');
const DEG_F = unit('degF', '°F', '{}^{\\circ}\\mathrm{F}');
const DEG_C = unit('degC', '°C', '{}^{\\circ}\\mathrm{C}');
const DELTA_F = unit('degR', 'Δ°F', '\\Delta{}^{\\circ}\\mathrm{F}');
const KELVIN = unit('K');
const RANKINE = unit('degR', '°R', '{}^{\\circ}\\mathrm{R}');
const PSI = unit('psi');
const KPA = unit('kPa');
const IN = unit('in');
const MM = unit('mm');
const FT = unit('ft');
const M = unit('m');
const M_S = unit('m/s');
const WATT = unit('W');
const KW = unit('kW');
const BTU_H = unit('BTU/hour', 'Btu/h');
const CUBIC_M_S = unit('m^3/s', 'm³/s', '\\mathrm{m^3/s}');
const MPA_S = unit('mPa s', 'mPa·s', '\\mathrm{mPa\\cdot s}');
const DOLLAR: ShownUnit = { spelling: 'dollar', label: '$', tex: '', sign: '$' };
const per = (spelling: string, label: string) =>
  unit(spelling, label, `\\mathrm{${texLabel(label)}}`);
const texLabel = (label: string) =>
  label
    .replaceAll('·', '\\cdot ')
    .replaceAll('°', '{}^{\\circ}')
    .replaceAll('²', '^2')
    .replaceAll('³', '^3');

/** The table. Both examples must parse, and to about the same amount: a test reads them. */
export const DISPLAY: Readonly<Record<Quantity, Display>> = {
  ratio: { US: NONE, SI: NONE, noun: 'a number', example: ['0.65', '0.65'] },
  percent: { US: PERCENT, SI: PERCENT, noun: 'a percentage', example: ['50 %', '50 %'] },
  count: { US: NONE, SI: NONE, noun: 'a count', example: ['4', '4'], decimals: 0 },
  temperature: {
    US: DEG_F,
    SI: DEG_C,
    noun: 'a temperature',
    example: ['200 °F', '93.3 °C'],
    decimals: 1,
  },
  temperatureDifference: {
    US: DELTA_F,
    SI: KELVIN,
    noun: 'a temperature difference',
    example: ['18 °F', '10 K'],
    decimals: 2,
  },
  absoluteTemperature: {
    US: RANKINE,
    SI: KELVIN,
    noun: 'an absolute temperature',
    example: ['540 °R', '300 K'],
    decimals: 2,
  },
  pressure: {
    US: unit('psi', 'psi abs', '\\mathrm{psi\\,abs}'),
    SI: unit('kPa', 'kPa abs', '\\mathrm{kPa\\,abs}'),
    noun: 'an absolute pressure',
    example: ['14.7 psia', '101.3 kPa'],
  },
  gaugePressure: {
    US: PSI,
    SI: KPA,
    noun: 'a gauge pressure',
    example: ['14 psi', '96.5 kPa'],
  },
  pressureDrop: { US: PSI, SI: KPA, noun: 'a pressure drop', example: ['3 psi', '20.7 kPa'] },
  airPressure: {
    US: unit('inH2O', 'inH₂O', '\\mathrm{inH_2O}'),
    SI: unit('Pa'),
    noun: 'a pressure of air',
    example: ['0.6 inH2O', '149 Pa'],
  },
  head: { US: FT, SI: M, noun: 'a head', example: ['14 ft', '4.27 m'] },
  length: { US: FT, SI: M, noun: 'a length', example: ['6 ft', '1.83 m'] },
  bore: { US: IN, SI: MM, noun: 'a bore', example: ['0.75 in', '19.05 mm'] },
  dimension: { US: IN, SI: MM, noun: 'a dimension', example: ['24 in', '610 mm'] },
  roughness: {
    US: unit('mil'),
    SI: unit('um', 'µm', '\\mathrm{\\mu m}'),
    noun: 'a roughness',
    example: ['0.059 mil', '1.5 µm'],
  },
  altitude: { US: FT, SI: M, noun: 'an altitude', example: ['1000 ft', '305 m'] },
  area: {
    US: unit('in^2', 'in²', '\\mathrm{in^2}'),
    SI: unit('cm^2', 'cm²', '\\mathrm{cm^2}'),
    noun: 'an area',
    example: ['288 in²', '1858 cm²'],
  },
  wireArea: {
    US: unit('mm^2', 'mm²', '\\mathrm{mm^2}'),
    SI: unit('mm^2', 'mm²', '\\mathrm{mm^2}'),
    noun: 'an area of copper',
    example: ['2.5 mm²', '2.5 mm²'],
  },
  volume: { US: unit('gal'), SI: unit('L'), noun: 'a volume', example: ['3 gal', '11.36 L'] },
  displacement: {
    US: unit('in^3', 'in³', '\\mathrm{in^3}'),
    SI: unit('L'),
    noun: 'a displacement',
    example: ['305 in³', '5 L'],
  },
  volumeFlow: {
    US: unit('gpm'),
    SI: unit('L/minute', 'L/min'),
    noun: 'a volume flow',
    example: ['8 gpm', '30.3 L/min'],
  },
  airFlow: {
    US: unit('cfm'),
    SI: CUBIC_M_S,
    noun: 'an air flow',
    example: ['650 cfm', '0.307 m³/s'],
  },
  massFlow: {
    US: unit('lbm/minute', 'lb/min'),
    SI: unit('kg/s'),
    noun: 'a mass flow',
    example: ['65 lb/min', '0.491 kg/s'],
  },
  airMassFlow: {
    US: unit('lbm/minute', 'lb/min'),
    SI: unit('kg/s'),
    noun: 'a mass flow of air',
    example: ['65 lb/min', '0.491 kg/s'],
  },
  speed: { US: unit('mph'), SI: unit('km/h'), noun: 'a speed', example: ['60 mph', '96.6 km/h'] },
  velocity: { US: unit('ft/s'), SI: M_S, noun: 'a velocity', example: ['7 ft/s', '2.13 m/s'] },
  faceVelocity: {
    US: unit('ft/minute', 'ft/min'),
    SI: M_S,
    noun: 'a face velocity',
    example: ['500 ft/min', '2.54 m/s'],
  },
  acceleration: {
    US: unit('ft/s^2', 'ft/s²', '\\mathrm{ft/s^2}'),
    SI: unit('m/s^2', 'm/s²', '\\mathrm{m/s^2}'),
    noun: 'an acceleration',
    example: ['32.17 ft/s²', '9.806 m/s²'],
  },
  heat: { US: BTU_H, SI: KW, noun: 'a heat flow', example: ['10000 Btu/h', '2.93 kW'] },
  power: { US: unit('hp'), SI: KW, noun: 'a power', example: ['600 hp', '447 kW'] },
  electricPower: { US: WATT, SI: WATT, noun: 'an electrical power', example: ['60 W', '60 W'] },
  conductance: {
    US: per('BTU/(hour degR)', 'Btu/(h·°F)'),
    SI: unit('W/K'),
    noun: 'a conductance',
    example: ['660 Btu/(h·°F)', '348 W/K'],
  },
  thermalResistance: {
    US: per('hour degR/BTU', 'h·°F/Btu'),
    SI: unit('K/W'),
    noun: 'a thermal resistance',
    example: ['0.0015 h·°F/Btu', '0.00284 K/W'],
  },
  heatCapacity: {
    US: per('BTU/degR', 'Btu/°F'),
    SI: unit('kJ/K'),
    noun: 'a heat capacity',
    example: ['20 Btu/°F', '38 kJ/K'],
  },
  energy: {
    US: unit('BTU', 'Btu'),
    SI: unit('kJ'),
    noun: 'an amount of heat',
    example: ['100 Btu', '105.5 kJ'],
  },
  specificHeat: {
    US: per('BTU/(lbm degR)', 'Btu/(lb·°F)'),
    SI: per('J/(kg K)', 'J/(kg·K)'),
    noun: 'a specific heat',
    example: ['0.85 Btu/(lb·°F)', '3559 J/(kg·K)'],
  },
  latentHeat: {
    US: per('BTU/lbm', 'Btu/lb'),
    SI: per('kJ/kg', 'kJ/kg'),
    noun: 'a latent heat',
    example: ['143.4 Btu/lb', '333.6 kJ/kg'],
  },
  volumetricHeatCapacity: {
    US: per('BTU/(ft^3 degR)', 'Btu/(ft³·°F)'),
    SI: per('kJ/(m^3 K)', 'kJ/(m³·K)'),
    noun: 'a heat capacity by volume',
    example: ['54.6 Btu/(ft³·°F)', '3662 kJ/(m³·K)'],
  },
  gasConstant: {
    US: per('ft lbf/(lbm degR)', 'ft·lbf/(lb·°R)'),
    SI: per('J/(kg K)', 'J/(kg·K)'),
    noun: 'a gas constant',
    example: ['53.35 ft·lbf/(lb·°R)', '287.05 J/(kg·K)'],
  },
  density: {
    US: per('lbm/ft^3', 'lb/ft³'),
    SI: per('kg/m^3', 'kg/m³'),
    noun: 'a density',
    example: ['65 lb/ft³', '1041 kg/m³'],
  },
  viscosity: {
    US: unit('mPa s', 'cP'),
    SI: MPA_S,
    noun: 'a viscosity',
    example: ['1.8 cP', '1.8 mPa·s'],
  },
  conductivity: {
    US: per('BTU/(hour ft degR)', 'Btu/(h·ft·°F)'),
    SI: per('W/(m K)', 'W/(m·K)'),
    noun: 'a thermal conductivity',
    example: ['0.24 Btu/(h·ft·°F)', '0.415 W/(m·K)'],
  },
  heatTransferCoefficient: {
    US: per('BTU/(hour ft^2 degR)', 'Btu/(h·ft²·°F)'),
    SI: per('W/(m^2 K)', 'W/(m²·K)'),
    noun: 'a heat transfer coefficient',
    example: ['10 Btu/(h·ft²·°F)', '56.8 W/(m²·K)'],
  },
  massVelocity: {
    US: per('lbm/(ft^2 s)', 'lb/(ft²·s)'),
    SI: per('kg/(m^2 s)', 'kg/(m²·s)'),
    noun: 'a mass flow per area',
    example: ['1 lb/(ft²·s)', '4.88 kg/(m²·s)'],
  },
  finDensity: {
    US: per('in^-1', '1/in'),
    SI: per('cm^-1', '1/cm'),
    noun: 'a count of fins per length',
    example: ['14 fpi', '5.51 1/cm'],
  },
  mass: { US: unit('lbm', 'lb'), SI: unit('kg'), noun: 'a mass', example: ['6 lb', '2.72 kg'] },
  time: { US: unit('s'), SI: unit('s'), noun: 'a time', example: ['30 s', '0.5 min'] },
  voltage: { US: unit('V'), SI: unit('V'), noun: 'a voltage', example: ['12.4 V', '12.4 V'] },
  current: { US: unit('A'), SI: unit('A'), noun: 'a current', example: ['7 A', '7 A'] },
  resistance: {
    US: unit('ohm', 'Ω', '\\Omega'),
    SI: unit('ohm', 'Ω', '\\Omega'),
    noun: 'an electrical resistance',
    example: ['0.08 ohm', '80 mohm'],
  },
  rotation: {
    US: unit('rpm'),
    SI: unit('rpm'),
    noun: 'a rotational speed',
    example: ['5500 rpm', '5500 rpm'],
  },
  fuelUse: {
    US: per('lbm/(hp hour)', 'lb/(hp·h)'),
    SI: per('g/(kW hour)', 'g/(kW·h)'),
    noun: 'a brake specific fuel use',
    example: ['0.55 lb/hp-h', '335 g/kWh'],
  },
  frequency: {
    US: unit('Hz'),
    SI: unit('Hz'),
    noun: 'a frequency',
    example: ['120 Hz', '120 Hz'],
  },
  pulsesPerVolume: {
    US: unit('gal^-1', 'pulses/gal'),
    SI: unit('L^-1', 'pulses/L'),
    noun: 'pulses per volume',
    example: ['1700 pulses/gal', '449 pulses/L'],
  },
  beta: { US: KELVIN, SI: KELVIN, noun: 'a Beta', example: ['3500 K', '3500 K'] },
  perKelvin: {
    US: unit('K^-1', '1/K'),
    SI: unit('K^-1', '1/K'),
    noun: 'a coefficient',
    example: ['0.0014 /K', '0.0014 /K'],
  },
  dissipation: {
    US: unit('mW/K'),
    SI: unit('mW/K'),
    noun: 'a dissipation constant',
    example: ['5 mW/K', '5 mW/K'],
  },
  money: {
    US: DOLLAR,
    SI: DOLLAR,
    noun: 'an amount of money',
    example: ['$120', '$120'],
    decimals: 2,
  },
  costPerDegree: {
    US: { spelling: 'dollar/degR', label: '$/°F', tex: '/{}^{\\circ}\\mathrm{F}', sign: '$' },
    SI: { spelling: 'dollar/K', label: '$/K', tex: '/\\mathrm{K}', sign: '$' },
    noun: 'a cost per degree',
    example: ['20 $/°F', '36 $/K'],
    decimals: 2,
  },
};

const MINUTES = unit('minute', 'min');

/** Times of ten minutes and more are shown in minutes. */
const LONG_TIME = 600;

/** Unit in which `si` is shown. Without a value: the unit of an input, an axis or a table head. */
export function shownUnit(quantity: Quantity, system: UnitSystem, si = 0): ShownUnit {
  if (quantity === 'time' && Math.abs(si) >= LONG_TIME) return MINUTES;
  return DISPLAY[quantity][system];
}

/** What people write for a unit, and which mathjs unit it is. Data only, plus the lookup. */
import type { Quantity } from '$lib/solver/quantity';

export interface NamedUnit {
  /** mathjs spelling. */
  readonly spelling: string;
  /** The unit states gauge or absolute pressure: it fits only those kinds. */
  readonly only?: readonly Quantity[];
}

const GAUGE: readonly Quantity[] = ['gaugePressure', 'pressureDrop', 'airPressure'];
const ABSOLUTE: readonly Quantity[] = ['pressure'];

/**
 * mathjs spelling: names as typed, squeezed by {@link squeeze} (lower case, no blanks, brackets,
 * dots, hyphens, carets or degree signs).
 */
const NAMES: Readonly<Record<string, string>> = {
  '%': '% percent pct',
  degC: 'c degc celsius degreesc degreec δc',
  degF: 'f degf fahrenheit degreesf degreef δf',
  K: 'k kelvin δk',
  degR: 'r degr rankine',
  psi: 'psi lb/in2 lbf/in2 lbsperin2',
  kPa: 'kpa',
  Pa: 'pa n/m2',
  hPa: 'hpa',
  MPa: 'mpa',
  bar: 'bar',
  mbar: 'mbar',
  atm: 'atm',
  inHg: 'inhg "hg inchg inchhg inofhg',
  mmHg: 'mmhg torr',
  inH2O: 'inh2o inwg inwc inw inaq inwater inofwater "h2o "wg "wc iwc iwg inh20',
  mmH2O: 'mmh2o mmwg mmwc mmws',
  ft: "ft ' foot feet",
  in: 'in " inch inches',
  mil: 'mil mils thou',
  m: 'm meter metre meters metres',
  mm: 'mm',
  cm: 'cm',
  um: 'um μm micron microns',
  km: 'km',
  mi: 'mi mile miles',
  'in^2': 'in2 sqin',
  'ft^2': 'ft2 sqft',
  'cm^2': 'cm2',
  'm^2': 'm2',
  'mm^2': 'mm2',
  gal: 'gal gals gallon gallons usgal',
  quart: 'qt qts quart quarts',
  pint: 'pt pint pints',
  floz: 'floz',
  L: 'l liter litre liters litres',
  mL: 'ml cc cm3 ccm',
  'in^3': 'in3 cuin ci cid',
  'ft^3': 'ft3 cuft',
  'm^3': 'm3',
  gpm: 'gpm gal/min usgpm',
  'gal/hour': 'gph gal/h gal/hr',
  'L/minute': 'l/min lpm l/m',
  'L/hour': 'l/h l/hr lph',
  'L/s': 'l/s lps',
  'mL/minute': 'ml/min cc/min',
  'm^3/s': 'm3/s',
  'm^3/hour': 'm3/h m3/hr cmh',
  'm^3/minute': 'm3/min cmm',
  cfm: 'cfm ft3/min scfm',
  'lbm/minute': 'lb/min lbs/min ppm lbm/min',
  'lbm/hour': 'lb/h lb/hr lbs/h lbs/hr pph lbm/h',
  'lbm/s': 'lb/s lbs/s lbm/s',
  'kg/s': 'kg/s',
  'g/s': 'g/s',
  'kg/hour': 'kg/h kg/hr',
  'kg/minute': 'kg/min',
  mph: 'mph mi/h mi/hr',
  'km/h': 'km/h kph kmh km/hr',
  'm/s': 'm/s mps',
  'ft/s': 'ft/s fps ft/sec',
  'ft/minute': 'ft/min fpm',
  'm/s^2': 'm/s2',
  'ft/s^2': 'ft/s2',
  W: 'w watt watts',
  kW: 'kw',
  hp: 'hp bhp horsepower',
  'BTU/hour': 'btu/h btu/hr btuh',
  'BTU/minute': 'btu/min',
  'BTU/(hour degR)': 'btu/hf btu/hrf btu/h/f btu/hr/f',
  'W/K': 'w/k w/c',
  'kW/K': 'kw/k kw/c',
  'K/W': 'k/w c/w',
  'hour degR/BTU': 'hf/btu hrf/btu',
  'BTU/degR': 'btu/f',
  'kJ/K': 'kj/k kj/c',
  'J/K': 'j/k j/c',
  BTU: 'btu btus',
  kJ: 'kj',
  J: 'j',
  MJ: 'mj',
  'W hour': 'wh',
  'kW hour': 'kwh',
  'BTU/(lbm degR)': 'btu/lbf btu/lb/f btu/lbmf',
  'BTU/(ft^3 degR)': 'btu/ft3f btu/cuftf btu/ft3/f',
  'kJ/(m^3 K)': 'kj/m3k kj/m3/k',
  'J/(kg K)': 'j/kgk j/kg/k j/kgc',
  'kJ/(kg K)': 'kj/kgk kj/kg/k kj/kgc',
  'ft lbf/(lbm degR)': 'ftlbf/lbr ftlbf/lbmr',
  'BTU/lbm': 'btu/lb btu/lbm',
  'kJ/kg': 'kj/kg',
  'J/kg': 'j/kg',
  'BTU/(hour ft^2 degR)': 'btu/hft2f btu/hrft2f',
  'W/(m^2 K)': 'w/m2k w/m2/k',
  'lbm/(ft^2 s)': 'lb/ft2s',
  'kg/(m^2 s)': 'kg/m2s',
  'in^-1': 'fpi fins/in 1/in finsperinch',
  'cm^-1': '1/cm fins/cm',
  'm^-1': '1/m fins/m',
  'lbm/ft^3': 'lb/ft3 lbm/ft3',
  'kg/m^3': 'kg/m3',
  'kg/L': 'kg/l g/cm3 g/ml g/cc',
  'mPa s': 'cp mpas centipoise',
  'Pa s': 'pas',
  'BTU/(hour ft degR)': 'btu/hftf btu/hrftf',
  'W/(m K)': 'w/mk w/m/k w/mc',
  lbm: 'lb lbs lbm pound pounds',
  kg: 'kg kilogram kilograms',
  g: 'g gram grams',
  oz: 'oz ounce ounces',
  s: 's sec secs second seconds',
  minute: 'min mins minute minutes',
  hour: 'h hr hrs hour hours',
  V: 'v volt volts vdc',
  mV: 'mv',
  A: 'a amp amps ampere amperes',
  mA: 'ma',
  ohm: 'ohm ohms ω',
  kohm: 'kohm kohms kω',
  mohm: 'mohm mohms mω milliohm milliohms',
  Mohm: 'megohm megohms meg',
  rpm: 'rpm 1/min /min rev/min r/min',
  'gal^-1': 'pulses/gal pulse/gal p/gal 1/gal /gal',
  'L^-1': 'pulses/l pulse/l p/l 1/l /l',
  'K^-1': '1/k /k perk',
  'mW/K': 'mw/k mw/c',
  Hz: 'hz 1/s /s rev/s rps',
  'lbm/(hp hour)': 'lb/hph lb/hphr lb/hp/h lb/hp/hr lbs/hph lbs/hphr lb/bhph lb/bhphr',
  'g/(kW hour)': 'g/kwh g/kw/h',
  'kg/(kW hour)': 'kg/kwh',
  'kg/J': 'kg/j',
  dollar: '$ usd dollar dollars',
  'dollar/degR': '$/f $/δf',
  'dollar/K': '$/k $/δk $/c',
};

const byName = new Map<string, NamedUnit>();
for (const spelling in NAMES) {
  for (const name of NAMES[spelling]!.split(' ')) byName.set(name, { spelling });
}
for (const [suffix, only] of [
  ['g', GAUGE],
  ['gauge', GAUGE],
  ['a', ABSOLUTE],
  ['abs', ABSOLUTE],
] as const) {
  for (const spelling of ['psi', 'kPa', 'bar']) {
    byName.set(spelling.toLowerCase() + suffix, { spelling, only });
  }
}

/** Names that mean something else for one kind of quantity, with the words to say so. */
const LOCAL: Partial<
  Record<Quantity, Readonly<Record<string, readonly [spelling: string, note: string]>>>
> = {
  gaugePressure: poundsAsPsi(),
  pressureDrop: poundsAsPsi(),
  resistance: {
    k: ['kohm', 'k read as kΩ'],
    r: ['ohm', 'R read as Ω'],
  },
  airPressure: {
    in: ['inH2O', 'in read as inches of water'],
    '"': ['inH2O', '" read as inches of water'],
  },
};

function poundsAsPsi() {
  const entry = ['psi', 'pounds read as psi'] as const;
  return { lb: entry, lbs: entry, pound: entry, pounds: entry };
}

export type UnitMatch = NamedUnit & { readonly note?: string };

/** Find the unit that `text` names; undefined when there is none. */
export function unitNamed(text: string, quantity: Quantity): UnitMatch | undefined {
  const name = squeeze(text);
  // The one name whose case counts: a thousand millionfold lies between them.
  if (quantity === 'resistance' && /^\s*M\s*(ohms?|Ω|Ω)?\s*$/.test(text)) {
    return { spelling: 'Mohm' };
  }
  const local = LOCAL[quantity];
  if (local && Object.hasOwn(local, name)) {
    const [spelling, note] = local[name]!;
    return { spelling, note };
  }
  return byName.get(name);
}

/** Drop what people vary: case, blanks, brackets, multiplication dots, hyphens, carets, degree signs. */
const squeeze = (text: string) => text.toLowerCase().replace(/[\s()·⋅*^._°-]/g, '');

/** All spellings, for the test that each is a unit mathjs knows. */
export const ALL_SPELLINGS: readonly string[] = Object.keys(NAMES);

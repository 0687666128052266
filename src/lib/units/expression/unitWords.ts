/** Units by name inside an expression: what mathjs knows, what the trade writes, how it is typeset. */
import { math } from '$lib/math';
import { scaleOf } from '../scale';
import { dimensionOf, type Dimension } from './dimension';

export interface UnitWord {
  readonly name: string;
  /** mathjs spelling. */
  readonly spelling: string;
  readonly tex: string;
  /** SI of one. */
  readonly factor: number;
  /** SI of nought: only a temperature counted from another zero has one. */
  readonly offset: number;
  readonly dimension: Dimension;
}

/** Names of the trade and their mathjs spelling. `min` and `in` mean other things to mathjs. */
const TRADE: Readonly<Record<string, string>> = {
  Btu: 'BTU',
  btu: 'BTU',
  lb: 'lbm',
  lbs: 'lbm',
  min: 'minute',
  h: 'hour',
  hr: 'hour',
  sec: 's',
  psia: 'psi',
  psig: 'psi',
  cP: 'mPa s',
  amp: 'A',
  amps: 'A',
  volts: 'V',
  watts: 'W',
  gallons: 'gal',
  liters: 'L',
  litre: 'L',
  litres: 'L',
  deltaF: 'degR',
  deltaC: 'K',
};

/** What mathjs takes these for is not what a person here means. */
const MEANT_OTHERWISE: Readonly<Record<string, string>> = {
  F: '“F” is the farad to the reader of formulas; a temperature is written degF, a difference of two deltaF.',
  C: '“C” is the coulomb to the reader of formulas; a temperature is written degC, a difference of two K.',
};

const TEX: Readonly<Record<string, string>> = {
  degF: '{}^{\\circ}\\mathrm{F}',
  degC: '{}^{\\circ}\\mathrm{C}',
  degR: '{}^{\\circ}\\mathrm{R}',
  ohm: '\\Omega',
  dollar: '\\$',
  minute: '\\mathrm{min}',
  hour: '\\mathrm{h}',
  BTU: '\\mathrm{Btu}',
  lbm: '\\mathrm{lb}',
  inch: '\\mathrm{in}',
  inH2O: '\\mathrm{inH_2O}',
  'mPa s': '\\mathrm{cP}',
  deltaF: '\\Delta{}^{\\circ}\\mathrm{F}',
  deltaC: '\\Delta{}^{\\circ}\\mathrm{C}',
};

/** A spelling of the unit that is no symbol, to say instead of one letter. */
const IN_FULL: Readonly<Record<string, string>> = {
  m: 'meter',
  s: 'second',
  h: 'hour',
  L: 'liter',
  l: 'liter',
  A: 'ampere',
  V: 'volt',
  W: 'watt',
  K: 'kelvin',
  g: 'gram',
  J: 'joule',
  N: 'newton',
  H: 'henry',
  T: 'tesla',
  C: 'coulomb',
};

const own = <T>(table: Readonly<Record<string, T>>, name: string): T | undefined =>
  Object.hasOwn(table, name) ? table[name] : undefined;

const known = new Map<string, UnitWord | null>();
/** Names come from what people type: not all of them are kept. */
const MOST_KNOWN = 500;

/** The unit of that name; null when there is none. */
export function unitWord(name: string): UnitWord | null {
  let word = known.get(name);
  if (word === undefined) {
    if (known.size >= MOST_KNOWN) known.clear();
    known.set(name, (word = readUnit(name)));
  }
  return word;
}

function readUnit(name: string): UnitWord | null {
  if (!/^[A-Za-z][A-Za-z0-9]{0,19}$/.test(name) || meantOtherwise(name)) return null;
  const spelling = own(TRADE, name) ?? name;
  try {
    const dimension = dimensionOf(spelling);
    if (!dimension) return null;
    const shifted = spelling === 'degF' || spelling === 'degC';
    const { factor, offset } = shifted
      ? scaleOf(spelling, 'K')
      : { factor: (math.unit(1, spelling) as unknown as { value: number }).value, offset: 0 };
    const tex = own(TEX, name) ?? own(TEX, spelling) ?? `\\mathrm{${spelling}}`;
    return { name, spelling, tex, factor, offset, dimension };
  } catch {
    return null;
  }
}

/** Why a name that mathjs takes for a unit is refused here. */
export const meantOtherwise = (name: string): string | undefined => own(MEANT_OTHERWISE, name);

/** The name of a one-letter unit written out. */
export const inFull = (name: string): string | undefined => own(IN_FULL, name);

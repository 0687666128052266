/**
 * Every unit as a straight line to SI, `si = a x + b`, read once from mathjs. After that no call to
 * mathjs is made: a sheet prints hundreds of numbers per edit.
 */
import { math } from '$lib/math';
import { SI_UNIT, type Quantity } from '$lib/solver/quantity';

/** Units of the trade that mathjs does not know. The leading 1 is needed: without it the unit has no value. */
const TRADE_UNITS: Readonly<Record<string, string>> = {
  gpm: '1 gal/minute',
  cfm: '1 ft^3/minute',
  mph: '1 mi/hour',
  rpm: '1/minute',
  // Conventional columns (water 1000 kg/m³, standard gravity), NIST SP 811 App. B: 249.0889 Pa, 3386.389 Pa.
  inH2O: '25.4 mmH2O',
  inHg: '3386.389 Pa',
};
for (const name in TRADE_UNITS) math.createUnit(name, TRADE_UNITS[name]!);

/** `si = factor * x + offset`. */
export interface Scale {
  readonly factor: number;
  readonly offset: number;
}

const known = new Map<string, Scale>();

/** Scale of the mathjs unit `spelling` to the mathjs unit `si`; '' is a bare number. */
export function scaleOf(spelling: string, si: string): Scale {
  const key = `${spelling}|${si}`;
  let scale = known.get(key);
  if (!scale) {
    if (spelling === si) scale = { factor: 1, offset: 0 };
    else if (spelling === '%') scale = { factor: 0.01, offset: 0 };
    else {
      const at = (x: number) => math.unit(x, spelling).toNumber(si);
      // Drops the last-bit noise of mathjs' own conversions, keeps every digit of a definition.
      const offset = tidy(at(0));
      scale = { factor: tidy(at(1) - at(0)), offset };
    }
    known.set(key, scale);
  }
  return scale;
}

const tidy = (x: number) => Number(x.toPrecision(15));

const signatures = new Map<string, string>();

/** Dimensions of a unit as text, to compare two units. */
export function dimensionsOf(spelling: string): string {
  let text = signatures.get(spelling);
  if (text === undefined) {
    text = spelling === '' || spelling === '%' ? '1' : dimensionText(spelling);
    signatures.set(spelling, text);
  }
  return text;
}

function dimensionText(spelling: string): string {
  const { dimensions } = math.unit(1, spelling) as unknown as { dimensions: readonly number[] };
  return dimensions.map((d) => d || 0).join(',');
}

/** SI unit of a kind of quantity, as mathjs takes it for a target (it refuses a leading 1). */
export const siOf = (quantity: Quantity): string =>
  SI_UNIT[quantity].replace(/^1\/(\w+)$/, '$1^-1');

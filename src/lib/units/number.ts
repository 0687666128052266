/**
 * Reading a number as people type it.
 *
 * Comma rule: with both marks present the last one is the decimal mark. A comma alone groups
 * thousands when every group after it has three digits and the first is not 0 ("1,200" is 1200);
 * otherwise it is a decimal comma ("0,75", "1,5", "0,750"). A point alone is a decimal point, several
 * group thousands. A space may group thousands.
 */

export interface ReadNumber {
  readonly value: number;
  /** What follows the number. */
  readonly rest: string;
  /** Set when the comma could have meant something else. */
  readonly doubtful?: string;
}

const MIXED = /^(\d+)(?:\s+|\s*-\s*)(\d+)\s*\/\s*(\d+)/;
const FRACTION = /^(\d+)\s*\/\s*(\d+)/;
const DECIMAL =
  /^(?:\d{1,3}(?: \d{3})+(?![\d/])(?:[.,]\d+)?|\d[\d.,]*|[.,]\d+)(?:e[+-]?\d+(?![\d\p{L}]))?/iu;

/** Read the number at the start of `text`; null when there is none. `text` is already plain (see parse.ts). */
export function readNumber(text: string): ReadNumber | null {
  const signed = /^([+-]?)\s*(?=[\d.,])/.exec(text);
  if (!signed) return null;
  const sign = signed[1] === '-' ? -1 : 1;
  const body = text.slice(signed[0].length);

  const mixed = MIXED.exec(body);
  if (mixed) {
    const value = Number(mixed[1]) + Number(mixed[2]) / Number(mixed[3]);
    return { value: sign * value, rest: body.slice(mixed[0].length) };
  }
  const fraction = FRACTION.exec(body);
  if (fraction) {
    const value = Number(fraction[1]) / Number(fraction[2]);
    return { value: sign * value, rest: body.slice(fraction[0].length) };
  }
  const decimal = DECIMAL.exec(body);
  if (!decimal) return null;
  const digits = decimal[0].replace(/[.,]$/, '');
  const plain = plainDecimal(digits);
  if (plain === null) return null;
  return {
    value: sign * Number(plain.text),
    rest: body.slice(digits.length),
    ...(plain.doubtful ? { doubtful: digits } : {}),
  };
}

/** The number with a point as decimal mark and no grouping; null when the marks make no sense. */
function plainDecimal(digits: string): { text: string; doubtful?: true } | null {
  const [body, exponent] = digits.toLowerCase().split('e') as [string, string?];
  const tail = exponent === undefined ? '' : `e${exponent}`;
  const bare = body.replaceAll(' ', '');
  const comma = bare.lastIndexOf(',');
  const point = bare.lastIndexOf('.');

  if (comma >= 0 && point >= 0) {
    const [mark, groups] = comma > point ? [comma, '.'] : [point, ','];
    const whole = bare.slice(0, mark);
    if (!isGrouped(whole, groups)) return null;
    return { text: `${whole.replaceAll(groups, '')}.${bare.slice(mark + 1)}${tail}` };
  }
  const mark = comma >= 0 ? ',' : '.';
  const count = bare.split(mark).length - 1;
  if (count > 1) {
    return isGrouped(bare, mark) ? { text: bare.replaceAll(mark, '') + tail } : null;
  }
  if (mark === ',' && isGrouped(bare, ',')) {
    return { text: bare.replace(',', '') + tail, doubtful: true };
  }
  return { text: bare.replace(',', '.') + tail };
}

const isGrouped = (text: string, mark: string) =>
  (mark === ',' ? /^[1-9]\d{0,2}(,\d{3})+$/ : /^[1-9]\d{0,2}(\.\d{3})+$/).test(text);
